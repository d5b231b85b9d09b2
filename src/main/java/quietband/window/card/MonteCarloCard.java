package quietband.window.card;

import java.awt.Font;
import java.awt.Graphics2D;
import quietband.report.file.NumberFormat;
import quietband.window.chart.Theme;
import quietband.window.work.BackgroundFigures;
import quietband.window.work.MonteCarloProgress;

/** A card that shows how far the Monte Carlo has come. */
public abstract class MonteCarloCard extends FigureCard {

    private static final long serialVersionUID = 1;

    private transient MonteCarloProgress scattering;

    MonteCarloCard(String title, String tab, Theme theme) {
        super(title, tab, theme);
    }

    /** Shows it. */
    public void show(MonteCarloProgress next) {
        scattering = next;
        getAccessibleContext().setAccessibleDescription(words(next));
        redraw();
    }

    abstract String words(MonteCarloProgress s);

    abstract void draw(Graphics2D g, MonteCarloProgress s, int width, int height);

    @Override
    String words(BackgroundFigures f) {
        return scattering == null ? "not drawn yet" : words(scattering);
    }

    @Override
    void draw(Graphics2D g, BackgroundFigures f, int width, int height) {
        if (scattering == null) {
            boolean none = f.assessment().design().tolerances().isEmpty();
            text(g, none ? "The model has no tolerances." : "Not drawn yet: Run, Draw units (F9).", 0, theme().px(16), theme().faint(),
                Font.PLAIN);
            return;
        }
        draw(g, scattering, width, height - theme().px(14));
        String state = NumberFormat.text("%,d units%s", scattering.outcome().units(),
            f.view().model() == scattering.view().model() ? "" : ", of an earlier state");
        text(g, state, 0, height - theme().px(1), theme().faint(), Font.PLAIN);
    }
}

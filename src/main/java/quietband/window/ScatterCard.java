package quietband.window;

import java.awt.Font;
import java.awt.Graphics2D;

/** A card that shows how far the Monte Carlo has come. */
abstract class ScatterCard extends Card {

    private static final long serialVersionUID = 1;

    private transient Scattering scattering;

    ScatterCard(String title, String tab, Theme theme) {
        super(title, tab, theme);
    }

    /** Shows it. */
    void show(Scattering next) {
        scattering = next;
        getAccessibleContext().setAccessibleDescription(words(next));
        redraw();
    }

    abstract String words(Scattering s);

    abstract void draw(Graphics2D g, Scattering s, int width, int height);

    @Override
    String words(Figures f) {
        return scattering == null ? "not drawn yet" : words(scattering);
    }

    @Override
    void draw(Graphics2D g, Figures f, int width, int height) {
        if (scattering == null) {
            boolean none = f.assessment().design().tolerances().isEmpty();
            text(g, none ? "The model has no tolerances." : "Not drawn yet: Run, Draw units (F9).", 0, theme().px(16), theme().faint(),
                Font.PLAIN);
            return;
        }
        draw(g, scattering, width, height - theme().px(14));
        String state = String.format(java.util.Locale.ROOT, "%,d units%s", scattering.outcome().units(),
            f.view().model() == scattering.view().model() ? "" : ", of an earlier state");
        text(g, state, 0, height - theme().px(1), theme().faint(), Font.PLAIN);
    }
}

package quietband.window.card;

import java.awt.Font;
import java.awt.Graphics2D;
import java.util.stream.Collectors;
import quietband.report.file.NumberFormat;
import quietband.report.file.QuantityText;
import quietband.response.ModeProperties;
import quietband.window.chart.Theme;
import quietband.window.work.BackgroundFigures;

/** The platform's six modes: frequency, damping ratio, shape. */
public final class ModesCard extends FigureCard {

    private static final long serialVersionUID = 1;

    public ModesCard(Theme theme) {
        super("Modes of the platform", "Modes", theme);
    }

    @Override
    String words(BackgroundFigures f) {
        return f.assessment().modes().stream().map(m -> QuantityText.hz(m.frequencyHz()) + " " + m.shape())
            .collect(Collectors.joining(", "));
    }

    /** "translation x + y" for "translation x with translation y". */
    private static String shape(String words) {
        String[] parts = words.replace("about ", "").split(" with ");
        StringBuilder text = new StringBuilder(parts[0]);
        for (int i = 1; i < parts.length; i++) {
            String first = parts[0].substring(0, parts[0].indexOf(' ') + 1);
            text.append(" + ").append(parts[i].startsWith(first) ? parts[i].substring(first.length()) : parts[i]);
        }
        return text.toString();
    }

    @Override
    void draw(Graphics2D g, BackgroundFigures f, int width, int height) {
        if (f.assessment().modes().isEmpty()) {
            text(g, "No platform: bolted down.", 0, theme().px(16), theme().faint(), Font.PLAIN);
            return;
        }
        double row = height / 7.2;
        double y = row * 0.75;
        text(g, "at", 0, y, theme().faint(), Font.PLAIN);
        text(g, "damping", theme().px(62), y, theme().faint(), Font.PLAIN);
        text(g, "shape", theme().px(122), y, theme().faint(), Font.PLAIN);
        for (ModeProperties m : f.assessment().modes()) {
            y += row;
            text(g, QuantityText.hz(m.frequencyHz()), 0, y, theme().ink(), Font.PLAIN);
            text(g, NumberFormat.brief(m.dampingRatio(), 3), theme().px(62), y, theme().ink(), Font.PLAIN);
            fitted(g, shape(m.shape()), theme().px(122), y, width - theme().px(122), theme().ink());
        }
    }
}

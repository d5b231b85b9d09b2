package quietband.window.chart;

import com.formdev.flatlaf.FlatDarkLaf;
import com.formdev.flatlaf.FlatLaf;
import com.formdev.flatlaf.FlatLightLaf;
import java.awt.BasicStroke;
import java.awt.Color;
import java.awt.Font;
import javax.swing.UIManager;
import quietband.model.Stack;
import quietband.report.chart.ChartStyle;

/**
 * Colours and sizes of everything that is drawn, light or dark, at any scale. Good and bad differ in words and shape too, never in
 * colour alone.
 *
 * @param dark    light lines on dark paper
 * @param percent scale of all sizes, 100 to 200
 */
public record Theme(boolean dark, int percent) {

    private static final int FONT_PX = 13;

    /** Makes it the look of every window from now on. */
    public void apply() {
        // one scale, from the font: the toolkit derives every other size from it
        UIManager.put("defaultFont", new Font(Font.SANS_SERIF, Font.PLAIN, Math.round(FONT_PX * percent / 100f)));
        if (dark) {
            FlatDarkLaf.setup();
        } else {
            FlatLightLaf.setup();
        }
        FlatLaf.updateUI();
    }

    /** A size in px at this scale. */
    public int px(double at100) {
        return (int) Math.round(at100 * percent / 100);
    }

    /** A font at this scale. */
    public Font font(int style, double at100) {
        return new Font(Font.SANS_SERIF, style, 1).deriveFont((float) (at100 * percent / 100));
    }

    public Color paper() {
        return dark ? new Color(0x1F2429) : Color.WHITE;
    }

    public Color ground() {
        return UIManager.getColor("Panel.background");
    }

    public Color ink() {
        return dark ? new Color(0xEDF1F4) : ChartStyle.INK;
    }

    public Color faint() {
        return dark ? new Color(0xA3AFB9) : ChartStyle.FAINT;
    }

    public Color grid() {
        return dark ? new Color(0x3A434B) : ChartStyle.GRID;
    }

    public Color limit() {
        return dark ? new Color(0xFF7A8C) : ChartStyle.LIMIT.colour();
    }

    public Color good() {
        return dark ? new Color(0x5CC9A0) : new Color(0x00694D);
    }

    public Color bad() {
        return dark ? new Color(0xFF8797) : new Color(0xB3122E);
    }

    /** Fill of an area that meets a limit. */
    public Color goodArea() {
        return dark ? new Color(0x2F7F68) : new Color(0x8CCBB5);
    }

    /** Fill of an area that does not. */
    public Color badArea() {
        return dark ? new Color(0xC2485C) : new Color(0xD9455C);
    }

    /** The line of a stack. */
    public Color of(Stack stack) {
        if (!dark) {
            return ChartStyle.of(stack).colour();
        }
        return switch (stack) {
            case BARE -> faint();
            case ISOLATED -> new Color(0xF0A04B);
            case CANCELLED -> new Color(0x6BB7EE);
            case COMBINED -> ink();
        };
    }

    /** Paper that lets a little through, behind words on a chart. */
    Color veil() {
        Color p = paper();
        return new Color(p.getRed(), p.getGreen(), p.getBlue(), 205);
    }

    /** The curve before the last change. */
    Color ghost() {
        return dark ? new Color(0x6F7B86) : new Color(0xA9B2BA);
    }

    /** The n-th of several lines beside the model's own. */
    public Color other(int n) {
        Color light = ChartStyle.number(3 + n).colour();
        return dark ? light.brighter().brighter() : light;
    }

    /** A stroke of the common look at this scale. */
    public BasicStroke stroke(ChartStyle look) {
        BasicStroke s = look.stroke();
        float scale = percent / 100f;
        float[] dash = s.getDashArray() == null ? null : s.getDashArray().clone();
        for (int i = 0; dash != null && i < dash.length; i++) {
            dash[i] *= scale;
        }
        return new BasicStroke(s.getLineWidth() * scale, s.getEndCap(), s.getLineJoin(), 10, dash, 0);
    }

    /** The next scale up or down, within 100 to 200 percent. */
    public Theme zoomed(int steps) {
        return new Theme(dark, Math.max(100, Math.min(200, percent + 25 * steps)));
    }

    public Theme other() {
        return new Theme(!dark, percent);
    }


}

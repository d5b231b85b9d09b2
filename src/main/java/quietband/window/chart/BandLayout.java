package quietband.window.chart;

import quietband.model.Design;

/**
 * Where the band stands across: the same for the strip and for the chart under it, so that a frequency is in one column.
 *
 * @param left  from the left edge to the band's lower end, px
 * @param right from the band's upper end to the right edge, px
 */
public record BandLayout(int left, int right) {

    /** The usual one at a scale; narrower where there is little room. */
    public static BandLayout of(Theme theme, int width) {
        boolean narrow = width < theme.px(640);
        return new BandLayout(theme.px(narrow ? 112 : 176), theme.px(18));
    }

    /** The frequency of a column, Hz, within the band. */
    double frequency(Design design, double x, int width) {
        double from = design.requirement().fromHz();
        double to = design.requirement().toHz();
        double share = Math.max(0, Math.min(1, (x - left) / Math.max(1, width - left - right)));
        return from * StrictMath.pow(to / from, share);
    }

    /** The column of a frequency in Hz. */
    double x(Design design, double f, int width) {
        double from = design.requirement().fromHz();
        double to = design.requirement().toHz();
        return left + (width - left - right) * StrictMath.log(f / from) / StrictMath.log(to / from);
    }
}

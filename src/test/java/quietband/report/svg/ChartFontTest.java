package quietband.report.svg;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static org.assertj.core.api.Assumptions.assumeThat;

import java.awt.Font;
import java.awt.font.FontRenderContext;
import java.awt.font.LineMetrics;
import org.junit.jupiter.api.Test;
import quietband.report.chart.ChartStyle;

/** The sizes that charts are laid out with. */
class ChartFontTest {

    private static final FontRenderContext CONTEXT = new FontRenderContext(null, true, true);

    @Test
    void sizes_are_those_of_the_font_they_were_read_from() {
        Font real = new Font("DejaVu Sans", Font.PLAIN, 12);
        assumeThat(real.getFontName()).as("the font is on this machine").isEqualTo("DejaVu Sans");
        ChartFont own = new ChartFont(12);
        for (char c = ' '; c < 256; c++) {
            if (c < 127 || c >= 160) {
                String sign = String.valueOf(c);
                // Java keeps widths as floats of the size that is asked for
                assertThat(own.width(sign)).as(sign).isCloseTo(real.getStringBounds(sign, CONTEXT).getWidth(), within(1e-5));
            }
        }
        LineMetrics expected = real.getLineMetrics("Xg", CONTEXT);
        LineMetrics line = own.getLineMetrics("Xg", CONTEXT);
        assertThat(line.getAscent()).isCloseTo(expected.getAscent(), within(1e-5f));
        assertThat(line.getDescent()).isCloseTo(expected.getDescent(), within(1e-5f));
        assertThat(line.getLeading()).isCloseTo(expected.getLeading(), within(1e-5f));
        assertThat(line.getHeight()).isCloseTo(expected.getHeight(), within(1e-5f));
        assertThat(line.getBaselineOffsets()[2]).isCloseTo(expected.getBaselineOffsets()[2], within(1e-5f));
    }

    @Test
    void a_text_is_as_wide_as_its_signs_and_grows_with_the_size() {
        ChartFont small = new ChartFont(10);
        ChartFont large = new ChartFont(20);
        assertThat(small.width("")).isZero();
        assertThat(small.width("Hz")).isCloseTo(small.width("H") + small.width("z"), within(1e-5));
        assertThat(large.width("ppb/g")).isCloseTo(2 * small.width("ppb/g"), within(1e-5));
        assertThat(small.width("-")).as("739 of 2048 to the em").isCloseTo(10 * 739 / 2048.0, within(1e-5));
        assertThat(small.width("\u03c6")).as("a sign that is not in the table").isCloseTo(10 * 1716 / 2048.0, within(1e-5));
        assertThat(small.getStringBounds("Hz", CONTEXT).getWidth()).isEqualTo(small.width("Hz"));
    }

    @Test
    void a_chart_takes_it_although_it_has_a_font_of_its_own() {
        // a chart does not take over a font that equals the one it has
        assertThat(new Font(Font.SANS_SERIF, Font.PLAIN, 12)).isNotEqualTo(ChartStyle.FONT);
    }
}

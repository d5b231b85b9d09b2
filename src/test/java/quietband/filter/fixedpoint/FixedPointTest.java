package quietband.filter.fixedpoint;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import quietband.cancellation.FilterResponse;
import quietband.filter.FilterException;
import quietband.filter.FilterForm;
import quietband.filter.FilterGoal;
import quietband.filter.FilterTask;
import quietband.filter.design.FilterDesigner;
import quietband.model.Axis;
import quietband.model.Design;
import quietband.model.DigitalFilter;
import quietband.model.Stack;
import quietband.motion.run.Dwell;
import quietband.response.Models;
import quietband.response.ResidualResponse;
import quietband.spectrum.LogGrid;

/** Filters in whole numbers. */
class FixedPointTest {

    // bilinear Butterworth of second order at 0.1 fs (SciPy, see check values), and a resonance
    private static final DigitalFilter SECTIONS = new DigitalFilter(new int[0], new double[0], new double[][] {
        {0.06745527, 0.13491055, 0.06745527, -1.1429805, 0.4128016}, {3, -2.5, 0.25, -1.2, 0.7}});

    /** What firmware does with the integers: direct form, sums in full, words that stand for their value over 2^scale. */
    private static double[] run(FixedPoint p, int samples) {
        double[] x = new double[samples];
        x[0] = 1;
        for (FixedPoint.Stage s : p.stages()) {
            double[] y = new double[samples];
            for (int n = 0; n < samples; n++) {
                for (int k = 0; k < 3 && k <= n; k++) {
                    y[n] += Math.scalb((double) s.b().integers()[k], -s.b().shift()) * x[n - k];
                }
                for (int k = 1; k < 3 && k <= n; k++) {
                    y[n] -= Math.scalb((double) s.a().integers()[k - 1], -s.a().shift()) * y[n - k];
                }
            }
            x = y;
        }
        for (int n = 0; n < samples; n++) {
            x[n] = Math.scalb(x[n], p.scale());
        }
        return x;
    }

    @Test
    void integers_shifts_and_scale_give_the_rounded_filter() {
        FixedPoint p = FixedPoint.of(SECTIONS, 16);
        double[] h = run(p, 400);
        FilterResponse response = new FilterResponse(p.rounded(), 1);
        for (double f : new double[] {0.001, 0.05, 0.123, 0.4}) {
            double re = 0;
            double im = 0;
            for (int n = 0; n < h.length; n++) {
                re += h[n] * Math.cos(2 * Math.PI * f * n);
                im -= h[n] * Math.sin(2 * Math.PI * f * n);
            }
            // poles of radius 0.84: after 400 samples nothing is left
            assertThat(re).isCloseTo(response.at(f).getReal(), within(1e-9));
            assertThat(im).isCloseTo(response.at(f).getImaginary(), within(1e-9));
        }
        for (FixedPoint.Stage s : p.stages()) {
            assertThat(Arrays.stream(s.b().integers()).map(Math::abs).max().orElseThrow()).isBetween(8192L, 32767L);
            assertThat(Arrays.stream(s.a().integers()).map(Math::abs).max().orElseThrow()).isBetween(8192L, 32767L);
        }
        // half a step of the row's largest coefficient, 2^-13 for a1 of 1.2 in 16 bits
        assertThat(p.rounded().sections()[1][3]).isCloseTo(-1.2, within(Math.scalb(0.5, -14)));
    }

    @Test
    void no_input_overflows_a_word() {
        FixedPoint p = FixedPoint.of(SECTIONS, 16);
        double[] h = run(p, 400);
        double sum = 0;
        for (double v : h) {
            sum += Math.abs(v);
        }
        // the worst input of magnitude 1 gives this; the word holds 2^scale and not twice as much as is needed
        assertThat(sum).isBetween(Math.scalb(0.5, p.scale()), Math.scalb(1.0, p.scale()));
    }

    @Test
    void one_rounding_behind_taps_is_white_noise_of_a_step() {
        // +-10 g in 16 bits at 48 kHz: .56866 ug/rtHz (derived, see check values); taps of sum 1 need no other scale
        FixedPoint p = FixedPoint.of(new DigitalFilter(new int[] {0, 1}, new double[] {0.75, -0.25}, new double[0][]), 16);
        assertThat(Math.sqrt(p.noiseG2PerHz(123, 10, 48_000))).isCloseTo(0.56866e-6, within(1e-11));
    }

    @Test
    void a_section_feeds_its_rounding_back() {
        // one pole at 0.5: at rest 1/(1 - 0.5) = 2 times the step's own density; sum of the impulse response 2, scale 1
        FixedPoint p = FixedPoint.of(new DigitalFilter(new int[0], new double[0], new double[][] {{1, 0, 0, -0.5, 0}}), 16);
        assertThat(p.scale()).isEqualTo(1);
        assertThat(Math.sqrt(p.noiseG2PerHz(1e-3, 10, 48_000))).isCloseTo(2 * 2 * 0.56866e-6, within(1e-10));
    }

    private static Design designed(FilterForm form, int count) {
        Design design = Models.shipped("ridge-relay.yaml");
        FilterTask task = new FilterTask(design, form, count, FilterGoal.FLAT, 10, LogGrid.between(100, 10, 2000), Optional.empty());
        return with(design, FilterDesigner.design(task).filters());
    }

    private static Design with(Design design, List<DigitalFilter> filters) {
        return design.withCancellation(design.cancellation().map(c -> c.withFilters(filters)));
    }

    @ParameterizedTest
    @CsvSource({"x,10.3", "y,88", "z,700"})
    void simulate_confirms_the_rounded_filter(String axis, double f) {
        Design design = designed(FilterForm.TAPS, 12);
        FixedDesign fixed = FixedDesign.of(design, 16);
        assertThat(fixed.costDb()).isBetween(-FixedDesign.MOST_DB, FixedDesign.MOST_DB);
        Design rounded = with(design, fixed.rounded());
        double stepped = Dwell.run(rounded, new Dwell.Request(Axis.of(axis), f, 0.7, 0.2, true)).sensitivityPerG(Stack.COMBINED);
        ResidualResponse response = new ResidualResponse(rounded);
        double[] re = new double[3];
        double[] im = new double[3];
        response.at(f);
        response.residual(Stack.COMBINED, re, im);
        int j = Axis.of(axis).ordinal();
        assertThat(20 * Math.log10(stepped / Math.hypot(re[j], im[j]))).isCloseTo(0, within(0.1));
    }

    @Test
    void a_word_too_short_is_refused_with_the_length_that_is_needed() {
        Design design = designed(FilterForm.SECTIONS, 1);
        int needed = FixedDesign.needed(design);
        assertThat(needed).isGreaterThan(16);
        assertThatThrownBy(() -> FixedDesign.of(design, 16)).isInstanceOf(FilterException.class)
            .hasMessageContaining("take --bits " + needed);
        assertThat(FixedDesign.of(design, needed).costDb()).isLessThanOrEqualTo(FixedDesign.MOST_DB);
    }
}

package quietband.filter;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.Arrays;
import java.util.Optional;
import org.hipparchus.complex.Complex;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import quietband.filter.allowed.Crossover;
import quietband.filter.allowed.PolarityCheck;
import quietband.filter.fixedpoint.FilterPeaks;
import quietband.filter.fixedpoint.FoundFilters;
import quietband.model.Axis;
import quietband.model.Design;
import quietband.model.DigitalFilter;
import quietband.model.Stack;
import quietband.platform.Assembly;
import quietband.response.Models;
import quietband.response.ResidualResponse;
import quietband.spectrum.LogGrid;

/** Filters that would leave nothing, terms of the residual, measured paths, and what a bench shows of signs and delays. */
class IdealFilterTest {

    private static final double[] GRID = LogGrid.between(120, 10, 2000);

    private static Design bolted(String path) {
        return Models.of(Models.oscillator("") + "cancellation: {sensor: {place: housing" + path + "}\n");
    }

    private static Design sprung(String sensor) {
        return Models.of(Models.oscillator(", position: {x: 2 mm, z: 3 mm}") + Models.platform("stiffness: 20 N/mm, loss_factor: 20 %",
            ", centre_of_gravity: {x: 1 mm, y: -2 mm, z: 2 mm}") + "cancellation: {sensor: {position: {x: 6 mm, y: 1 mm}" + sensor
            + "}, path: {sample_rate: 50 kHz, latency: 10 us}}\n");
    }

    // System:  bolted down each sensor sees its own axis: F = 1/P = (1 + gain)^-1 (1 + j f/fb) exp(j w (latency + delay)) exp(j phase)^-1
    @Test
    void bolted_down_the_ideal_filter_undoes_the_path() {
        Design d = bolted(", bandwidth: 2 kHz}, path: {latency: 20 us}, error: {gain: 5 %, phase: 4 deg, delay: 5 us}");
        for (double f : new double[] {10, 300, 2000}) {
            Complex[] ideal = new IdealFilter(d, Optional.empty()).at(f);
            double angle = 2 * Math.PI * f * 25e-6 - Math.toRadians(4);
            Complex expected = new Complex(1, f / 2000).multiply(new Complex(Math.cos(angle), Math.sin(angle))).divide(1.05);
            for (int i = 0; i < 3; i++) {
                assertThat(ideal[i].subtract(expected).norm()).isLessThan(1e-12);
            }
        }
    }

    @Test
    void on_the_platform_three_filters_leave_nothing_on_any_axis() {
        Design d = sprung(", cross_axis: {xy: 2 %, zy: -3 %}");
        ResidualTerms terms = new ResidualTerms(d, new Assembly(d.platform().orElseThrow()), PathResponse.of(d));
        ResidualResponse response = new ResidualResponse(d);
        for (double f : new double[] {12, 95, 140, 700}) {
            ResidualTerms.At here = terms.at(f);
            Complex[] ideal = new IdealFilter(d, Optional.empty()).at(f);
            // ppb per g; rounding
            assertThat(Math.sqrt(Arrays.stream(here.squared(ideal)).sum()) / 1e-9).isLessThan(1e-11);
            // with filters of 1 the terms give the design's own residual
            response.at(f);
            double[] own = response.squares(Stack.COMBINED);
            double[] whole = here.squared(new Complex[] {Complex.ONE, Complex.ONE, Complex.ONE});
            for (int j = 0; j < 3; j++) {
                assertThat(whole[j] / 1e-18).isCloseTo(own[j] / 1e-18, within(1e-12));
            }
        }
        assertThat(Double.isNaN(new IdealFilter(bolted("}, weights: {x: 1 ppb/g}"), Optional.empty()).at(100)[1].getReal())).isTrue();
    }

    // between points |.| goes as a power of f and the phase as its logarithm: 4 f and 90 degrees a factor of 4 are met exactly
    @Test
    void between_its_points_a_measured_path_is_straight_on_log_paper() {
        double[] f = {10, 40, 160};
        double[][] m = {{1e-9, 4e-9, 16e-9}, {1e-9, 1e-9, 1e-9}, {2e-9, 1e-9, 0.5e-9}};
        double q = Math.PI / 2;
        double[][] p = {{0, q, 2 * q}, {3, 3 - 1.5 + 2 * Math.PI, 0}, {0, 0, 0}};
        MeasuredPath path = MeasuredPath.of("p.csv", f, m, p);
        for (double at : new double[] {10, 20, 77, 160}) {
            double angle = q * Math.log(at / 10) / Math.log(4);
            Complex expected = new Complex(Math.cos(angle), Math.sin(angle)).multiply(1e-9 * at / 10);
            assertThat(path.weighted(0, at).subtract(expected).norm() / 1e-9).isLessThan(1e-12);
            assertThat(path.weighted(2, at).norm()).isCloseTo(2e-9 * Math.sqrt(10 / at), within(1e-21));
        }
        // a whole turn is taken out: -1.5 rad a step
        assertThat(path.weighted(1, 20).getArgument()).isCloseTo(3 - 0.75, within(1e-12));
        assertThat(path.covers(10, 160)).isTrue();
        assertThat(path.covers(9.9, 100)).isFalse();
        // beyond the ends it stays as it is there
        assertThat(path.weighted(0, 1000)).isEqualTo(path.weighted(0, 160));
    }

    @Test
    void a_measurement_that_cannot_serve_is_refused_with_what_to_do() {
        double[] f = {10, 20};
        double[][] m = {{1, 1}, {1, 1}, {1, 1}};
        double[][] p = {{0, 0}, {0, 3}, {0, 0}};
        assertThatThrownBy(() -> MeasuredPath.of("p.csv", f, m, p)).isInstanceOf(FilterException.class)
            .hasMessageContaining("p.csv: axis y turns by 172 deg from 10.0 to 20.0 Hz").hasMessageContaining("measure more frequencies");
        assertThatThrownBy(() -> MeasuredPath.of("p.csv", f, new double[][] {{1, 1}, null, {1, 1}}, p))
            .hasMessageContaining("p.csv: axis y is missing");
        assertThatThrownBy(() -> MeasuredPath.of("p.csv", f, m, new double[][] {null, {0, 0}, {0, 0}}))
            .hasMessageContaining("axis x has no phase").hasMessageContaining("add x_phase_deg");
        assertThatThrownBy(() -> MeasuredPath.of("p.csv", f, new double[][] {{1, 0}, {1, 1}, {1, 1}}, p))
            .hasMessageContaining("axis x reads 0 at 20.0 Hz");
        assertThatThrownBy(() -> MeasuredPath.of("p.csv", new double[] {1}, m, p)).hasMessageContaining("two frequencies at least");
        // the model's weight along y is negative
        double[][] still = {{0, 0}, {0, 0}, {0, 0}};
        assertThat(MeasuredPath.of("p.csv", f, m, still).opposite(bolted("}"))).containsExactly(Axis.Y);
    }

    // one sensor ideal but late by T leaves 2 sin(w T/2): 0.1 of it where w T = 2 asin(0.05); the reversed sign leaves 2 cos
    @ParameterizedTest
    @CsvSource({"20e-6", "100e-6"})
    void a_late_cancellation_holds_up_to_where_its_chord_meets_the_limit(double delay) {
        Design d = Models.of("quietband: 1\noscillator: {carrier: 10 MHz, resonator: {sensitivity: {z: 1 ppb/g}}}\n"
            + "cancellation: {sensor: {place: housing}}\nrequirement: {residual: [{frequency: 10 Hz, limit: 0.1 ppb/g}]}\n");
        Crossover late = Crossover.of(d, delay);
        double expected = 2 * Math.asin(0.05) / (2 * Math.PI * delay);
        // between 400 points of the band the margin is taken as straight
        assertThat(late.holdsTo()).isCloseTo(expected, within(1e-3 * expected));
        assertThat(late.marginDb()).isCloseTo(20 * Math.log10(0.1 / (2 * Math.sin(Math.PI * 2000 * delay))), within(1e-6));
        assertThat(late.frequencyHz()).isNaN();
        assertThat(Crossover.of(d)).hasSize(8);
        assertThat(Crossover.of(d).get(0).holdsTo()).isCloseTo(2000, within(1e-9));
    }

    @Test
    void a_wrong_sign_shows_as_twice_the_sensitivity() {
        Design d = bolted("}, error: {gain: {z: -10 %}}");
        assertThat(PolarityCheck.of(d, GRID)).hasSize(3);
        PolarityCheck z = PolarityCheck.of(d, GRID).get(2);
        // ideal paths but for a gain of 0.9: 1.2 (1 - 0.9) and 1.2 (1 + 0.9) ppb/g
        assertThat(z.offPerG()).isCloseTo(1.2e-9, within(1e-21));
        assertThat(z.onPerG()).isCloseTo(0.12e-9, within(1e-21));
        assertThat(z.wrongPerG()).isCloseTo(2.28e-9, within(1e-21));
        assertThat(PolarityCheck.of(bolted("}, weights: {y: 1 ppb/g}"), GRID)).extracting(PolarityCheck::axis).containsExactly(Axis.Y);
    }

    // a two-pole resonance of radius r at angle t peaks near t with 1/((1 - r) |1 - r exp(-2 j t)|); its noise gain is the sum of the
    // squared impulse response
    @Test
    void the_peak_and_the_noise_gain_of_a_filter_are_those_of_its_impulse_response() {
        double r = 0.98;
        double t = 0.6;
        DigitalFilter ring = new DigitalFilter(new int[0], new double[0], new double[][] {{1, 0, 0, -2 * r * Math.cos(t), r * r}});
        double sum = 0;
        double y1 = 0;
        double y2 = 0;
        for (int k = 0; k < 3000; k++) {
            double y = (k == 0 ? 1 : 0) + 2 * r * Math.cos(t) * y1 - r * r * y2;
            sum += y * y;
            y2 = y1;
            y1 = y;
        }
        assertThat(FilterPeaks.noiseGain(ring)).isCloseTo(sum, within(1e-3 * sum));
        FoundFilters.Peak peak = FilterPeaks.of(ring, 10_000);
        // exact place of the peak: cos w = cos t (1 + r^2)/(2 r), height 1/((1 - r^2) sin t)
        double w = Math.acos(Math.cos(t) * (1 + r * r) / (2 * r));
        assertThat(peak.gain()).isCloseTo(1 / ((1 - r * r) * Math.sin(t)), within(1e-4 * peak.gain()));
        assertThat(peak.frequencyHz()).isCloseTo(w * 10_000 / (2 * Math.PI), within(2.0));
        DigitalFilter taps = new DigitalFilter(new int[] {0, 1}, new double[] {2.3, -1.3}, new double[0][]);
        assertThat(FilterPeaks.of(taps, 10_000).gain()).isCloseTo(3.6, within(1e-9));
        assertThat(FilterPeaks.of(taps, 10_000).frequencyHz()).isCloseTo(5000, within(1e-6));
        assertThat(FilterPeaks.noiseGain(taps)).isCloseTo(2.3 * 2.3 + 1.3 * 1.3, within(1e-12));
        assertThat(FilterPeaks.noiseGain(DigitalFilter.NONE)).isEqualTo(1);
        assertThat(FilterPeaks.largest(ring)).isCloseTo(2 * r * Math.cos(t), within(1e-15));
    }
}

package quietband.spectrum;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import org.junit.jupiter.api.Test;

class AdaptiveCurvesTest {

    private static double resonance(double f, double f0, double width) {
        double x = (f - f0) / (width / 2);
        return -10 * Math.log10(1 + x * x);
    }

    @Test
    void the_grid_has_both_ends_and_is_even_in_log_frequency() {
        double[] f = LogGrid.between(400, 10, 2000);
        assertThat(f).hasSize(400).startsWith(10).endsWith(2000);
        assertThat(f[200] / f[199]).isCloseTo(Math.pow(200, 1 / 399.0), within(1e-12));
    }

    @Test
    void a_seeded_peak_a_millionth_wide_is_found_to_a_ten_thousandth_of_a_db() {
        double f0 = 777.77731;
        SeededGrid grid = new SeededGrid(10, 2000, 100);
        // the seed is off by three widths, as a shift by damping or coupling would leave it
        grid.peak(f0 * (1 + 3e-6), f0 * 1e-6);
        AdaptiveCurves s = AdaptiveCurves.refined(grid.build(), f -> new double[] {resonance(f, f0, f0 * 1e-6)}, 0.1);
        assertThat(s.maximum(0).value()).isCloseTo(0, within(1e-4));
        assertThat(s.maximum(0).frequencyHz()).isCloseTo(f0, within(1e-8 * f0));
    }

    @Test
    void crossings_are_refined_and_slivers_on_either_side_are_seen() {
        AdaptiveCurves s = AdaptiveCurves.refined(LogGrid.between(200, 10, 2000), f -> new double[] {20 * Math.log10(f / 123.456789)}, 0.1);
        List<double[]> inside = s.within((f, v) -> v[0]);
        assertThat(inside).hasSize(1);
        assertThat(inside.get(0)[0]).isEqualTo(10);
        assertThat(inside.get(0)[1]).isCloseTo(123.456789, within(1e-9));
        // a parabola that dips 1e-6 below zero between two nodes
        AdaptiveCurves dip = AdaptiveCurves.refined(LogGrid.between(50, 10, 2000), f ->
            new double[] {Math.pow(Math.log(f / 137), 2) - 1e-6}, 10);
        assertThat(dip.within((f, v) -> v[0])).hasSize(1).allSatisfy(i ->
            assertThat(Math.log(i[1] / i[0])).isCloseTo(2e-3, within(1e-8)));
        // and one that rises 1e-6 above
        AdaptiveCurves top = AdaptiveCurves.refined(LogGrid.between(50, 10, 2000), f ->
            new double[] {1e-6 - Math.pow(Math.log(f / 137), 2)}, 10);
        assertThat(top.within((f, v) -> v[0])).hasSize(2);
    }

    @Test
    void quadrature_on_a_seeded_grid_integrates_a_narrow_peak() {
        SeededGrid grid = new SeededGrid(10, 2000, 100);
        grid.peak(300, 0.003);
        double[] integral = FrequencyQuadrature.integrate(grid.build(), 2, (f, into) -> {
            into[0] = 1 / (1 + Math.pow((f - 300) / 0.0015, 2));
            into[1] = 1 / f;
        });
        // a Lorentzian of full width w has the area pi w/2; its tails beyond the ends take 1e-5 of it
        assertThat(integral[0]).isCloseTo(Math.PI * 0.0015, within(3e-5 * Math.PI * 0.0015));
        assertThat(integral[1]).isCloseTo(Math.log(200), within(1e-12));
    }
}

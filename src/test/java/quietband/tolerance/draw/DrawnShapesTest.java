package quietband.tolerance.draw;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.Arrays;
import java.util.function.DoubleUnaryOperator;
import org.hipparchus.distribution.continuous.NormalDistribution;
import org.hipparchus.stat.correlation.PearsonsCorrelation;
import org.junit.jupiter.api.Test;
import quietband.model.Design;
import quietband.model.Tolerance;
import quietband.model.quantity.Quantities;

/** Drawn values against the closed forms of their distributions, at 200,000 units. */
class DrawnShapesTest {

    private static final NormalDistribution NORMAL = new NormalDistribution();
    private static final String GAIN = "cancellation.error.gain";

    private static Design gain(String tolerance) {
        return ScatterModels.corrected("0.02 ppb/g", "tolerances:\n  - {name: gain, of: " + GAIN + ".x, " + tolerance + "}\n");
    }

    /** Compares the share of units below some values with the distribution. */
    private static void follows(Design design, String path, DoubleUnaryOperator cdf, double... at) {
        double[] drawn = ScatterModels.sorted(design, ScatterModels.UNITS, ScatterModels.at(design, path));
        for (double x : at) {
            int place = Arrays.binarySearch(drawn, x);
            double share = (double) (place < 0 ? -place - 1 : place) / drawn.length;
            double expected = cdf.applyAsDouble(x);
            // five standard errors: a right implementation fails once in two million
            assertThat(share).as("share below " + x).isCloseTo(expected, within(ScatterModels.fiveErrors(expected) + 1e-9));
        }
    }

    @Test
    void a_normal_value_is_one_standard_deviation() {
        follows(gain("add: 1 %, distribution: normal"), GAIN + ".x", x -> NORMAL.cumulativeProbability(x / 0.01), -0.02, -0.005, 0, 0.01,
            0.025);
    }

    @Test
    void a_truncated_value_is_a_normal_cut_at_its_limits() {
        double kept = 2 * NORMAL.cumulativeProbability(1.5) - 1;
        DoubleUnaryOperator cdf = x -> x >= 0.015 ? 1 : x <= -0.015 ? 0
            : (NORMAL.cumulativeProbability(x / 0.01) - NORMAL.cumulativeProbability(-1.5)) / kept;
        follows(gain("add: 1 %, distribution: truncated, truncate_at: 1.5 %"), GAIN + ".x", cdf, -0.0151, -0.012, -0.004, 0, 0.007, 0.0149,
            0.0151);
    }

    @Test
    void a_lognormal_factor_has_the_nominal_as_its_median_and_the_stated_standard_deviation() {
        Design design = ScatterModels.design("  path: {latency: 10 us}\n"
            + "tolerances:\n  - {name: latency, of: cancellation.path.latency, scale: 30 %, distribution: lognormal}\n");
        double[] factor = ScatterModels.sorted(design, ScatterModels.UNITS, ScatterModels.at(design, "cancellation.path.latency"));
        Arrays.setAll(factor, i -> factor[i] / 10e-6);
        double mean = Arrays.stream(factor).average().orElseThrow();
        double deviation = Math.sqrt(Arrays.stream(factor).map(v -> (v - mean) * (v - mean)).average().orElseThrow());
        // e^(s^2) (e^(s^2) - 1) = 0.09: e^(s^2) = (1 + sqrt(1.36))/2, the mean is its root; both good to five standard errors
        assertThat(deviation).isCloseTo(0.3, within(0.005));
        assertThat(mean).isCloseTo(Math.sqrt((1 + Math.sqrt(1.36)) / 2), within(0.0035));
        double s = Math.sqrt(Math.log((1 + Math.sqrt(1.36)) / 2));
        follows(design, "cancellation.path.latency", x -> NORMAL.cumulativeProbability(Math.log(x / 10e-6) / s), 6e-6, 10e-6, 15e-6);
    }

    @Test
    void a_lognormal_addend_of_a_quantity_at_zero_is_refused() {
        Design design = gain("add: 1 %, distribution: lognormal");
        assertThatThrownBy(() -> ToleranceDraws.of(design)).isInstanceOf(ToleranceException.class).hasMessageContaining("gain")
            .hasMessageContaining("is 0").hasMessageContaining("another distribution");
    }

    @Test
    void uniform_and_triangular_values_are_half_widths() {
        follows(gain("add: 2 %, distribution: uniform"), GAIN + ".x", x -> Math.max(0, Math.min(1, (x + 0.02) / 0.04)), -0.019, -0.01,
            0.005,
            0.0199, 0.0201);
        DoubleUnaryOperator triangle = x -> {
            double tail = Math.pow(Math.max(0, 1 - Math.abs(x) / 0.02), 2) / 2;
            return x < 0 ? tail : 1 - tail;
        };
        follows(gain("add: 2 %, distribution: triangular"), GAIN + ".x", triangle, -0.015, -0.004, 0, 0.01, 0.0201);
    }

    @Test
    void correlated_tolerances_pair_component_by_component() {
        Design design = ScatterModels.corrected("1 ppb/g", "tolerances:\n  - {name: gain, of: " + GAIN + ", add: 1 %}\n"
            + "  - {name: delay, of: cancellation.error.delay, add: 1 us, distribution: uniform}\n"
            + "correlations: [{between: [gain, delay], coefficient: 0.7}]\n");
        double[] gx = ScatterModels.drawn(design, ScatterModels.UNITS, ScatterModels.at(design, GAIN + ".x"));
        double[] gy = ScatterModels.drawn(design, ScatterModels.UNITS, ScatterModels.at(design, GAIN + ".y"));
        double[] dx = ScatterModels.drawn(design, ScatterModels.UNITS, ScatterModels.at(design, "cancellation.error.delay.x"));
        PearsonsCorrelation pearson = new PearsonsCorrelation();
        // a normal z1 with the uniform 2 Phi(z2) - 1: E = 2 rho phi-integral = rho/sqrt(pi), over the uniform's deviation 1/sqrt 3
        double expected = 0.7 * Math.sqrt(3 / Math.PI);
        // five standard errors (1 - r^2)/sqrt(n), 0.006 at most
        assertThat(pearson.correlation(gx, dx)).isCloseTo(expected, within(0.006));
        assertThat(pearson.correlation(gy, dx)).isCloseTo(0, within(0.0112));
        // of the underlying normals it is the coefficient itself
        double[] z = Arrays.stream(dx).map(d -> NORMAL.inverseCumulativeProbability((d / 1e-6 + 1) / 2)).toArray();
        assertThat(pearson.correlation(gx, z)).isCloseTo(0.7, within(0.006));
    }

    @Test
    void a_lot_is_drawn_by_whole_rows() {
        Design plain = ScatterModels.corrected("1 ppb/g", "tolerances:\n"
            + "  - {name: gain, of: oscillator.resonator.sensitivity, scale: 0 %}\n");
        Tolerance.Lot lot = new Tolerance.Lot("lot.csv", java.util.List.of("a", "b", "c"), java.util.List.of(
            new quietband.model.Vec(1e-9, 2e-9, 3e-9), new quietband.model.Vec(2e-9, 4e-9, 6e-9),
            new quietband.model.Vec(3e-9, 6e-9, 9e-9)));
        Tolerance crystal = new Tolerance("crystal", "oscillator.resonator.sensitivity", Tolerance.Kind.LOT, 0,
            Tolerance.Distribution.NORMAL, Tolerance.Draw.COMPONENT, Double.POSITIVE_INFINITY, java.util.Optional.of(lot));
        DrawnTolerance entry = DrawnTolerance.of(crystal, plain.quantities(), 0);
        int[] count = new int[3];
        int torn = 0;
        double[] z = new double[1];
        for (int u = 0; u < ScatterModels.UNITS; u++) {
            UnitStream.normals(5, UnitStream.Purpose.UNIT, 0, u, z);
            double[] values = plain.quantities().values();
            entry.act(z, plain.quantities(), values);
            double x = values[entry.slots()[0]];
            torn += Math.abs(values[entry.slots()[2]] - 3 * x) < 1e-20 ? 0 : 1;
            count[(int) Math.round(x * 1e9) - 1]++;
        }
        assertThat(torn).isZero();
        for (int c : count) {
            assertThat((double) c / ScatterModels.UNITS).isCloseTo(1 / 3.0, within(ScatterModels.fiveErrors(1 / 3.0)));
        }
    }

    @Test
    void what_shares_a_number_is_what_draw_says() {
        String platform = "platform:\n  mass: 1 kg\n  size: 50 mm\n  springs: [{name: s, at: [{x: 9 mm}, {y: 9 mm}, {z: 9 mm}], "
            + "stiffness: 9 N/mm}]\n";
        assertThat(scales(platform, "")).hasSize(9);
        assertThat(scales(platform, ", draw: spring")).hasSize(3);
        assertThat(scales(platform, ", draw: unit")).hasSize(1);
    }

    private static java.util.Set<Double> scales(String platform, String draw) {
        Design design = ScatterModels.design(platform + "tolerances:\n  - {of: platform.springs.stiffness, scale: 3 %"
            + draw + "}\n");
        ToleranceDraws scatter = ToleranceDraws.of(design);
        Quantities unit = scatter.at(scatter.normals(1, 0, 0));
        java.util.Set<Double> different = new java.util.TreeSet<>();
        for (int slot : unit.find("platform.springs.stiffness").slots()) {
            different.add(unit.value(slot));
        }
        return different;
    }
}

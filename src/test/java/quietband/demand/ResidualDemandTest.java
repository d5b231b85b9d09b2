package quietband.demand;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import quietband.model.edit.ModelFile;

/** How far a residual is over its limit, by axis and by vector. */
class ResidualDemandTest {

    // a few operations in double precision
    private static final double ROUNDING = 1e-12;
    private static final String STATED = "residual: [{frequency: 10 Hz, limit: 0.1 ppb/g}, {frequency: 1 kHz, limit: 10 ppb/g}]";
    // 2, 3 and 6 ppb/g: a length of 7 ppb/g
    private static final double[] SQUARED = {4e-18, 9e-18, 36e-18};

    private static ResidualDemand demand(String by, String asked) {
        return new ResidualDemand(ModelFile.parse(Path.of("m.yaml"), "quietband: 1\noscillator: {carrier: 10 MHz, resonator: "
            + "{sensitivity: 1 ppb/g}}\nvibration: {random: {points: [{frequency: 10 Hz, density: 0.01 g^2/Hz}, {frequency: 2 kHz, "
            + "density: 0.01 g^2/Hz}]}, axes: [x, z]}\nrequirement: {band: {from: 10 Hz, to: 1 kHz}, by: " + by + ", "
            + asked + "}\n").design());
    }

    @ParameterizedTest
    @CsvSource({"axis, 3, z, 6e-9, 15.563025007672874", "vector, 1, vector, 7e-9, 16.901960800285136"})
    void the_worst_row_counts(String by, int rows, String name, double perG, double overDb) {
        ResidualDemand demand = demand(by, STATED);
        // the line runs from 0.1 to 10 ppb/g over two decades: 1 ppb/g in the middle; 20 log10 of 6 and of 7
        ResidualPoint worst = demand.worst(100, SQUARED);
        assertThat(demand.rows()).isEqualTo(rows);
        assertThat(worst.axis()).isEqualTo(name);
        assertThat(worst.residualPerG()).isCloseTo(perG, within(ROUNDING * perG));
        assertThat(worst.limitPerG()).isCloseTo(1e-9, within(ROUNDING * 1e-9));
        assertThat(worst.marginDb()).isCloseTo(-overDb, within(ROUNDING * 20));
        assertThat(worst.ratio()).isCloseTo(perG / 1e-9, within(ROUNDING * 10));
        assertThat(demand.ratio(100, SQUARED)).isCloseTo(perG / 1e-9, within(ROUNDING * 10));
        assertThat(demand.overDb(100, SQUARED)).isCloseTo(overDb, within(ROUNDING * 20));
        assertThat(demand.perG(SQUARED)).isCloseTo(perG, within(ROUNDING * perG));
        // ten times the limit further up: 20 dB less
        assertThat(demand.overDb(1000, SQUARED)).isCloseTo(overDb - 20, within(ROUNDING * 20));
    }

    @ParameterizedTest
    @CsvSource({"axis, 36", "vector, 49"})
    void squares_over_squared_limits_join_to_the_same_ratio(String by, double expected) {
        ResidualDemand demand = demand(by, STATED);
        double[] over = new double[3];
        for (int j = 0; j < 3; j++) {
            over[j] = SQUARED[j] / Math.pow(demand.limit(j, 100), 2);
        }
        assertThat(demand.joined(over[0], over[1], over[2])).isCloseTo(expected, within(ROUNDING * expected));
        double most = 0;
        for (int row = 0; row < demand.rows(); row++) {
            most = Math.max(most, demand.squared(row, over[0], over[1], over[2]));
        }
        assertThat(most).isCloseTo(expected, within(ROUNDING * expected));
    }

    @Test
    void an_axis_is_judged_by_its_own_row() {
        ResidualDemand axis = demand("axis", STATED);
        for (int j = 0; j < 3; j++) {
            assertThat(axis.row(j)).isEqualTo(j);
            assertThat(axis.axes(j)).containsExactly(j);
            assertThat(axis.judged(j)).isEqualTo(j);
            assertThat(axis.squared(j, 4, 9, 36)).isEqualTo(new double[] {4, 9, 36}[j]);
        }
        ResidualDemand vector = demand("vector", STATED);
        assertThat(vector.axes(0)).containsExactly(0, 1, 2);
        assertThat(vector.row(2)).isZero();
        assertThat(vector.judged(0)).isEqualTo(ResidualDemand.VECTOR);
        // the first of equal axes
        assertThat(axis.worst(100, new double[] {1e-18, 4e-18, 4e-18}).axis()).isEqualTo("y");
    }

    @Test
    void a_limit_from_phase_noise_binds_driven_axes_only_and_the_vector_by_the_least() {
        String derived = "phase_noise: [{offset: 10 Hz, limit: -80 dBc/Hz}], residual: from_phase_noise";
        ResidualDemand axis = demand("axis", derived);
        // y = f sqrt(2 10^(L/10) / S) / f0 = 100 sqrt(2 1e-8 / 0.01) / 1e7; nothing else makes noise here
        double perG = 100 * Math.sqrt(2e-6) / 1e7;
        assertThat(axis.limits(100)).containsExactly(new double[] {perG, Double.POSITIVE_INFINITY, perG}, within(ROUNDING * perG));
        assertThat(demand("vector", derived).limits(100)).containsExactly(new double[] {perG}, within(ROUNDING * perG));
        assertThat(axis.limit(ResidualDemand.VECTOR, 100)).isCloseTo(perG, within(ROUNDING * perG));
        // what is not driven has all the room there is
        assertThat(axis.overDb(100, new double[] {0, 1, 0})).isEqualTo(-300);
        assertThat(demand("vector", derived).overDb(100, new double[] {0, 1, 0})).isPositive();
    }

    @Test
    void without_a_limit_one_ppb_per_g_stands_for_it_and_no_margin_is_told() {
        ResidualDemand demand = demand("axis", "jitter: {limit: 1 mrad}");
        assertThat(demand.asked()).isFalse();
        assertThat(demand.ratio(100, SQUARED)).isCloseTo(6, within(ROUNDING * 6));
        ResidualPoint worst = demand.worst(100, SQUARED);
        assertThat(worst.axis()).isEqualTo("z");
        assertThat(worst.limitPerG()).isInfinite();
        assertThat(worst.marginDb()).isNaN();
        assertThat(worst.ratio()).isNaN();
    }

    @Test
    void what_cannot_be_computed_is_beyond_every_limit() {
        assertThat(demand("axis", STATED).overDb(100, new double[] {0, Double.NaN, 0})).isEqualTo(300);
        assertThat(demand("vector", STATED).overDb(100, new double[] {0, Double.NaN, 0})).isEqualTo(300);
        assertThat(ResidualDemand.squares(new double[] {3, Double.NaN, -2})).containsExactly(9, 0, 4);
    }

    @ParameterizedTest
    @CsvSource({"2, 1, -6.020599913279624", "1, 2, 6.020599913279624", "1, 10, 20", "0, 1, 300", "0, 0, 300", "1, 0, -300",
        "1, Infinity, 300", "1e-20, 1, 300", "NaN, 1, -300"})
    void margins_are_twenty_log_limit_over_value_within_300_db(double value, double limit, double marginDb) {
        assertThat(Decibels.margin(value, limit)).isCloseTo(marginDb, within(ROUNDING * 20));
        assertThat(Decibels.over(value, limit)).isCloseTo(Math.max(-120, -marginDb), within(ROUNDING * 20));
    }

    @Test
    void powers_are_ten_log() {
        assertThat(Decibels.ofPower(100)).isCloseTo(20, within(ROUNDING * 20));
    }
}

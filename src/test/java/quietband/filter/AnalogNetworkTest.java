package quietband.filter;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import org.hipparchus.complex.Complex;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import quietband.filter.analog.AnalogGoal;
import quietband.filter.analog.FoundNetworks;
import quietband.filter.analog.NetworkSearch;
import quietband.filter.analog.PreferredValues;
import quietband.model.Axis;
import quietband.model.Design;
import quietband.model.Stack;
import quietband.response.Models;
import quietband.response.ResidualResponse;
import quietband.spectrum.LogGrid;

/** Lead-lag networks from values that are made. */
class AnalogNetworkTest {

    private static FilterTask task(Design design, int poles, FilterGoal goal) {
        double[] grid = LogGrid.between(80, design.requirement().fromHz(), design.requirement().toHz());
        return new FilterTask(design, FilterForm.TAPS, poles, goal, 10, grid, Optional.empty());
    }

    private static Design lagging(String path) {
        return Models.of(Models.oscillator("") + "cancellation: {sensor: {bandwidth: 6 kHz}" + path + "}\n"
            + "requirement: {band: {from: 10 Hz, to: 2 kHz}, residual: [{frequency: 10 Hz, limit: 0.05 ppb/g}]}\n");
    }

    @Test
    void the_response_is_that_of_its_impedances_and_of_its_corners() {
        AnalogNetwork n = new AnalogNetwork(10e3, 22e3, 1.5e3, 2.2e-9, 47e3, 1e-8);
        for (double f : new double[] {0.1, 30, 700, 5e3, 2e5}) {
            Complex s = new Complex(0, 2 * Math.PI * f);
            Complex before = parallel(new Complex(10e3), s.multiply(2.2e-9).reciprocal().add(1.5e3));
            Complex around = parallel(new Complex(22e3), s.multiply(1e-8).reciprocal().add(47e3));
            Complex expected = around.divide(before);
            Complex corners = one(f, n.leadZeroHz()).divide(one(f, n.leadPoleHz())).multiply(one(f, n.lagZeroHz()))
                .divide(one(f, n.lagPoleHz())).multiply(n.gain());
            // rounding of a few operations
            assertThat(n.at(f).subtract(expected).norm()).isLessThan(1e-12 * expected.norm());
            assertThat(corners.subtract(expected).norm()).isLessThan(1e-12 * expected.norm());
        }
        assertThat(n.gain()).isEqualTo(2.2);
        assertThat(n.leadZeroHz()).isCloseTo(1 / (2 * Math.PI * 11.5e3 * 2.2e-9), within(1e-9));
        // at high frequency r2 || r4 over r1 || r3
        assertThat(n.at(1e12).norm()).isCloseTo((22.0 * 47 / 69) / (10 * 1.5 / 11.5), within(1e-6));
    }

    private static Complex parallel(Complex a, Complex b) {
        return a.multiply(b).divide(a.add(b));
    }

    private static Complex one(double f, double corner) {
        return new Complex(1, f / corner);
    }

    @Test
    void the_rows_of_values_are_those_of_the_standard() {
        double[] e24 = Arrays.stream(PreferredValues.E24.resistors()).filter(v -> v < 1e4).map(v -> v / 1e3).toArray();
        // IEC 60063, from memory
        assertThat(e24).containsExactly(new double[] {1.0, 1.1, 1.2, 1.3, 1.5, 1.6, 1.8, 2.0, 2.2, 2.4, 2.7, 3.0, 3.3, 3.6, 3.9, 4.3, 4.7,
            5.1, 5.6, 6.2, 6.8, 7.5, 8.2, 9.1}, within(1e-12));
        double[] e96 = PreferredValues.E96.resistors();
        assertThat(e96).contains(1e3, 1020, 2.21e4, 4.99e4, 9.76e5, 1e7).hasSize(4 * 96 + 1).isSorted();
        assertThat(PreferredValues.capacitors()).contains(1e-10, 4.7e-9, 1e-6).hasSize(4 * 24 + 1);
        assertThat(PreferredValues.near(e96, 1010.5, 2)).containsExactlyInAnyOrder(1e3, 1020);
    }

    @ParameterizedTest
    @CsvSource({"E24", "E96"})
    void a_sensor_of_one_pole_gets_a_lead_at_that_pole(PreferredValues series) {
        FoundNetworks found = NetworkSearch.find(task(lagging(""), 1, FilterGoal.FLAT), series);
        for (AnalogNetwork n : found.networks()) {
            // the lead's zero against the sensor's pole; its own pole, allowed to 20 dB, still lags by about as much at 6 kHz/10
            assertThat(n.lags()).isFalse();
            assertThat(n.leadZeroHz()).isBetween(4500.0, 6100.0);
            assertThat(n.gain()).isCloseTo(1, within(0.03));
        }
        double plain = norm(lagging(""), List.of(), found.task().grid());
        assertThat(found.value()).isCloseTo(norm(lagging(""), found.networks(), found.task().grid()), within(1e-9 * plain));
        // what its pole at ten times the zero leaves is about a tenth
        assertThat(found.value()).isLessThan(0.15 * plain);
        assertThat(found.ideal()).isLessThanOrEqualTo(found.value());
        // weights take out what the steps of the gain leave
        assertThat(found.weighted()).isLessThanOrEqualTo(found.value());
        List<AnalogNetwork> scaled = Axis.ALL.stream().map(a -> found.networks().get(a.ordinal()).times(found.factor().get(a))).toList();
        assertThat(scaled.get(1).at(700).norm()).isCloseTo(found.factor().y() * found.networks().get(1).at(700).norm(), within(1e-12));
        assertThat(found.weighted()).isCloseTo(norm(lagging(""), scaled, found.task().grid()), within(1e-9 * plain));
    }

    /** Root of the sum of |y|^2 with networks in the path, by the residual's own road: bolted, one axis each. */
    private static double norm(Design design, List<AnalogNetwork> networks, double[] grid) {
        ResidualResponse response = new ResidualResponse(design);
        double[] re = new double[3];
        double[] im = new double[3];
        double sum = 0;
        for (double f : grid) {
            response.at(f);
            response.correction(false, re, im);
            for (Axis axis : Axis.ALL) {
                Complex c = new Complex(re[axis.ordinal()], im[axis.ordinal()]);
                Complex turned = networks.isEmpty() ? c : c.multiply(networks.get(axis.ordinal()).at(f));
                double size = turned.negate().add(design.weightsPerG().get(axis)).norm();
                sum += size * size;
            }
        }
        return Math.sqrt(sum);
    }

    @Test
    void on_the_main_model_two_poles_are_no_worse_than_one_and_no_step_of_one_part_helps() {
        Design design = Models.shipped("ridge-relay.yaml");
        FoundNetworks one = NetworkSearch.find(task(design, 1, FilterGoal.LIMIT), PreferredValues.E96);
        FoundNetworks two = NetworkSearch.find(task(design, 2, FilterGoal.LIMIT), PreferredValues.E96);
        assertThat(two.value()).isLessThanOrEqualTo(1.02 * one.value());
        double before = FilteredResidual.of(design.withCancellation(design.cancellation().map(c -> c.withoutFilter()))).worst().ratio();
        assertThat(one.value()).isLessThan(0.9 * before);
        assertThat(FilteredResidual.of(design, two.networks()).worst().ratio()).isBetween(two.value() * (1 - 1e-9), two.value() * 1.01);
        AnalogGoal aim = new AnalogGoal(two.task());
        aim.hold(2, two.networks());
        double[] parts = two.networks().get(2).parts();
        for (int k = 0; k < parts.length; k++) {
            for (int step = -1; step <= 1; step += 2) {
                double[] other = parts.clone();
                double[] row = k == 3 || k == 5 ? PreferredValues.capacitors() : PreferredValues.E96.resistors();
                other[k] = parts[k] == 0 ? 0 : PreferredValues.step(row, parts[k], step);
                AnalogNetwork n = AnalogNetwork.of(other);
                assertThat(n.peak() > 10 ? Double.POSITIVE_INFINITY : aim.value(n, Double.POSITIVE_INFINITY))
                    .isGreaterThanOrEqualTo(aim.value(two.networks().get(2), Double.POSITIVE_INFINITY));
            }
        }
        two.networks().forEach(n -> assertThat(n.peak()).isLessThanOrEqualTo(10 * (1 + 1e-9)));
    }

    @Test
    void without_a_filter_the_model_itself_is_the_judge() {
        Design design = Models.shipped("ridge-relay.yaml");
        var verdict = quietband.response.verdict.Assessor.assess(design).verdict(Stack.COMBINED).worst();
        // maxima are refined to 1e-4 dB, 1.2e-5, on either road
        assertThat(FilteredResidual.of(design).worst().residualPerG()).isCloseTo(verdict.residualPerG(),
            within(2.4e-5 * verdict.residualPerG()));
    }

    @Test
    void noise_is_never_above_no_correction() {
        Design design = Models.shipped("ridge-relay.yaml");
        FoundNetworks found = NetworkSearch.find(task(design, 1, FilterGoal.NOISE), PreferredValues.E24);
        AnalogGoal aim = new AnalogGoal(found.task());
        AnalogNetwork flat = new AnalogNetwork(1e4, 1e4, 0, 0, 0, 0);
        aim.hold(0, List.of(flat, flat, flat));
        assertThat(found.value()).isLessThan(aim.goal(flat));
        NoiseTerms noise = new NoiseTerms(design, PathResponse.of(design), false);
        ResidualResponse plain = new ResidualResponse(design);
        double[] re = new double[3];
        double[] im = new double[3];
        double[] squared = new double[3];
        for (FilteredResidual.Row row : FilteredResidual.of(design, found.networks()).rows()) {
            double f = row.frequencyHz();
            plain.at(f);
            plain.residual(Stack.ISOLATED, re, im);
            double floor = noise.fixed(f);
            for (int i = 0; i < 3; i++) {
                squared[i] = re[i] * re[i] + im[i] * im[i];
                floor += noise.sensor(i, f) * Math.pow(found.networks().get(i).at(f).norm(), 2);
            }
            for (var line : noise.rows()) {
                double total = floor;
                for (Axis axis : line.axes()) {
                    total += Math.pow(row.perG()[axis.ordinal()], 2) * noise.vibration(axis, f);
                }
                // between the points of the search's grid the condition may be a little worse
                assertThat(10 * Math.log10(total / noise.without(line, f, squared))).isLessThan(0.011);
            }
        }
    }

    @Test
    void what_cannot_be_found_is_refused() {
        assertThatThrownBy(() -> NetworkSearch.find(task(lagging(""), 3, FilterGoal.FLAT), PreferredValues.E24))
            .isInstanceOf(FilterException.class).hasMessageContaining("one pole or two");
        Design none = Models.shipped("platform-only.yaml");
        assertThatThrownBy(() -> NetworkSearch.find(task(none, 1, FilterGoal.FLAT), PreferredValues.E24))
            .isInstanceOf(FilterException.class).hasMessageContaining("cancellation");
        Design unlimited = Models.of(Models.oscillator("") + "cancellation: {sensor: {bandwidth: 6 kHz}}\n");
        assertThatThrownBy(() -> NetworkSearch.find(task(unlimited, 1, FilterGoal.LIMIT), PreferredValues.E24))
            .isInstanceOf(FilterException.class).hasMessageContaining("requirement.residual");
    }
}

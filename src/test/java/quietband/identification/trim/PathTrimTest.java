package quietband.identification.trim;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.DoubleSupplier;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import quietband.model.Axis;
import quietband.model.Cancellation;
import quietband.model.Cancellation.PathError;
import quietband.model.Design;
import quietband.model.Stack;
import quietband.model.Vec;
import quietband.model.quantity.Quantities;
import quietband.motion.run.Dwell;
import quietband.response.Models;
import quietband.response.ResidualResponse;
import quietband.spectrum.LogGrid;

/** Gain, phase and delay errors of a correction found again from runs of units that have them. */
class PathTrimTest {

    private static final Design MODEL = Models.shipped("ridge-relay.yaml");
    private static final Vec GAIN = new Vec(0.06, -0.04, 0.02);
    private static final Vec PHASE = new Vec(0.01, -0.02, 0.015);
    private static final Vec DELAY = new Vec(3e-6, -2e-6, 5e-6);

    /** The model's unit with errors, and with the weights of the model whatever its own sensitivity. */
    private static Design unit(PathError error, double own) {
        Quantities q = MODEL.quantities();
        for (Axis axis : Axis.ALL) {
            double g = MODEL.oscillator().resonator().sensitivityPerG().get(axis);
            q = q.with("oscillator.resonator.sensitivity." + axis.letter(), g * own);
        }
        return MODEL.with(q).withCancellation(MODEL.cancellation().map(c -> new Cancellation(c.calibratedEach(),
            Optional.of(MODEL.weightsPerG()), c.sensor(), c.path(), c.tuning(), error)));
    }

    private static TrimmedUnit trim(Design unit, double[] f, double noise, boolean stated, long seed) {
        ShakenUnit shaken = new ShakenUnit(unit, f);
        DoubleSupplier normal = ShakenUnit.noise(seed);
        return TrimSolver.of(MODEL, false, "", shaken.run(Stack.ISOLATED, noise, stated, normal),
            shaken.run(Stack.COMBINED, noise, stated, normal));
    }

    @Test
    void without_noise_the_errors_come_back_exactly() {
        Design unit = unit(new PathError(GAIN, PHASE, DELAY), 1.03);
        TrimmedUnit found = trim(unit, LogGrid.between(20, 10, 2000), 0, true, -1);
        for (TrimmedUnit.Sensor s : found.axes()) {
            // a fit without noise ends at the rounding of its sums
            assertThat(s.gain().value()).isCloseTo(GAIN.get(s.axis()), within(1e-9));
            assertThat(s.phase().value()).isCloseTo(PHASE.get(s.axis()), within(1e-9));
            assertThat(s.delay().value()).isCloseTo(DELAY.get(s.axis()), within(1e-14));
            assertThat(found.sensitivityPerG().get(s.axis())).isCloseTo(1.03 * MODEL.weightsPerG().get(s.axis()), within(1e-18));
        }
        assertThat(found.notes()).isEmpty();
    }

    @ParameterizedTest
    @CsvSource({"true, 1", "false, 2"})
    void in_200_runs_with_noise_the_95_percent_intervals_hold_the_truth_as_often_as_they_say(boolean stated, long first) {
        Design unit = unit(new PathError(GAIN, PHASE, DELAY), 1.03);
        double[] f = LogGrid.between(12, 10, 2000);
        double[] weights = noiseless(unit, f);
        int[] held = new int[12];
        for (long seed = first; seed < first + 2 * 200; seed += 2) {
            TrimmedUnit found = trim(unit, f, 0.02, stated, seed);
            for (TrimmedUnit.Sensor s : found.axes()) {
                int i = s.axis().ordinal();
                held[i] += within95(s.gain(), GAIN.get(i));
                held[3 + i] += within95(s.phase(), PHASE.get(i));
                held[6 + i] += within95(s.delay(), DELAY.get(i));
                held[9 + i] += within95(s.newWeight(), weights[i]);
            }
        }
        // 200 trials at 0.95: 190, standard deviation 3.08; outside 178..199 with probability 0.0003 each
        assertThat(Arrays.stream(held).boxed()).allMatch(n -> n >= 178 && n <= 199, Arrays.toString(held));
        // all together: 2280 of 2400; phase and delay of a sensor go together, so the deviation is at most twice sqrt(114)
        assertThat(Arrays.stream(held).sum()).isBetween(2280 - 64, 2280 + 64);
    }

    private static double[] noiseless(Design unit, double[] f) {
        return trim(unit, f, 0, true, -1).axes().stream().mapToDouble(s -> s.newWeight().value()).toArray();
    }

    private static int within95(TrimmedUnit.Found found, double truth) {
        return Math.abs(found.value() - truth) <= found.half() ? 1 : 0;
    }

    @Test
    void a_gain_error_alone_is_taken_out_by_the_new_weights() {
        Design unit = unit(new PathError(GAIN, Vec.ZERO, Vec.ZERO), 1);
        double[] f = LogGrid.between(30, 10, 2000);
        TrimmedUnit found = trim(unit, f, 0, true, -1);
        Design ideal = unit(PathError.NONE, 1);
        // the trimmed unit is one whose path has no error, with nearly the same least-squares weights
        double[] best = noiseless(ideal, f);
        for (TrimmedUnit.Sensor s : found.axes()) {
            int i = s.axis().ordinal();
            assertThat(s.newWeight().value()).isCloseTo(best[i] / (1 + GAIN.get(i)), within(1e-6 * Math.abs(best[i])));
        }
    }

    @Test
    void the_trimmed_unit_leaves_what_was_predicted_and_less_than_before() {
        Design unit = unit(new PathError(GAIN, PHASE, DELAY), 1.03);
        double[] f = LogGrid.between(40, 10, 2000);
        TrimmedUnit found = trim(unit, f, 0.005, true, 7);
        Vec weights = Vec.of(found.axes().stream().mapToDouble(s -> s.newWeight().value()).toArray());
        Design trimmed = unit.withCancellation(unit.cancellation().map(c -> new Cancellation(c.calibratedEach(),
            Optional.of(weights), c.sensor(), c.path(), c.tuning(), c.error())));
        double before = rms(unit, f);
        double after = rms(trimmed, f);
        assertThat(found.rms(false)).isCloseTo(before, within(0.01 * before));
        // predicted from noisy readings of the run without correction: 0.5 % of them is part of the prediction
        assertThat(found.rms(true)).isCloseTo(after, within(0.1 * after));
        assertThat(after).isLessThan(0.6 * before);
    }

    private static double rms(Design design, double[] f) {
        ResidualResponse response = new ResidualResponse(design);
        double[] re = new double[3];
        double[] im = new double[3];
        double sum = 0;
        for (double each : f) {
            response.at(each);
            response.residual(Stack.COMBINED, re, im);
            for (int j = 0; j < 3; j++) {
                sum += re[j] * re[j] + im[j] * im[j];
            }
        }
        return Math.sqrt(sum / (3 * f.length));
    }

    @Test
    void a_wrong_platform_is_told_and_raises_the_errors() {
        Design other = MODEL.with(MODEL.quantities().with("platform.springs.corners.stiffness",
            1.3 * MODEL.quantities().valueOf("platform.springs.corners.stiffness.x")));
        Design unit = other.withCancellation(other.cancellation().map(c -> c.withError(PathError.NONE)));
        TrimmedUnit found = trim(unit, LogGrid.between(30, 10, 2000), 0.01, true, 3);
        assertThat(found.quality().chiSquare()).isGreaterThan(10);
        assertThat(found.notes()).anyMatch(n -> n.contains("with the cancellation off") && n.contains("fit"));
    }

    @Test
    void large_delays_and_a_wrong_polarity_are_found() {
        PathError error = new PathError(new Vec(0.5, -0.3, 0), new Vec(Math.PI - 0.1, 0, 0), new Vec(150e-6, -90e-6, 400e-6));
        TrimmedUnit found = trim(unit(error, 1), LogGrid.between(30, 10, 2000), 1e-3, true, 5);
        for (TrimmedUnit.Sensor s : found.axes()) {
            assertThat(Math.abs(s.delay().value() - error.delay().get(s.axis()))).isLessThan(4 * s.delay().error());
            assertThat(Math.abs(s.gain().value() - error.gain().get(s.axis()))).isLessThan(4 * s.gain().error());
        }
        assertThat(found.notes()).anyMatch(n -> n.contains("sensor x") && n.contains("polarity"));
    }

    @Test
    void one_frequency_gives_a_phase_and_says_that_it_may_be_a_delay() {
        double f = 100;
        PathError error = new PathError(Vec.ZERO, Vec.ZERO, DELAY);
        TrimmedUnit found = trim(unit(error, 1), new double[] {f}, 1e-3, true, -1);
        for (TrimmedUnit.Sensor s : found.axes()) {
            assertThat(s.phase().value()).isCloseTo(-2 * Math.PI * f * DELAY.get(s.axis()), within(1e-9));
            assertThat(s.delay().value()).isNaN();
        }
        assertThat(found.notes()).hasSize(3).allMatch(n -> n.contains("phase from delay"));
    }

    @Test
    void a_narrow_span_is_told_and_has_large_errors() {
        Design unit = unit(new PathError(GAIN, PHASE, DELAY), 1);
        TrimmedUnit narrow = trim(unit, new double[] {200, 205, 210}, 0.01, true, 9);
        TrimmedUnit wide = trim(unit, new double[] {20, 205, 1500}, 0.01, true, 9);
        assertThat(narrow.notes()).anyMatch(n -> n.contains("hardly told apart"));
        assertThat(wide.notes()).noneMatch(n -> n.contains("hardly told apart"));
        assertThat(narrow.axes().get(0).delay().error()).isGreaterThan(20 * wide.axes().get(0).delay().error());
    }

    @Test
    void a_unit_bolted_to_the_shaker_is_trimmed_as_bolted() {
        Design unit = unit(new PathError(GAIN, PHASE, DELAY), 1);
        ShakenUnit shaken = new ShakenUnit(unit, LogGrid.between(12, 10, 2000));
        Map<Axis, List<TrimRun.Reading>> off = shaken.run(Stack.BARE, 0, true, ShakenUnit.noise(-1));
        TrimmedUnit found = TrimSolver.of(MODEL, true, "", off, shaken.run(Stack.CANCELLED, 0, true, ShakenUnit.noise(-1)));
        found.axes().forEach(s -> assertThat(s.delay().value()).isCloseTo(DELAY.get(s.axis()), within(1e-13)));
    }

    @Test
    void runs_of_the_time_domain_give_the_errors_back() {
        Design unit = unit(new PathError(GAIN, PHASE, DELAY), 1.03);
        Map<Axis, List<TrimRun.Reading>> off = new EnumMap<>(Axis.class);
        Map<Axis, List<TrimRun.Reading>> on = new EnumMap<>(Axis.class);
        for (Axis axis : Axis.ALL) {
            off.put(axis, new ArrayList<>());
            on.put(axis, new ArrayList<>());
            for (double f : new double[] {60, 200, 800}) {
                Dwell.Result r = Dwell.run(unit, new Dwell.Request(axis, f, 1, 0.1, true));
                off.get(axis).add(reading(r, Stack.ISOLATED, f));
                on.get(axis).add(reading(r, Stack.COMBINED, f));
            }
        }
        TrimmedUnit found = TrimSolver.of(MODEL, false, "", off, on);
        for (TrimmedUnit.Sensor s : found.axes()) {
            // the time domain agrees with the frequency domain to some 1e-3 of a reading
            assertThat(s.gain().value()).isCloseTo(GAIN.get(s.axis()), within(2e-3));
            assertThat(s.phase().value()).isCloseTo(PHASE.get(s.axis()), within(2e-3));
            // a milliradian at 800 Hz is 0.2 us
            assertThat(s.delay().value()).isCloseTo(DELAY.get(s.axis()), within(0.4e-6));
        }
    }

    private static TrimRun.Reading reading(Dwell.Result r, Stack stack, double f) {
        int i = r.stacks().indexOf(stack);
        return new TrimRun.Reading(0, f, r.re()[i], r.im()[i], 1e-3, Double.NaN);
    }

    @Test
    void weights_of_the_run_stated_in_the_file_are_those_the_gain_is_told_against() {
        Design unit = unit(new PathError(GAIN, PHASE, DELAY), 1.03);
        ShakenUnit shaken = new ShakenUnit(unit, LogGrid.between(12, 10, 2000));
        Map<Axis, List<TrimRun.Reading>> on = shaken.run(Stack.COMBINED, 0, true, ShakenUnit.noise(-1));
        on.replaceAll((axis, rows) -> rows.stream().map(r -> new TrimRun.Reading(0, r.frequencyHz(), r.re(), r.im(), r.relativeError(),
            MODEL.weightsPerG().get(axis) / 2)).toList());
        TrimmedUnit found = TrimSolver.of(MODEL, false, "", shaken.run(Stack.ISOLATED, 0, true, ShakenUnit.noise(-1)), on);
        TrimmedUnit plain = trim(unit, LogGrid.between(12, 10, 2000), 0, true, -1);
        for (TrimmedUnit.Sensor s : found.axes()) {
            // half the weight said, twice the gain found; the new weight is for that gain
            assertThat(1 + s.gain().value()).isCloseTo(2 * (1 + GAIN.get(s.axis())), within(1e-8));
            double before = plain.axes().get(s.axis().ordinal()).newWeight().value();
            assertThat(s.newWeight().value()).isCloseTo(before / 2, within(1e-8 * Math.abs(before)));
        }
    }
}

package quietband.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.io.PrintWriter;
import java.io.StringWriter;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.SplittableRandom;
import org.hipparchus.complex.Complex;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import quietband.cancellation.CancellationPath;
import quietband.model.Design;
import quietband.model.edit.ModelFile;
import quietband.platform.Assembly;
import quietband.platform.PlatformMotion;
import quietband.response.verdict.Assessor;
import quietband.response.verdict.StackVerdict;
import quietband.spectrum.LogGrid;

/** README's walk through fit: predict, measure an invented unit, fit, design the filter again; judged on the invented truth. */
class WalkThroughTest {

    private static final Path MODEL = Path.of("models/ridge-relay.yaml");
    private static final Path SHELF = Path.of("models/runs/ridge-built-shelf.csv");
    private static final Path PATH = Path.of("models/runs/ridge-built-path.csv");

    /** What the invented unit is really like where it is not as designed. */
    private static final Map<String, Double> TRUTH = Map.ofEntries(
        Map.entry("platform.springs.corners.stiffness.x", 13_600.0), Map.entry("platform.springs.corners.stiffness.y", 13_900.0),
        Map.entry("platform.springs.corners.stiffness.z", 18_800.0), Map.entry("platform.springs.corners.loss_factor.x", 0.21),
        Map.entry("platform.springs.corners.loss_factor.y", 0.21), Map.entry("platform.springs.corners.loss_factor.z", 0.21),
        Map.entry("cancellation.error.gain.x", 0.035), Map.entry("cancellation.error.gain.y", -0.02),
        Map.entry("cancellation.error.gain.z", -0.045), Map.entry("cancellation.error.delay.x", 7e-6),
        Map.entry("cancellation.error.delay.y", 7e-6), Map.entry("cancellation.error.delay.z", 7e-6));
    private static final List<String> FREE = List.of("platform.springs.corners.stiffness", "platform.springs.corners.loss_factor",
        "cancellation.error.gain", "cancellation.error.delay");

    @TempDir
    private static Path folder;
    private static ModelFile designed;
    private static Design truth;

    @BeforeAll
    static void invent() {
        designed = ModelFile.read(MODEL);
        double[] numbers = designed.design().quantities().values();
        TRUTH.forEach((path, value) -> {
            for (int slot : designed.design().quantities().find(path).slots()) {
                numbers[slot] = value;
            }
        });
        truth = designed.design().with(designed.design().quantities().with(numbers));
    }

    /** Magnitude, phase in deg and stated noise of x, y, z; noise of a share of the magnitude on both parts. */
    private static String csv(String what, double[] f, double noise, long seed, Response response) {
        SplittableRandom random = new SplittableRandom(seed);
        StringBuilder csv = new StringBuilder("# " + what + "\n# INVENTED for the shipped examples: unit 1 of the Ridge relay, computed "
            + "with noise\nfrequency_hz,x_ratio,x_phase_deg,x_relative_error,y_ratio,y_phase_deg,y_relative_error,"
            + "z_ratio,z_phase_deg,z_relative_error\n");
        for (double at : f) {
            csv.append(String.format(Locale.ROOT, "%.4f", at));
            double rounded = Double.parseDouble(String.format(Locale.ROOT, "%.4f", at));
            for (int axis = 0; axis < 3; axis++) {
                Complex h = response.at(axis, rounded);
                double size = noise * h.norm();
                h = h.add(new Complex(size * random.nextGaussian(), size * random.nextGaussian()));
                csv.append(String.format(Locale.ROOT, ",%.5g,%.3f,%s", h.norm(), Math.toDegrees(h.getArgument()), noise));
            }
            csv.append('\n');
        }
        return csv.toString();
    }

    /** One number of a response. */
    private interface Response {
        Complex at(int axis, double f);
    }

    private static String shelf() {
        PlatformMotion motion = new PlatformMotion(new Assembly(truth.platform().orElseThrow()));
        double[] re = new double[9];
        double[] im = new double[9];
        return csv("Transmissibility from the shelf to the platform's sensor, along the driven axis", LogGrid.between(40, 20, 500),
            0.02, 11, (axis, f) -> {
                motion.at(f);
                motion.accelerationOf(truth.cancellation().orElseThrow().sensor().position(), re, im);
                return new Complex(re[4 * axis], im[4 * axis]);
            });
    }

    private static String path() {
        CancellationPath path = new CancellationPath(truth.cancellation().orElseThrow());
        return csv("Path from sensed acceleration to corrected frequency over what was wanted", LogGrid.between(30, 10, 2000), 0.005, 12,
            path::at);
    }

    private static void run(String... args) {
        StringWriter err = new StringWriter();
        assertThat(Quietband.run(new PrintWriter(new StringWriter()), new PrintWriter(err), args)).as(err.toString()).isZero();
    }

    /** The worst residual over its limit of the true unit with the filter of a model, in dB; above 0 it fails. */
    private static double onTruth(Path withFilter) {
        Design found = ModelFile.read(withFilter).design();
        StackVerdict verdict = Assessor.assess(truth.withCancellation(truth.cancellation().map(c ->
            c.withFilters(found.cancellation().orElseThrow().path().filters())))).verdict(quietband.model.Stack.COMBINED);
        return -verdict.worst().marginDb();
    }

    /** Written anew with {@code -DargLine=-Dquietband.write=true}, when the physics behind them changes. */
    @Test
    void shipped_records_are_those_of_the_invented_truth() throws IOException {
        if (Boolean.getBoolean("quietband.write")) {
            Files.writeString(SHELF, shelf());
            Files.writeString(PATH, path());
        }
        assertThat(SHELF).hasContent(shelf());
        assertThat(PATH).hasContent(path());
    }

    @Test
    void a_filter_on_the_fitted_model_serves_the_true_unit_better_by_3_db_or_more() throws IOException {
        run("filter", MODEL.toString(), "--goal", "limit", "--out", folder.resolve("before").toString());
        run("fit", MODEL.toString(), SHELF.toString(), PATH.toString(), "--measured", "transmissibility,path", "--free",
            String.join(",", FREE), "--damping", "loss", "--out", folder.resolve("fit").toString());
        run("filter", folder.resolve("fit/model.yaml").toString(), "--goal", "limit", "--out", folder.resolve("after").toString());
        double asIs = onTruth(MODEL);
        double before = onTruth(folder.resolve("before/model.yaml"));
        double after = onTruth(folder.resolve("after/model.yaml"));
        System.out.printf(Locale.ROOT, "worst residual over limit on the truth: as designed %+.2f dB, filter on the design %+.2f dB, "
            + "filter on the fit %+.2f dB%n", asIs, before, after);
        assertThat(before - after).isGreaterThan(3);
        assertThat(after).isNegative();
        ModelFile fitted = ModelFile.read(folder.resolve("fit/model.yaml"));
        TRUTH.forEach((path, value) ->
            // 2 % noise on 40 points of the shelf, 0.5 % on 30 of the path: standard errors below 1 % of stiffness, 3 % of loss, 0.2 us
            assertThat(fitted.design().quantities().valueOf(path)).as(path).isBetween(
                value - Math.max(0.08 * Math.abs(value), 6e-7), value + Math.max(0.08 * Math.abs(value), 6e-7)));
    }
}

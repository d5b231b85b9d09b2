package quietband.cli;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.io.IOException;
import java.io.PrintWriter;
import java.io.StringWriter;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Locale;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import quietband.model.Design;
import quietband.model.edit.ModelFile;
import quietband.platform.Assembly;
import quietband.platform.PlatformMotion;
import quietband.spectrum.LogGrid;

/** The command fit as a person calls it. */
class FitCommandTest {

    private static final Path MODEL = Path.of("models/trial-a-cured.yaml");

    @TempDir
    private Path folder;

    private final StringWriter out = new StringWriter();
    private final StringWriter err = new StringWriter();

    private int run(String... args) {
        return Quietband.run(new PrintWriter(out), new PrintWriter(err), args);
    }

    /** The transmissibility of a design at its sensor, with noise of a share of the magnitude. */
    private Path measured(Design truth, double noise) throws IOException {
        SplittableRandom random = new SplittableRandom(4);
        PlatformMotion motion = new PlatformMotion(new Assembly(truth.platform().orElseThrow()));
        StringBuilder csv = new StringBuilder("# invented\nfrequency_hz,x_ratio,x_phase_deg,x_relative_error,z_db\n");
        double[] re = new double[9];
        double[] im = new double[9];
        for (double f : LogGrid.between(60, 20, 1000)) {
            motion.at(f);
            motion.accelerationOf(truth.cancellation().orElseThrow().sensor().position(), re, im);
            double x = Math.hypot(re[0], im[0]) * (1 + noise * random.nextGaussian());
            double phase = Math.toDegrees(Math.atan2(im[0], re[0]) + noise * random.nextGaussian());
            double z = Math.hypot(re[8], im[8]) * (1 + noise * random.nextGaussian());
            csv.append(String.format(Locale.ROOT, "%.10e,%.10e,%.8f,%s,%.8f%n", f, x, phase, noise, 20 * Math.log10(z)));
        }
        Path file = folder.resolve("measured.csv");
        Files.writeString(file, csv);
        return file;
    }

    @Test
    void stiffness_and_damping_are_found_and_written_back_with_comments_kept() throws IOException {
        ModelFile model = ModelFile.read(MODEL);
        Design truth = model.withNumber("platform.springs.corners.stiffness.x", 8000)
            .withNumber("platform.springs.corners.stiffness.z", 14000)
            .withNumber("platform.springs.corners.damping.x", 9).design();
        int status = run("fit", MODEL.toString(), measured(truth, 0.02).toString(), "--measured", "transmissibility", "--free",
            "platform.springs.corners.stiffness.x, platform.springs.corners.stiffness.z,platform.springs.corners.damping.x",
            "--damping", "viscous", "--out", folder.resolve("fit").toString());
        assertThat(status).as(err.toString()).isZero();
        ModelFile after = ModelFile.read(folder.resolve("fit/model.yaml"));
        // 60 points of 2 % noise: standard errors near 0.3 % of a stiffness and 1 % of a damping; four of them
        assertThat(after.design().quantities().valueOf("platform.springs.corners.stiffness.x")).isCloseTo(8000, within(100.0));
        assertThat(after.design().quantities().valueOf("platform.springs.corners.stiffness.z")).isCloseTo(14000, within(200.0));
        assertThat(after.design().quantities().valueOf("platform.springs.corners.damping.x")).isCloseTo(9, within(0.4));
        assertThat(after.text()).contains(model.text().lines().filter(l -> l.startsWith("#")).toList());
        assertThat(after.design().tolerances()).hasSize(model.design().tolerances().size() + 3);
        assertThat(Files.readString(folder.resolve("fit/summary.json"))).contains("\"values\"", "\"standard_error\"",
            "\"of\" : \"platform.springs.corners.stiffness.x\"", "\"unit\" : \"N/m\"");
        assertThat(out.toString().lines()).allMatch(line -> line.length() <= 80);
        assertThat(run("assess", folder.resolve("fit/model.yaml").toString(), "--out", folder.resolve("a").toString())).isZero();
    }

    @Test
    void what_makes_no_sense_is_refused_with_place_and_remedy() throws IOException {
        Path file = measured(ModelFile.read(MODEL).design(), 0.02);
        String[][] cases = {
            {"sensitivity", "platform.mass", "x_ratio", "x_ppb_per_g"},
            {"transmissibility", "platform.springs.corners.stifness.x", "--free", "stiffness"},
            {"transmissibility", "platform.springs.corners.stiffness.y", "does not depend", "another axis"},
            {"transmissibility", "cancellation.path.converter_bits", "whole number", "model"}};
        for (String[] c : cases) {
            err.getBuffer().setLength(0);
            int status = run("fit", MODEL.toString(), file.toString(), "--measured", c[0], "--free", c[1], "--out",
                folder.resolve("bad").toString());
            assertThat(status).as(c[1] + err).isEqualTo(2);
            assertThat(err.toString()).contains(c[2], c[3]).doesNotContain("\tat ");
            assertThat(folder.resolve("bad")).doesNotExist();
        }
    }
}

package quietband.cli;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.hipparchus.complex.Complex;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import quietband.cancellation.CancellationPath;
import quietband.model.Axis;
import quietband.model.Design;
import quietband.model.edit.ModelFile;
import quietband.response.verdict.Assessor;
import quietband.response.verdict.StackVerdict;
import quietband.spectrum.LogGrid;

/** filter --response: a path measured at the bench in place of the model's. */
class FilterResponseTest {

    private static final String MODEL = "models/ridge-relay.yaml";

    @TempDir
    private Path folder;

    /** The path of a design without its digital filter, as a bench would give it. */
    private Path measured(Design design, int points, double from, double to) throws IOException {
        CancellationPath path = new CancellationPath(design.cancellation().orElseThrow().withoutFilter());
        StringBuilder text = new StringBuilder("frequency_hz,x_ppb_per_g,x_phase_deg,y_ppb_per_g,y_phase_deg,z_ppb_per_g,z_phase_deg\n");
        for (double f : LogGrid.between(points, from, to)) {
            text.append(f);
            for (Axis axis : Axis.ALL) {
                Complex p = path.at(axis.ordinal(), f).multiply(1e9 * design.weightsPerG().get(axis));
                text.append(',').append(p.norm()).append(',').append(Math.toDegrees(p.getArgument()));
            }
            text.append('\n');
        }
        return Files.writeString(folder.resolve("path.csv"), text);
    }

    private Run filter(Path response, String out) {
        return Run.of("filter", MODEL, "--response", response, "--count", 5, "--max-gain", "30 dB", "--points", 120, "--out",
            folder.resolve(out));
    }

    private double summary(String out, String pattern) throws IOException {
        Matcher m = Pattern.compile(pattern + "\\D*?(-?[0-9.]+(e-?[0-9]+)?)", Pattern.DOTALL)
            .matcher(Files.readString(folder.resolve(out + "/summary.json")));
        assertThat(m.find()).as(pattern).isTrue();
        return Double.parseDouble(m.group(1));
    }

    @Test
    void a_bench_that_measures_the_model_gives_the_filter_of_the_model() throws IOException {
        Design design = ModelFile.read(Path.of(MODEL)).design();
        assertThat(filter(measured(design, 400, 10, 2000), "m").status()).isZero();
        assertThat(Run.of("filter", MODEL, "--count", 5, "--max-gain", "30 dB", "--points", 120, "--out", folder.resolve("p")).status())
            .isZero();
        double plain = summary("p", "sum_of_squares.*?\"norm_ppb_per_g\"");
        // 400 points over the band: the straight lines between them are off by some 1e-5 of the path
        assertThat(summary("m", "sum_of_squares.*?\"norm_ppb_per_g\"")).isCloseTo(plain, within(1e-2 * plain));
        assertThat(summary("m", "with_measured_response.*?residual_after.*?worst_ratio"))
            .isCloseTo(summary("m", "\"residual_after\".*?worst_ratio"), within(2e-3));
    }

    @Test
    void a_path_that_is_slower_and_stronger_than_the_model_is_made_up_for() throws IOException {
        ModelFile file = ModelFile.read(Path.of(MODEL));
        ModelFile real = file.withValue("cancellation.error.delay", "20 us").withValue("cancellation.error.gain", "8 %");
        Run run = filter(measured(real.design(), 400, 10, 2000), "m");
        assertThat(run.status()).isZero();
        assertThat(run.out()).contains("with the measured response");
        double before = summary("m", "with_measured_response.*?residual_before.*?worst_ratio");
        double after = summary("m", "with_measured_response.*?residual_after.*?worst_ratio");
        // the model with the same errors, assessed: before with its own filter, after with the one found
        assertThat(before).isCloseTo(ratio(real.design()), within(1e-3 * before));
        Design found = ModelFile.read(folder.resolve("m/model.yaml")).design();
        Design both = real.design().withCancellation(real.design().cancellation().map(c -> c.withFilters(
            found.cancellation().orElseThrow().path().filters())));
        assertThat(after).isCloseTo(ratio(both), within(2e-3));
        assertThat(after).isLessThan(before / 5);
    }

    private static double ratio(Design design) {
        StackVerdict v = Assessor.assess(design).verdict(quietband.model.Stack.fullest(design));
        return v.worst().residualPerG() / v.worst().limitPerG();
    }

    @Test
    void a_response_of_the_opposite_sign_is_told() throws IOException {
        Design design = ModelFile.read(Path.of(MODEL)).design();
        Design turned = ModelFile.read(Path.of(MODEL)).withValue("cancellation.error.phase", "{x: 180 deg}").design();
        assertThat(design.weightsPerG().x()).isPositive();
        assertThat(filter(measured(turned, 200, 10, 2000), "m").err()).contains("axis x", "opposite", "polarity")
            .doesNotContain("axis y of");
    }

    @ParameterizedTest
    @CsvSource(delimiter = '|', textBlock = """
        z_ppb_per_g,z_phase_deg | z_phase_deg,z_ratio | 10 | 2000 | different units | ratios
        x_ppb_per_g             | x_ppm_per_g         | 10 | 2000 | x_ppm_per_g | x_ppb_per_g
        frequency_hz            | frequency_hz        | 20 | 2000 | covers 20.000 | measure the whole band
        frequency_hz            | frequency_hz        | 10 | 1500 | to 1500.0 Hz | measure the whole band
        """)
    void responses_that_cannot_serve_are_refused(String text, String by, double from, double to, String found, String remedy)
        throws IOException {
        Path good = measured(ModelFile.read(Path.of(MODEL)).design(), 60, from, to);
        Path bad = Files.writeString(folder.resolve("bad.csv"), Files.readString(good).replaceFirst(text, by));
        Run run = filter(bad, "m");
        assertThat(run.status()).isEqualTo(2);
        assertThat(run.err()).contains(found, remedy).doesNotContain("Exception");
        assertThat(folder.resolve("m")).doesNotExist();
    }

    @Test
    void a_missing_axis_a_zero_and_a_phase_that_turns_too_fast_are_refused() throws IOException {
        Path file = Files.writeString(folder.resolve("r.csv"), "frequency_hz,x_ppb_per_g,x_phase_deg\n10,0.3,0\n2000,0.3,-20\n");
        assertThat(filter(file, "m").err()).contains("axis y is missing");
        Files.writeString(file, "frequency_hz,x_ppb_per_g,x_phase_deg,y_ppb_per_g,y_phase_deg,z_ppb_per_g\n10,1,0,1,0,1\n2000,1,0,1,0,1\n");
        assertThat(filter(file, "m").err()).contains("axis z has no phase", "z_phase_deg");
        String head = "frequency_hz,x_ppb_per_g,x_phase_deg,y_ppb_per_g,y_phase_deg,z_ppb_per_g,z_phase_deg\n";
        Files.writeString(file, head + "10,0.3,0,0.3,0,0,0\n2000,0.3,-20,0.3,-20,0.3,-20\n");
        assertThat(filter(file, "m").err()).contains("axis z reads 0 at 10");
        Files.writeString(file, head + "10,0.3,0,0.3,0,0.3,0\n2000,0.3,-20,0.3,-170,0.3,-20\n");
        assertThat(filter(file, "m").err()).contains("axis y turns by -170 deg", "measure more frequencies");
        Files.writeString(file, head + "10,0.3,0,0.3,0,0.3,0\n");
        assertThat(filter(file, "m").err()).contains("two frequencies");
    }
}

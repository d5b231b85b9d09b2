package quietband.cli;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import quietband.model.Cancellation;
import quietband.model.edit.ModelFile;

/** filter --trim from files, and runs it cannot use. */
class TrimCommandTest {

    private static final String MODEL = "models/ridge-relay.yaml";
    private static final Path OFF = Path.of("models/runs/trim-off.csv");
    private static final Path ON = Path.of("models/runs/trim-on.csv");

    @TempDir
    private Path folder;

    private Run trim(Path off, Path on) {
        return Run.of("filter", MODEL, "--trim", off, on, "--out", folder.resolve("t"));
    }

    /** The rows of one serial, without that column. */
    private Path single(Path of, String name) throws IOException {
        List<String> lines = Files.readAllLines(of).stream().filter(l -> l.startsWith("serial") || l.startsWith("RR-07"))
            .map(l -> l.substring(l.indexOf(',') + 1)).toList();
        return Files.write(folder.resolve(name), lines);
    }

    private Path changed(Path of, String name, String pattern, String by) throws IOException {
        return Files.writeString(folder.resolve(name), Files.readString(of).replaceFirst(pattern, by));
    }

    @Test
    void the_shipped_runs_give_back_the_errors_they_were_made_from() throws IOException {
        Run run = trim(OFF, ON);
        assertThat(run.status()).isZero();
        // chosen: RR-07 x gain 3.4 %, phase -0.006 rad, delay 2.6 us; standard errors 0.24 %, 0.0028 rad, 0.8 us: four of them
        Cancellation found = ModelFile.read(folder.resolve("t/RR-07/model.yaml")).design().cancellation().orElseThrow();
        assertThat(found.error().gain().x()).isCloseTo(0.034, within(0.0096));
        assertThat(found.error().phase().x()).isCloseTo(-0.006, within(0.0112));
        assertThat(found.error().delay().x()).isCloseTo(2.6e-6, within(3.2e-6));
        assertThat(found.weightsPerG()).hasValueSatisfying(w -> assertThat(w.x()).isCloseTo(0.22e-9, within(1e-18)));
        Cancellation trimmed = ModelFile.read(folder.resolve("t/RR-07/trimmed/model.yaml")).design().cancellation().orElseThrow();
        assertThat(trimmed.error()).isEqualTo(found.error());
        // 1.02 times the model's own sensitivity, and 3.4 % of gain taken back; phase and delay cost the rest
        assertThat(trimmed.weightsPerG().orElseThrow().x()).isCloseTo(0.22e-9 * 1.02 / 1.034, within(0.22e-9 * 0.06));
        assertThat(Files.readString(folder.resolve("t/report.html"))).contains("RR-08", "an advance of");
    }

    @Test
    void one_unit_without_a_serial_has_its_models_on_top() throws IOException {
        assertThat(trim(single(OFF, "off.csv"), single(ON, "on.csv")).status()).isZero();
        assertThat(folder.resolve("t/model.yaml")).exists();
        assertThat(folder.resolve("t/trimmed/model.yaml")).exists();
        assertThat(Files.readString(folder.resolve("t/trim.csv")).lines().collect(Collectors.toList())).hasSize(4)
            .first().asString().startsWith("serial,axis,gain_percent,gain_standard_error_percent,");
    }

    @ParameterizedTest
    @CsvSource(delimiter = '|', textBlock = """
        phase_deg                       | x_deg                     | phase_deg | missing
        RR-07,x,10,                     | RR-07,x,10.5,             | axis x    | different frequencies
        RR-07,x,10,                     | RR-07,q,10,               | 'q'       | x, y or z
        RR-07,x,10,                     | RR-09,x,10,               | RR-09     | both runs
        RR-07,x,10,[0-9.]+              | RR-07,x,10,NaN            | ppb_per_g | number
        RR-07,x,10,[0-9.]+              | RR-07,x,10,-1             | below 0   | 180
        RR-07,x,10,                     | RR-07,x,15,               | same frequency | keep one
        RR-07,x,10,                     | ../up,x,10,               | '../up'   | letters
        RR-07,x,10,                     | RR-07,x,0,                | frequency_hz | above 0
        (RR-07,x,10,.*),0.01            | $1,0                      | relative_error | above 0
        """)
    void runs_that_cannot_be_used_are_refused_with_place_and_remedy(String pattern, String by, String found, String remedy)
        throws IOException {
        Run run = trim(OFF, changed(ON, "on.csv", pattern.strip(), by.strip()));
        assertThat(run.status()).isEqualTo(2);
        assertThat(run.err()).contains(found.strip(), remedy.strip()).doesNotContain("Exception");
        assertThat(folder.resolve("t")).doesNotExist();
    }

    @Test
    void a_missing_axis_or_serial_column_and_a_half_stated_uncertainty_are_refused() throws IOException {
        Path off = single(OFF, "off.csv");
        Path noZ = Files.write(folder.resolve("z.csv"), Files.readAllLines(off).stream().filter(l -> !l.startsWith("z")).toList());
        assertThat(trim(off, noZ).err()).contains("axis z is not in z.csv", "x, y and z");
        assertThat(trim(off, ON).err()).contains("no serial column");
        Path plain = Files.write(folder.resolve("p.csv"), Files.readAllLines(off).stream().map(l -> l.substring(0, l.lastIndexOf(',')))
            .toList());
        assertThat(trim(off, plain).err()).contains("off.csv states relative_error", "both files");
    }

    @Test
    void runs_that_are_the_same_or_exchanged_are_told() throws IOException {
        Path off = single(OFF, "off.csv");
        assertThat(trim(off, off).out()).contains("hardly acts", "was it on?");
        assertThat(trim(single(ON, "on.csv"), off).out()).contains("exchanged");
    }

    @Test
    void a_model_without_a_correction_and_options_that_do_not_go_together_are_refused() {
        Run run = Run.of("filter", "models/platform-only.yaml", "--trim", OFF, ON, "--out", folder.resolve("t"));
        assertThat(run.status()).isEqualTo(2);
        assertThat(run.err()).contains("no cancellation to trim", "cancellation");
        assertThat(Run.of("filter", MODEL, "--bolted", "--out", folder.resolve("t")).err()).contains("--trim");
        assertThat(Run.of("filter", "models/correction-only.yaml", "--trim", OFF, ON, "--bolted", "--out", folder.resolve("t")).err())
            .contains("no platform to leave out");
    }
}

package quietband.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** filter --analog from the command line. */
class AnalogCommandTest {

    private static final String MODEL = "models/ridge-relay.yaml";

    @TempDir
    private Path folder;

    @Test
    void an_analog_path_gets_parts_a_circuit_and_no_model() throws IOException {
        Path model = Files.writeString(folder.resolve("a.yaml"), """
            quietband: 1
            oscillator: {carrier: 10 MHz, resonator: {sensitivity: {x: 0.3 ppb/g, y: -0.4 ppb/g, z: 1.2 ppb/g}}}
            cancellation: {sensor: {bandwidth: 6 kHz}, path: {latency: 2 us, high_pass: {frequency: 0.5 Hz}}}
            requirement: {band: {from: 10 Hz, to: 2 kHz}, residual: [{frequency: 10 Hz, limit: 0.05 ppb/g}]}
            """);
        Run run = Run.of("filter", model, "--analog", 2, "--series", "E24", "--goal", "limit", "--out", folder.resolve("r"));
        assertThat(run.status()).as(run.err()).isZero();
        assertThat(run.out()).contains("analog throughout", "no changed model is written", "kohm");
        assertThat(folder.resolve("r/model.yaml")).doesNotExist();
        assertThat(Files.readAllLines(folder.resolve("r/parts.csv"))).hasSize(4).first().asString()
            .isEqualTo("sensor_axis,r1_ohm,r2_ohm,r3_ohm,c1_farad,r4_ohm,c2_farad,gain,lead_zero_hz,lead_pole_hz,lag_pole_hz,lag_zero_hz");
        assertThat(Files.readString(folder.resolve("r/summary.json"))).contains("\"residual_before\"", "\"residual_after\"", "worst_ratio");
        assertThat(Files.readString(folder.resolve("r/report.html"))).contains("<svg", "r4");
    }

    @ParameterizedTest
    @CsvSource(delimiter = '|', textBlock = """
        --analog 3                                 | one pole or two
        --series E24                               | --analog
        --analog 1 --count 4                       | --count goes with taps
        --analog 1 --series E12                    | E24
        --analog 1 --trim models/runs/trim-off.csv models/runs/trim-on.csv | leave --analog
        --analog 1 --max-gain 0.5                  | dB
        """)
    void options_that_make_no_sense_are_refused(String options, String found) {
        Object[] words = ("filter " + MODEL + " " + options + " --out " + folder.resolve("r")).split(" ");
        Run run = Run.of(words);
        assertThat(run.status()).isEqualTo(2);
        assertThat(run.err()).contains(found).doesNotContain("Exception");
        assertThat(folder.resolve("r")).doesNotExist();
    }
}

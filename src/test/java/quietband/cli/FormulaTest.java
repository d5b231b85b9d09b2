package quietband.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** A name that a spreadsheet would take for a formula is refused where it is read, since tables of results repeat it. */
class FormulaTest {

    @TempDir
    private Path temp;

    private void refused(String place, Object... args) {
        Run run = Run.of(args);
        assertThat(run.status()).as(run.err()).isEqualTo(2);
        assertThat(run.err()).contains(place, "formula", "begin with a letter");
        assertThat(temp.resolve("r")).doesNotExist();
    }

    private Path file(String name, String text) throws IOException {
        return Files.writeString(temp.resolve(name), text);
    }

    @ParameterizedTest
    @ValueSource(strings = {"=1+1", "+A1", "-A1", "@SUM", "=cmd|' /C calc'!A0"})
    void a_serial_of_a_lot_or_a_run_is_refused(String bad) throws IOException {
        Path out = temp.resolve("r");
        Path lot = file("lot.csv", "serial,x_ppb_per_g,y_ppb_per_g,z_ppb_per_g\nA1,0.1,0.1,0.1\n" + bad + ",0.1,0.1,0.1\n");
        refused("lot.csv:3: ", "sort", lot, "--limit", "1 ppb/g", "--out", out);
        Path run = file("run.csv", "serial,axis,frequency_hz,peak_g,sideband_dbc\n" + bad + ",x,100,10,-60\n");
        refused("run.csv:2: serial: ", "shaker", run, "--carrier", "10 MHz", "--out", out);
        Path model = file("m.yaml", """
            quietband: 1
            oscillator: {carrier: 10 MHz, resonator: {sensitivity: 1 ppb/g}}
            requirement: {residual: 2 ppb/g}
            tolerances: [{of: oscillator.resonator.sensitivity, lot: lot.csv}]
            """);
        refused("lot.csv:3: serial: ", "tolerance", model, "--units", 2, "--out", out);
    }

    @ParameterizedTest
    @ValueSource(strings = {"=1+1", "+A1", "-A1", "@SUM"})
    void a_name_in_a_model_is_refused(String bad) throws IOException {
        String start = "quietband: 1\noscillator: {carrier: 10 MHz, resonator: {sensitivity: 1 ppb/g}}\n";
        Path out = temp.resolve("r");
        refused("t.yaml:3:21: tolerances.", "assess", file("t.yaml", start
            + "tolerances: [{name: '" + bad + "', of: oscillator.resonator.sensitivity, scale: 1 %}]\n"), "--out", out);
        refused("c.yaml:3:21: conditions.", "assess", file("c.yaml", start
            + "conditions: [{name: '" + bad + "', change: [{of: oscillator.resonator.sensitivity, scale: 1 %}]}]\n"), "--out", out);
        refused("v.yaml:3:28: vibration.tones.", "assess", file("v.yaml", start
            + "vibration: {tones: [{name: '" + bad + "', frequency: 17 Hz, peak: 0.6 g}]}\n"), "--out", out);
    }

    @Test
    void a_bad_row_that_is_kept_does_not_bring_its_serial() throws IOException {
        Path lot = file("lot.csv", "serial,x_ppb_per_g,y_ppb_per_g,z_ppb_per_g\nA1,0.1,0.1,0.1\n=2+3,0.1,0.1,0.1\nA2,0.2,0.1,1e308\n");
        Run run = Run.of("sort", lot, "--limit", "1 ppb/g", "--bad-rows", "keep", "--out", temp.resolve("r"));
        assertThat(run.status()).as(run.err()).isZero();
        assertThat(Files.readString(temp.resolve("r/bad_rows.csv"))).contains("3,,", "beyond any resonator");
    }
}

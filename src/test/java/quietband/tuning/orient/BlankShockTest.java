package quietband.tuning.orient;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import quietband.model.edit.ModelFile;

/** What the blank sees of a shock. */
class BlankShockTest {

    @TempDir
    private Path folder;

    private static BlankShock shock(String support) {
        return BlankShock.of(ModelFile.parse(Path.of("model.yaml"), "quietband: 1\noscillator:\n  carrier: 10 MHz\n"
            + "  resonator:\n    sensitivity: 1 ppb/g\n" + support + "vibration:\n  axes: [z]\n  shock: {shape: half-sine, peak: "
            + "100 g, duration: 5 ms}\n")
            .design()).orElseThrow();
    }

    // System:  undamped oscillator under a half-sine pulse of duration T; period t
    // Result:  largest response over the pulse's peak 1.768458 at f T = 0.80985
    // Ref:     shock spectrum of the half-sine, check value derived in closed form; zeros read in Harris ch. 8
    @Test
    void a_support_tuned_to_the_pulse_sees_1_77_times_its_peak() {
        BlankShock tuned = shock("    support_resonance: {frequency: 161.97 Hz, q: 2000}\n");
        // a Q of 2000 takes 0.1 % within one period; the grid of time finds a smooth peak to far better
        assertThat(tuned.bolted()).isCloseTo(176.8, within(0.5));
        assertThat(tuned.sprung()).isNaN();
    }

    @Test
    void a_stiff_support_sees_the_pulse_and_hardly_more() {
        assertThat(shock("").bolted()).isCloseTo(100, within(0.1));
        // f T = 31: the excess over the quasi-static peak is of order 1/(2 f T)
        assertThat(shock("    support_resonance: {frequency: 6.2 kHz, q: 40}\n").bolted()).isBetween(99.9, 105.0);
    }

    @Test
    void simulate_says_what_the_blank_sees_along_each_axis() throws java.io.IOException {
        Path model = folder.resolve("model.yaml");
        java.nio.file.Files.writeString(model, """
            quietband: 1
            oscillator: {carrier: 10 MHz, resonator: {sensitivity: 1 ppb/g, support_resonance: {frequency: 161.97 Hz, q: 2000}}}
            vibration: {axes: [z], shock: {shape: half-sine, peak: 100 g, duration: 5 ms}}
            """);
        java.io.StringWriter out = new java.io.StringWriter();
        int status = quietband.cli.Quietband.run(new java.io.PrintWriter(out), new java.io.PrintWriter(new java.io.StringWriter()),
            "simulate", model.toString(), "--drive", "shock", "--peak", "50 g", "--out", folder.resolve("out").toString());
        assertThat(status).isZero();
        // half the peak of the model's own, by --peak: half of 176.8 g
        assertThat(out.toString()).contains("The blank on its support sees at most 88.4 g bare.");
    }

    @Test
    void without_a_shock_there_is_nothing_to_see() {
        assertThat(BlankShock.of(ModelFile.parse(Path.of("model.yaml"), "quietband: 1\noscillator:\n  carrier: 10 MHz\n  resonator:\n"
            + "    sensitivity: 1 ppb/g\n").design())).isEmpty();
    }
}

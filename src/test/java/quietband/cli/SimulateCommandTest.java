package quietband.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.assertj.core.data.Percentage;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.ObjectMapper;

class SimulateCommandTest {

    private static final Path MAIN = Path.of("models", "ridge-relay.yaml");
    private static final Path ROUGH = Path.of("models", "rough-ride.yaml");

    @TempDir
    private Path temp;

    private JsonNode summary() throws IOException {
        return new ObjectMapper().readTree(temp.resolve("out/summary.json").toFile());
    }

    private Run simulate(Path model, Object... options) {
        Object[] all = new Object[options.length + 4];
        all[0] = "simulate";
        all[1] = model;
        all[2] = "--out";
        all[3] = temp.resolve("out");
        System.arraycopy(options, 0, all, 4, options.length);
        return Run.of(all);
    }

    private double line(String name, String column) throws IOException {
        List<String> rows = Files.readAllLines(temp.resolve("out/spectrum.csv"));
        int at = List.of(rows.get(0).split(",")).indexOf(column);
        return rows.stream().filter(r -> r.startsWith(name + ",")).mapToDouble(r -> Double.parseDouble(r.split(",")[at]))
            .findFirst().orElseThrow();
    }

    @Test
    void the_dwell_others_rely_on_writes_what_they_read() throws IOException {
        Run run = simulate(MAIN, "--drive", "dwell", "--axis", "x", "--frequency", "88 Hz", "--peak", "1 g", "--duration", "0.3 s",
            "--linear");
        assertThat(run.status()).isZero();
        assertThat(run.err()).as("the caution stands before the run").contains("start at low level")
            .contains("neither a test result nor a qualification");
        JsonNode s = summary();
        assertThat(s.get("drive").asString()).isEqualTo("dwell");
        assertThat(s.get("seed").asInt()).isEqualTo(1);
        assertThat(s.get("real_time_factor").asDouble()).isPositive();
        for (String stack : List.of("bare", "isolated", "cancelled", "combined")) {
            JsonNode one = s.at("/stacks/" + stack);
            assertThat(one.get("sensitivity_ppb_per_g").asDouble()).isCloseTo(one.get("predicted_ppb_per_g").asDouble(),
                Percentage.withPercentage(0.1));
            assertThat(one.get("phase_deg").asDouble() - one.get("predicted_phase_deg").asDouble()).isBetween(-0.1, 0.1);
        }
        assertThat(s.get("agreement").asString()).contains("agree");
        assertThat(Files.readString(temp.resolve("out/report.html"))).contains("Caution").contains("<svg");
    }

    @Test
    void a_sweep_writes_the_columns_of_an_assessment_and_opens_with_the_strip() throws IOException {
        assertThat(simulate(ROUGH, "--drive", "sweep", "--linear", "--at", "40 Hz, 100 Hz, 900 Hz").status()).isZero();
        Path assessed = temp.resolve("assessed");
        Run.of("assess", ROUGH, "--out", assessed, "--at", "40 Hz, 100 Hz, 900 Hz");
        for (String file : List.of("response.csv", "coverage.csv")) {
            List<String> moved = Files.readAllLines(temp.resolve("out").resolve(file));
            List<String> predicted = Files.readAllLines(assessed.resolve(file));
            assertThat(moved.get(0)).isEqualTo(predicted.get(0));
            assertThat(moved).hasSameSizeAs(predicted);
        }
        String page = Files.readString(temp.resolve("out/report.html"));
        assertThat(page.indexOf("Margin of each stack over the band")).isPositive().isLessThan(page.indexOf("Coverage"));
    }

    @Test
    void random_vibration_compares_with_the_prediction_and_says_what_was_chosen() throws IOException {
        assertThat(simulate(ROUGH, "--drive", "random", "--axis", "y", "--duration", "6 s", "--linear", "--scale", "-6 dB").status())
            .isZero();
        JsonNode s = summary();
        assertThat(s.at("/axes/y/stacks/isolated/agrees").asBoolean()).isTrue();
        assertThat(s.get("method").toString()).contains("matrix exponential");
        assertThat(Files.readAllLines(temp.resolve("out/spectrum.csv")).get(0)).startsWith("axis,frequency_hz,drive_g2_per_hz,"
            + "bare_per_hz,bare_coherence,bare_estimated_ppb_per_g,bare_predicted_ppb_per_g");
        assertThat(Files.readAllLines(temp.resolve("out/motion.csv")).get(0)).startsWith("time_s,drive_x_g");
    }

    @Test
    void the_shipped_example_shows_clipping_curvature_folding_and_contact() throws IOException {
        simulate(ROUGH, "--drive", "dwell", "--axis", "x", "--frequency", "40 Hz", "--peak", "8 g", "--duration", "0.4 s");
        // third harmonic of 8 g clipped at 5 g, times 0.5 ppb/g: 4/(3 pi) sin a cos^3 a A, a = asin(5/8); steps of 10 mg beside it
        double a = Math.asin(5.0 / 8);
        assertThat(line("harmonic 3", "cancelled_peak_ppb")).isCloseTo(0.5 * 8 * 4 / (3 * Math.PI) * Math.sin(a)
            * Math.pow(Math.cos(a), 3), Percentage.withPercentage(1));
        assertThat(summary().get("clipped_samples").asInt()).isPositive();

        simulate(ROUGH, "--drive", "dwell", "--axis", "x", "--frequency", "40 Hz", "--peak", "4 g", "--duration", "0.4 s");
        // v = 2 ppb/(1 ppb/V): second harmonic slope c V^2/4 = 0.05 ppb
        assertThat(line("harmonic 2", "cancelled_peak_ppb")).isCloseTo(0.05, Percentage.withPercentage(1));

        simulate(ROUGH, "--drive", "dwell", "--axis", "x", "--frequency", "7.9 kHz", "--peak", "1 g", "--duration", "0.2 s");
        // 7.9 kHz at 8 kHz is 100 Hz; the 12 kHz pole leaves 0.8353, the hold 0.9997; steps of 10 mg beside it
        assertThat(line("folded", "cancelled_peak_ppb")).isCloseTo(0.5 * 0.8353 * 0.9997, Percentage.withPercentage(0.5));

        simulate(ROUGH, "--drive", "dwell", "--axis", "z", "--frequency", "90 Hz", "--peak", "6 g", "--duration", "0.2 s");
        assertThat(summary().get("contacts").asInt()).isPositive();
        assertThat(summary().get("slack_s").asDouble()).isPositive();
    }

    @Test
    void what_makes_no_sense_gets_one_message_and_status_2() throws IOException {
        assertThat(simulate(MAIN, "--drive", "record").err()).contains("--record FILE.csv");
        assertThat(simulate(MAIN, "--drive", "sweep", "--frequency", "3 Hz").err()).contains("--frequency serves a dwell only");
        assertThat(simulate(MAIN, "--drive", "dwell", "--frequency", "3 mm").status()).isEqualTo(2);
        assertThat(simulate(MAIN, "--drive", "jump").status()).isEqualTo(2);
        Path bad = Files.writeString(temp.resolve("bad.csv"), "time_s,x_g\n0,1\nx,2\n");
        Run run = simulate(MAIN, "--drive", "record", "--record", bad);
        assertThat(run.status()).isEqualTo(2);
        assertThat(run.err()).contains("bad.csv:3").doesNotContain("Exception");
        assertThat(temp.resolve("out")).doesNotExist();
    }
}

package quietband.cli;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import quietband.cli.terminal.FailureMessage;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.ObjectMapper;

class ToleranceCommandTest {

    private static final Path MAIN = Path.of("models", "ridge-relay.yaml");

    @TempDir
    private Path temp;

    private Path tolerance(String name, Object... options) {
        Path out = temp.resolve(name);
        Object[] all = {"tolerance", MAIN, "--points", 60, "--out", out};
        Object[] joined = Arrays.copyOf(all, all.length + options.length);
        System.arraycopy(options, 0, joined, all.length, options.length);
        Run run = Run.of(joined);
        assertThat(run.status()).as(run.err()).isZero();
        return out;
    }

    private static JsonNode json(Path file) throws IOException {
        return new ObjectMapper().readTree(file.toFile());
    }

    private static double leastMargin(Path model, Path out) throws IOException {
        assertThat(Run.of("assess", model, "--out", out).status()).isZero();
        double least = Double.POSITIVE_INFINITY;
        for (JsonNode r : json(out.resolve("summary.json")).get("requirements")) {
            if (r.has("margin_db") && r.get("margin_db").isNumber()) {
                least = Math.min(least, r.get("margin_db").asDouble());
            }
        }
        return least;
    }

    @Test
    void the_files_others_rely_on_are_written_and_say_the_same() throws IOException {
        Path out = tolerance("a", "--units", 300, "--seed", 5);
        JsonNode s = json(out.resolve("summary.json"));
        assertThat(s.get("units").asInt()).isEqualTo(300);
        assertThat(s.get("seed").asInt()).isEqualTo(5);
        assertThat(s.at("/yield/confidence").asDouble()).isEqualTo(0.95);
        double estimate = s.at("/yield/estimate").asDouble();
        assertThat(estimate).isBetween(s.at("/yield/low").asDouble(), s.at("/yield/high").asDouble());
        List<String> units = Files.readAllLines(out.resolve("units.csv"));
        assertThat(units).hasSize(1 + 3 * 300);
        List<String> header = List.of(units.get(0).split(","));
        assertThat(header).startsWith("unit", "condition", "worst_margin_db", "frequency_hz", "axis");
        // the last column names what failed; a unit meets where it is empty
        long met = units.stream().skip(1).filter(r -> r.contains(",nominal,") && r.endsWith(",")).count();
        assertThat(estimate).isCloseTo(met / 300.0, within(1e-12));
        assertThat(Files.readAllLines(out.resolve("percentiles.csv")).get(0)).startsWith("frequency_hz,bare_p05_ppb_per_g,bare_p50_");
        assertThat(Files.readAllLines(out.resolve("percentiles.csv"))).hasSize(61);
        assertThat(Files.readString(out.resolve("influence.csv"))).contains("loop phase").contains("crystal");
        assertThat(Files.readString(out.resolve("report.html"))).contains("<svg").contains("Caution");
    }

    @Test
    void more_units_or_other_threads_change_no_unit() throws IOException {
        Path few = tolerance("few", "--units", 40, "--threads", 1);
        Path more = tolerance("more", "--units", 90, "--threads", 2);
        List<String> first = Files.readAllLines(few.resolve("units.csv"));
        assertThat(Files.readAllLines(more.resolve("units.csv")).subList(0, first.size())).isEqualTo(first);
    }

    @Test
    void a_replayed_unit_is_assessed_as_it_was_drawn_and_the_likeliest_failure_fails() throws IOException {
        Path out = tolerance("a", "--units", 20);
        String row = Files.readAllLines(out.resolve("units.csv")).stream().filter(r -> r.startsWith("17,nominal,")).findFirst()
            .orElseThrow();
        Path unit = tolerance("unit", "--replay", 17);
        // units are judged on a grid of their own, without the last refinement of assess: 0.01 dB
        assertThat(leastMargin(unit.resolve("model.yaml"), temp.resolve("assessed")))
            .isCloseTo(Double.parseDouble(row.split(",")[2]), within(0.01));
        assertThat(Files.readString(unit.resolve("model.yaml"))).contains("#");
        // on the limit itself, from the failing side
        assertThat(leastMargin(out.resolve("likeliest/model.yaml"), temp.resolve("likeliest"))).isBetween(-0.05, 0.0);
    }

    @Test
    void what_cannot_be_drawn_is_refused_with_where_and_what() throws IOException {
        Path model = temp.resolve("m.yaml");
        Files.writeString(model, "quietband: 1\noscillator:\n  carrier: 10 MHz\n  resonator:\n    sensitivity: 1 ppb/g\n"
            + "tolerances:\n  - {name: odd, of: platform.springs.corners.stiffness, scale: 3 %}\n");
        Run run = Run.of("tolerance", model, "--out", temp.resolve("o"));
        assertThat(run.status()).isEqualTo(FailureMessage.INPUT_ERROR);
        assertThat(run.err()).contains("m.yaml").contains("platform.springs.corners.stiffness").doesNotContain("Exception");
        assertThat(temp.resolve("o")).doesNotExist();
        assertThat(Run.of("tolerance", MAIN, "--units", 0, "--out", temp.resolve("o")).err()).contains("--units");
        assertThat(Run.of("tolerance", MAIN, "--confidence", 1.5, "--out", temp.resolve("o")).err()).contains("--confidence");
        assertThat(temp.resolve("o")).doesNotExist();
    }
}

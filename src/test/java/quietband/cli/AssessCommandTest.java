package quietband.cli;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.io.IOException;
import java.io.RandomAccessFile;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import quietband.cli.terminal.Version;
import quietband.model.Stack;
import quietband.model.edit.ModelFile;
import quietband.response.ResidualResponse;
import quietband.spectrum.LogGrid;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.ObjectMapper;

class AssessCommandTest {

    private static final Path MAIN = Path.of("models", "ridge-relay.yaml");

    @TempDir
    private Path temp;

    private JsonNode summary(Path out) throws IOException {
        return new ObjectMapper().readTree(out.resolve("summary.json").toFile());
    }

    @Test
    void the_main_model_holds_and_the_trial_fails_only_at_its_platforms_resonance() throws IOException {
        Path main = temp.resolve("main");
        assertThat(Run.of("assess", MAIN, "--out", main, "--check").status()).isZero();
        assertThat(summary(main).get("requirement_met").asBoolean()).isTrue();
        assertThat(summary(main).at("/stacks/combined/coverage/share").asDouble()).isEqualTo(1);
        Path trial = temp.resolve("trial");
        assertThat(Run.of("assess", "models/trial-a.yaml", "--out", trial, "--check").status()).isEqualTo(1);
        assertThat(summary(trial).get("requirement_met").asBoolean()).isFalse();
        JsonNode gaps = summary(trial).at("/stacks/combined/coverage/gaps_hz");
        assertThat(gaps).hasSize(1);
        double least = 1e9;
        double most = 0;
        for (JsonNode mode : summary(trial).get("modes")) {
            least = Math.min(least, mode.get("frequency_hz").asDouble());
            most = Math.max(most, mode.get("frequency_hz").asDouble());
        }
        assertThat(gaps.get(0).get(0).asDouble()).isBetween(0.7 * least, least);
        assertThat(gaps.get(0).get(1).asDouble()).isBetween(most, 1.4 * most);
    }

    @Test
    void verdict_worst_point_and_coverage_do_not_depend_on_the_tables_points() throws IOException {
        Run.of("assess", MAIN, "--out", temp.resolve("a"), "--points", 50, "--threads", 1);
        Run.of("assess", MAIN, "--out", temp.resolve("b"), "--at", "68 Hz, 72.5 Hz");
        assertThat(Files.readString(temp.resolve("a/summary.json"))).isEqualTo(Files.readString(temp.resolve("b/summary.json")));
        assertThat(Files.readAllLines(temp.resolve("a/response.csv"))).hasSize(51);
        List<String> rows = Files.readAllLines(temp.resolve("b/response.csv"));
        assertThat(rows).hasSize(3);
        assertThat(rows.get(0)).startsWith("frequency_hz,bare_x_ppb_per_g,bare_y_ppb_per_g,bare_z_ppb_per_g,"
            + "bare_vector_ppb_per_g,isolated_x_ppb_per_g");
        assertThat(rows.get(2)).startsWith("72.5");
    }

    @Test
    void threads_and_locale_change_no_byte() throws IOException {
        Locale before = Locale.getDefault();
        try {
            Run.of("assess", MAIN, "--out", temp.resolve("a"), "--threads", 1);
            Locale.setDefault(Locale.GERMANY);
            Run.of("assess", MAIN, "--out", temp.resolve("b"), "--threads", 3);
        } finally {
            Locale.setDefault(before);
        }
        try (Stream<Path> files = Files.list(temp.resolve("a"))) {
            for (Path f : files.filter(p -> p.toString().endsWith(".csv") || p.toString().endsWith("summary.json")).toList()) {
                assertThat(temp.resolve("b").resolve(f.getFileName())).hasSameTextualContentAs(f);
            }
        }
    }

    @Test
    void narrow_surge_peaks_decide_the_verdict_that_two_hundred_thousand_points_would_show() throws IOException {
        Path model = temp.resolve("surge.yaml");
        Files.writeString(model, Files.readString(MAIN)
            .replace("loss_factor: 28 %", "loss_factor: 1e-3").replace("mass: 0.6 g", "mass: 12 g")
            .replace("profiles/rotor-cabin.csv", Path.of("models/profiles/rotor-cabin.csv").toAbsolutePath().toString())
            .replace("lots/ridge-lot.csv", Path.of("models/lots/ridge-lot.csv").toAbsolutePath().toString()));
        Run.of("assess", model, "--out", temp.resolve("few"), "--points", 50);
        double least = summary(temp.resolve("few")).at("/stacks/combined/worst/margin_db").asDouble();
        double frequency = summary(temp.resolve("few")).at("/stacks/combined/worst/frequency_hz").asDouble();
        // 200,000 points are 2.7e-5 apart: a peak 1e-3 wide is met to 0.003 dB
        ResidualResponse response = new ResidualResponse(ModelFile.read(model).design());
        double[] re = new double[3];
        double[] im = new double[3];
        double worst = 0;
        double at = 0;
        for (double f : LogGrid.between(200_000, 10, 2000)) {
            response.at(f);
            response.residual(Stack.COMBINED, re, im);
            for (int j = 0; j < 3; j++) {
                double y = 1e9 * Math.hypot(re[j], im[j]);
                at = y > worst ? f : at;
                worst = Math.max(worst, y);
            }
        }
        Run.of("assess", model, "--out", temp.resolve("many"), "--points", 3000);
        assertThat(frequency).as("a standing wave of the springs").isGreaterThan(300);
        assertThat(least).isCloseTo(20 * Math.log10(0.05 / worst), within(0.01));
        assertThat(frequency).isCloseTo(at, within(5e-5 * at));
        assertThat(summary(temp.resolve("many")).at("/stacks/combined/worst/margin_db").asDouble()).isEqualTo(least);
    }

    @Test
    void json_goes_to_standard_output_and_messages_to_standard_error() throws IOException {
        Run run = Run.of("assess", MAIN, "--out", temp.resolve("o"), "--format", "json", "--seed", 7);
        assertThat(run.out()).isEqualTo(Files.readString(temp.resolve("o/summary.json")));
        assertThat(new ObjectMapper().readTree(run.out()).get("seed").asLong()).isEqualTo(7);
        assertThat(run.err()).contains("Result in ");
        JsonNode mark = new ObjectMapper().readTree(temp.resolve("o/quietband-result.json").toFile());
        assertThat(mark.get("command").asString()).isEqualTo("assess");
        assertThat(mark.get("files")).hasSizeGreaterThan(8);
        assertThat(mark.get("model_hash").asString()).hasSize(64);
    }

    @Test
    void the_terminal_summary_keeps_to_80_columns_and_ends_with_the_verdict() {
        for (String model : List.of("ridge-relay.yaml", "trial-a.yaml")) {
            Run run = Run.of("assess", Path.of("models", model), "--out", temp.resolve(model));
            assertThat(run.out().lines()).allSatisfy(l -> assertThat(l.length()).as(l).isLessThanOrEqualTo(80));
            assertThat(run.out()).contains("HOLD");
        }
    }

    @ParameterizedTest
    @ValueSource(strings = {"--points 1", "--points 0", "--points many", "--at", "--at 0Hz", "--at 12,5Hz,", "--at 3m",
        "--threads 0", "--format xml", "--pionts 5", "--points 9 --at 5Hz"})
    void a_wrong_option_gets_one_message_and_status_2(String options) {
        String[] words = ("assess " + MAIN + " --out " + temp.resolve("o") + " " + options).split(" ");
        Run run = Run.of((Object[]) words);
        assertThat(run.status()).isEqualTo(2);
        assertThat(run.err()).startsWith("quietband: ").doesNotContain("Exception").doesNotContain("\tat ");
        assertThat(temp.resolve("o")).doesNotExist();
    }

    @Test
    void a_missing_file_a_directory_a_huge_file_and_binary_data_get_one_message_each() throws IOException {
        Path huge = temp.resolve("huge.yaml");
        try (RandomAccessFile file = new RandomAccessFile(huge.toFile(), "rw")) {
            file.setLength(200_000_000);
        }
        Path binary = temp.resolve("binary.yaml");
        Files.write(binary, new byte[] {0x7f, 'E', 'L', 'F', 0, 1, (byte) 0xff, (byte) 0xfe});
        Path empty = Files.createFile(temp.resolve("empty.yaml"));
        for (Path bad : List.of(temp.resolve("none.yaml"), temp, huge, binary, empty)) {
            Run run = Run.of("assess", bad, "--out", temp.resolve("o"));
            assertThat(run.status()).as(bad.toString()).isEqualTo(2);
            assertThat(run.err().lines()).as(bad.toString()).hasSize(1);
            assertThat(run.err()).contains(bad.getFileName().toString()).doesNotContain("Exception");
            assertThat(temp.resolve("o")).doesNotExist();
        }
    }

    @Test
    void a_platform_with_a_free_direction_is_refused() throws IOException {
        Path model = temp.resolve("free.yaml");
        Files.writeString(model, "quietband: 1\noscillator: {carrier: 10 MHz, resonator: {sensitivity: 1 ppb/g}}\n"
            + "platform: {mass: 1 kg, size: 10 mm, springs: [{at: [{x: 1 mm}], stiffness: 1 N/mm}]}\n");
        Run run = Run.of("assess", model, "--out", temp.resolve("o"));
        assertThat(run.status()).isEqualTo(2);
        assertThat(run.err()).contains("0 Hz").contains("rotation").doesNotContain("Exception");
        assertThat(temp.resolve("o")).doesNotExist();
    }

    @Test
    void every_command_tells_the_version_when_asked() {
        for (String command : List.of("assess", "tolerance", "schema")) {
            Run run = Run.of(command, "--version");
            assertThat(run.status()).isZero();
            assertThat(run.out()).startsWith("quietband ").contains(Version.number());
        }
    }

    @Test
    void new_writes_a_model_that_assess_accepts_and_never_over_a_file() throws IOException {
        Path model = temp.resolve("mine.yaml");
        assertThat(Run.of("new", model).status()).isZero();
        assertThat(Run.of("assess", model, "--out", temp.resolve("o")).status()).isZero();
        String before = Files.readString(model);
        Run again = Run.of("new", model);
        assertThat(again.status()).isEqualTo(2);
        assertThat(again.err()).contains("exists");
        assertThat(model).hasContent(before);
    }

    @Test
    void help_lists_every_command_and_the_exit_status() {
        Run help = Run.of("--help");
        assertThat(help.status()).isZero();
        assertThat(help.out()).contains("assess", "schema", "new", "70");
        assertThat(Run.of("assess", "--help").out()).contains("--points", "--at", "--out", "--check");
        assertThat(Run.of("asses", "x").status()).isEqualTo(2);
        assertThat(Run.of().status()).isEqualTo(2);
    }
}

package quietband.cli;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import quietband.model.Design;
import quietband.model.edit.ModelFile;
import quietband.response.verdict.Assessment;
import quietband.response.verdict.Assessor;

/** The command trade as a person calls it. */
class TradeCommandTest {

    @TempDir
    private Path folder;

    @Test
    void a_row_of_the_table_says_what_assess_says_of_the_changed_model() throws IOException {
        Run run = Run.of("trade", "models/ridge-relay.yaml", "--vary",
            "platform.springs.corners.stiffness = 14 N/mm to 18 N/mm, 3 steps",
            "--vary", "cancellation.error.delay = 1 us to 3 us, 2 steps", "--out", folder.resolve("t"));
        assertThat(run.status()).as(run.err()).isZero();
        List<String> lines = Files.readAllLines(folder.resolve("t/trade.csv"));
        assertThat(lines.get(0))
            .startsWith("platform_springs_corners_stiffness_n_per_mm,cancellation_error_delay_us,worst_margin_db,");
        assertThat(lines).hasSize(7);
        String[] cells = lines.get(6).split(",");
        assertThat(Double.parseDouble(cells[0])).isEqualTo(18);
        assertThat(Double.parseDouble(cells[1])).isEqualTo(3);
        Design base = ModelFile.read(Path.of("models/ridge-relay.yaml")).design();
        Assessment a = Assessor.assess(base.with(base.quantities().with("platform.springs.corners.stiffness", 18e3)
            .with("cancellation.error.delay", 3e-6)));
        // the table has twelve digits
        assertThat(Double.parseDouble(cells[2])).isCloseTo(a.verdict(a.fullest()).worst().marginDb(), within(1e-8));
        assertThat(Double.parseDouble(cells[5])).isCloseTo(a.verdict(a.fullest()).share(), within(1e-10));
        assertThat(Double.parseDouble(cells[6])).isCloseTo(a.worstJitterRad(), within(1e-12));
        assertThat(Double.parseDouble(cells[9])).isCloseTo(1e3 * a.travel().orElseThrow().counted().z(), within(1e-9));
        assertThat(Files.readString(folder.resolve("t/chart-margin.svg"))).contains("data:image/png;base64,");
    }

    @Test
    void the_best_of_a_search_holds_in_assess_and_the_same_seed_gives_the_same_model() throws IOException {
        String[] words = {"trade", "models/ridge-relay.yaml", "--vary",
            "platform.springs.corners.stiffness = 12 N/mm to 20 N/mm",
            "--search", "--seed", "7", "--out"};
        for (String out : List.of("a", "b")) {
            Object[] all = new Object[words.length + 3];
            System.arraycopy(words, 0, all, 0, words.length);
            all[words.length] = folder.resolve(out);
            all[words.length + 1] = "--threads";
            all[words.length + 2] = out.equals("a") ? 1 : 3;
            Run run = Run.of(all);
            assertThat(run.status()).as(run.err()).isZero();
        }
        assertThat(folder.resolve("a/model.yaml")).hasSameTextualContentAs(folder.resolve("b/model.yaml"));
        Assessment a = Assessor.assess(ModelFile.read(folder.resolve("a/model.yaml")).design());
        assertThat(a.requirementMet()).contains(true);
        assertThat(a.verdict(a.fullest()).worst().marginDb()).isGreaterThan(1.96);
    }

    @Test
    void a_search_for_yield_goes_where_the_scatter_no_longer_reaches_the_limit() throws IOException {
        Path model = folder.resolve("bare.yaml");
        Files.writeString(model, "quietband: 1\noscillator: {carrier: 10 MHz, resonator: {sensitivity: {x: 1.2 ppb/g, y: 0.1 ppb/g}}}\n"
            + "requirement:\n  residual: [{frequency: 10 Hz, limit: 1 ppb/g}]\n"
            + "tolerances:\n  - {name: cut, of: oscillator.resonator.sensitivity.x, scale: 20 %, distribution: uniform}\n");
        Run run = Run.of("trade", model, "--vary", "oscillator.resonator.sensitivity.x = 0.7 ppb/g to 1.5 ppb/g", "--search", "yield",
            "--units", "60", "--out", folder.resolve("y"), "--format", "json");
        assertThat(run.status()).as(run.err()).isZero();
        // 1.2 times 0.833 ppb/g is the limit: below it every unit holds, and the least sensitivity has the most margin
        assertThat(run.out()).contains("\"goal\" : \"yield\"").containsPattern("\"value\" : 1(\\.0)?,");
        assertThat(run.out()).contains("lower bound of oscillator.resonator.sensitivity.x");
    }

    @ParameterizedTest
    @CsvSource(delimiter = '|', value = {
        "x = 1 to 2|names no number",
        "platform.mass = 1 to 2|no unit",
        "platform.mass = 1 g to 1 g|both ends",
        "platform.mass = -3 g to 3 g|above 0",
        "platform.mass 1 g|form",
        "platform.mass = 1 g to 2 g, 1 steps|at least 2"})
    void a_wrong_word_gets_one_line_and_status_2(String vary, String told) {
        Run run = Run.of("trade", "models/ridge-relay.yaml", "--vary", vary, "--out", folder.resolve("t"));
        assertThat(run.status()).isEqualTo(2);
        assertThat(run.err()).contains(told).doesNotContain("\tat ");
    }
}

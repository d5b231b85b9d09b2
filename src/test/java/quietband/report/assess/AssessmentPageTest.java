package quietband.report.assess;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import quietband.model.edit.ModelFile;
import quietband.report.file.Provenance;
import quietband.report.file.ResultDirectory;
import quietband.report.page.Caution;
import quietband.study.assess.DesignAssessment;

/** The page: what it says, in which order, and that no text of a model can break it. */
public class AssessmentPageTest {

    private static final List<String> HOSTILE = List.of("</title><script>alert(1)</script>",
        "\"><img src=x onerror=alert(1)>", "' onload='alert(1)", "]]></style></svg><svg onload=alert(1)>",
        "\u202Egnirts desrever\u202C \u05E9\u05DC\u05D5\u05DD", "\uD83D\uDE80\uD83D\uDCE1 emoji", "&lt;&amp; ${1+1} @if(true) $unsafe{x}",
        "long ".repeat(2000), "x".repeat(10_000));

    @TempDir
    private Path folder;

    public static String page(ModelFile file, Path target) throws IOException {
        Provenance from = new Provenance("assess", "0.1.0", String.valueOf(file.path().getFileName()), file.hash(), 1, List.of());
        try (ResultDirectory directory = ResultDirectory.prepare(target, from.mark(), List.of())) {
            AssessmentReport.of(DesignAssessment.of(file, new double[] {20, 200}, 2, directory.target()), from).writeTo(directory, 2);
            directory.commit();
        }
        return Files.readString(target.resolve("report.html"));
    }

    private String shipped(String name) throws IOException {
        return page(ModelFile.read(Path.of("models", name + ".yaml")), folder.resolve(name));
    }

    @Test
    void the_parts_of_the_first_screen_stand_in_the_order_in_which_a_customer_asks() throws IOException {
        String page = shipped("trial-a");
        assertThat(page).containsSubsequence("DOES NOT HOLD", "Ridge relay trial A", "Phase noise at 1 GHz under rotor-cabin.csv",
            "Isolated", "within the limit 244.6 Hz to 2 kHz", "Margin over the band", "place of the sensor", "Yield not computed",
            Caution.PREDICTION, "Residual sensitivity against the limit", "Reduction: needed and delivered", "Assumptions and caution",
            "The model as read", "reviewed");
        assertThat(page).contains("<html lang=\"en\">").contains("Content-Security-Policy");
    }

    @Test
    void the_page_needs_no_other_file_and_no_script_and_stays_below_1500_kB() throws IOException {
        String page = shipped("ridge-relay");
        assertThat(page.getBytes(java.nio.charset.StandardCharsets.UTF_8).length).isLessThan(1_500_000);
        assertThat(page).doesNotContain("<script").doesNotContain("<link").doesNotContain("@import").doesNotContain("<!DOCTYPE svg");
        // namespaces are names, not addresses that are asked
        Matcher address = Pattern.compile("https?://(?!www\\.w3\\.org/)").matcher(page);
        assertThat(address.find()).isFalse();
    }

    @Test
    void every_id_is_there_once_and_every_reference_finds_its_own() throws IOException {
        String page = shipped("ridge-relay");
        List<String> ids = Pattern.compile(" id=\"([^\"]+)\"").matcher(page).results().map(m -> m.group(1)).toList();
        assertThat(ids).doesNotHaveDuplicates().hasSizeGreaterThan(20);
        assertThat(Pattern.compile("url\\(#([^)]+)\\)").matcher(page).results().map(m -> m.group(1)).distinct()).allMatch(ids::contains);
    }

    @Test
    void text_of_a_model_cannot_break_the_page() throws IOException {
        String text = Files.readString(Path.of("models/bolted-down.yaml"));
        int n = 0;
        for (String hostile : HOSTILE) {
            String quoted = "'" + hostile.replace("'", "''") + "'";
            ModelFile file = ModelFile.parse(Path.of("models/hostile.yaml"), text.replace("title: Ridge relay, bolted down",
                "title: " + quoted).replace("cut: SC", "cut: " + quoted).replace("name: rotor,", "name: rotor,"));
            String page = page(file, folder.resolve("hostile" + n++));
            assertThat(page.strip()).doesNotContain("<script").doesNotContain("<img").endsWith("</html>");
            // quotes between tags are text; within a tag they would begin an attribute
            assertThat(Pattern.compile("<[^>]*\\son\\w+\\s*=").matcher(page).find()).as(hostile).isFalse();
            assertThat(Pattern.compile("</style>").matcher(page).results().count()).isEqualTo(1);
            assertThat(page).contains("<pre dir=\"auto\">");
        }
    }

    @Test
    void two_runs_draw_the_same_charts_to_the_byte() throws IOException {
        shipped("trial-a");
        page(ModelFile.read(Path.of("models/trial-a.yaml")), folder.resolve("again"));
        for (String chart : List.of("chart-residual-x.svg", "chart-needed.svg", "chart-phase-noise.svg")) {
            assertThat(folder.resolve("again").resolve(chart)).hasSameBinaryContentAs(folder.resolve("trial-a").resolve(chart));
        }
    }

    @Test
    void frequency_axes_are_labelled_as_the_trade_labels_them() throws IOException {
        shipped("ridge-relay");
        String chart = Files.readString(folder.resolve("ridge-relay/chart-residual-z.svg"));
        for (String label : List.of("10", "20", "50", "100", "200", "500", "1000", "2000", "frequency, Hz", "residual, ppb/g", "limit")) {
            assertThat(chart).contains(">" + label + "<");
        }
        assertThat(chart).startsWith("<svg").contains("viewBox=\"0 0 760 360\"").contains("<title>");
    }

    @Test
    void the_yield_is_told_when_tolerance_ran_on_this_very_model() throws IOException {
        ModelFile file = ModelFile.read(Path.of("models/bolted-down.yaml"));
        Files.createDirectories(folder.resolve("tolerance"));
        String summary = "{\"model_hash\": \"%s\", \"units\": 500, \"conditions\": [{\"yield\": {\"estimate\": 0}}], "
            + "\"yield\": {\"estimate\": 0.9, \"low\": 0.874, \"high\": 0.922, \"confidence\": 0.9}}";
        Files.writeString(folder.resolve("tolerance/summary.json"), summary.formatted(file.hash()));
        assertThat(page(file, folder.resolve("assess"))).contains("90.0 % of units good (87.4 to 92.2 % at 90 % confidence, 500 units)");
        Files.writeString(folder.resolve("tolerance/summary.json"), summary.formatted("another"));
        assertThat(page(file, folder.resolve("assess"))).contains("Yield not computed");
    }
}

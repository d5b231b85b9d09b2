package quietband.report.page;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import quietband.model.edit.ModelBundle;
import quietband.report.file.Provenance;
import quietband.report.file.ResultDirectory;
import quietband.report.svg.Picture;

/** The one writer: every file under its name, head and caution on the page, note in summary and text, all or nothing. */
class ReportTest {

    private static final Provenance FROM = new Provenance("assess", "0.1.0", "a.yaml", "0123456789abcdef", 7, List.of());

    @TempDir
    private Path folder;

    private static Report report() {
        Report report = new Report("", FROM);
        report.model("unit/", new ModelBundle("title: u\n",
            Map.of("files/p.csv", "f\n1\n".getBytes(java.nio.charset.StandardCharsets.UTF_8))));
        report.table("t.csv", "name,mm", List.of(1.5, Double.NaN), (table, v) -> table.cell("a, b").cells(1e3, v));
        report.summary(json -> json.field("title", "x"));
        report.line(report.title()).line("%-5s|%s", "a", "").hang("> ", "word ".repeat(20).strip());
        report.head("DOES NOT HOLD", "fails", "why <b>");
        report.part("Part & co").say("said").table("caption", List.of("h"), List.of(List.of("c")))
            .chart(Picture.of("chart-x", "<svg id=\"x\"/>")).inline("<svg id=\"y\"/>");
        return report;
    }

    private Path written(Report report, int threads) {
        Path target = folder.resolve("out" + threads);
        try (ResultDirectory directory = ResultDirectory.prepare(target, FROM.mark(), List.of())) {
            report.writeTo(directory, threads);
            directory.commit();
        }
        return target;
    }

    @Test
    void every_file_stands_under_its_name_whatever_the_number_of_threads() throws IOException {
        for (int threads : new int[] {1, 3}) {
            Path out = written(report(), threads);
            try (var walk = Files.walk(out)) {
                assertThat(walk.filter(Files::isRegularFile).map(p -> out.relativize(p).toString().replace('\\', '/')))
                    .containsExactlyInAnyOrder("unit/model.yaml", "unit/files/p.csv", "t.csv", "summary.json", "report.html", "chart-x.svg",
                        "quietband-result.json");
            }
            assertThat(out.resolve("t.csv")).hasContent("name,mm\n\"a, b\",1500.00000000\n\"a, b\",\n");
            assertThat(out.resolve("unit/model.yaml")).hasContent("title: u\n");
            assertThat(Files.readString(out.resolve("quietband-result.json"))).contains("\"unit/files/p.csv\"", "\"seed\" : 7");
        }
    }

    @Test
    void the_page_has_head_caution_and_prediction_and_escapes_what_is_no_picture_of_ours() throws IOException {
        String page = Files.readString(written(report(), 1).resolve("report.html"));
        assertThat(page).containsSubsequence("DOES NOT HOLD", "a.yaml", "why &lt;b", Caution.PREDICTION, "Part &amp; co", "said", "caption",
            "<svg id=\"x\"/>", "<svg id=\"y\"/>").contains("Shaker and shock tests");
    }

    @Test
    void summary_and_text_begin_with_where_they_come_from_and_end_with_what_they_are_no_proof_of() {
        assertThat(report().json()).containsSubsequence("\"command\" : \"assess\"", "\"model\" : \"a.yaml\"", "\"title\" : \"x\"",
            "\"note\" : \"" + Caution.PREDICTION + "\"");
        assertThat(report().text()).startsWith("a.yaml\na    |\n> word").endsWith("\n" + Caution.PREDICTION + "\n");
        assertThat(report().text().lines()).allMatch(line -> line.length() <= 80);
        Report plain = new Report("t", FROM).withoutNote().line("only");
        assertThat(plain.text()).isEqualTo("only\n");
    }

    @Test
    void a_table_that_fails_leaves_nothing() {
        Report report = report().table("bad.csv", "a,b", List.of(1), (table, v) -> table.whole(v));
        assertThatThrownBy(() -> written(report, 1)).isInstanceOf(IllegalStateException.class)
            .hasMessageContaining("1 cells for 2 columns");
        assertThat(folder).isEmptyDirectory();
    }
}

package quietband.report;

import static org.assertj.core.api.Assertions.assertThat;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.TimeUnit;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import quietband.model.edit.ModelFile;
import quietband.report.assess.AssessmentPageTest;

/** The page in a real browser: no error, no request, no sideways scrolling, the first screen whole, a print. */
class BrowserTest {

    private static final Path BROWSER = Path.of("/usr/bin/chromium");
    private static final List<String> FLAGS = List.of("--headless", "--no-sandbox", "--disable-gpu", "--disable-quic",
        "--no-first-run", "--disable-background-networking", "--disable-component-update", "--disable-sync",
        "--hide-scrollbars", "--virtual-time-budget=3000");
    /** Stands around a copy of the page in a frame of a given size: writes what it measures into its own title. */
    private static final String FRAME = """
        <!DOCTYPE html><title>wait</title><body style="margin:0"><iframe src="SOURCE" style="border:0;width:WIDTH;height:HEIGHT"></iframe>
        <script>
        addEventListener('load', () => {
          const w = document.querySelector('iframe').contentWindow;
          const e = w.document.documentElement;
          const first = w.document.querySelector('.first').getBoundingClientRect();
          document.title = ['PROBE', e.scrollWidth, w.innerWidth, Math.ceil(first.bottom),
            w.performance.getEntriesByType('resource').length].join(' ');
        });
        </script>""";

    @TempDir
    private static Path folder;

    @BeforeAll
    static void find() throws IOException {
        assumeTrue(Files.isExecutable(BROWSER), "skipped: no " + BROWSER + "; install Debian's package chromium");
        AssessmentPageTest.page(ModelFile.read(Path.of("models/trial-a.yaml")), folder.resolve("trial"));
        AssessmentPageTest.page(ModelFile.read(Path.of("models/ridge-relay.yaml")), folder.resolve("main"));
    }

    private record Seen(String output, String errors) { }

    private static Seen browse(Path page, String... more) throws IOException, InterruptedException {
        Path profile = Files.createTempDirectory(folder, "profile");
        List<String> command = new ArrayList<>(List.of(BROWSER.toString()));
        command.addAll(FLAGS);
        command.add("--user-data-dir=" + profile);
        command.addAll(List.of(more));
        command.add(page.toUri().toString());
        Path out = folder.resolve("out.txt");
        Path err = folder.resolve("err.txt");
        Process process = new ProcessBuilder(command).redirectOutput(out.toFile()).redirectError(err.toFile()).start();
        assertThat(process.waitFor(120, TimeUnit.SECONDS)).as("the browser ends").isTrue();
        return new Seen(Files.readString(out), Files.readString(err));
    }

    /** Scroll width, inner width, end of the first screen's parts and number of requests of the page in a window. */
    private static int[] measured(String name, int width, int height) throws IOException, InterruptedException {
        Path framed = folder.resolve(name + "-frame.html");
        Files.writeString(framed, FRAME.replace("SOURCE", name + "/report.html")
            .replace("WIDTH", width + "px").replace("HEIGHT", height + "px"));
        Seen seen = browse(framed, "--dump-dom", "--window-size=1400,1000", "--allow-file-access-from-files");
        Matcher title = Pattern.compile("PROBE (\\d+) (\\d+) (\\d+) (\\d+)").matcher(seen.output());
        assertThat(title.find()).as(seen.errors()).isTrue();
        return new int[] {Integer.parseInt(title.group(1)), Integer.parseInt(title.group(2)), Integer.parseInt(title.group(3)),
            Integer.parseInt(title.group(4))};
    }

    @Test
    void nothing_scrolls_sideways_and_nothing_is_requested() throws IOException, InterruptedException {
        for (int width : new int[] {1280, 390}) {
            int[] page = measured("trial", width, 800);
            assertThat(page[1]).isEqualTo(width);
            assertThat(page[0]).as("scroll width at " + width).isLessThanOrEqualTo(width);
            assertThat(page[3]).as("requests").isZero();
        }
    }

    @Test
    void the_first_screen_holds_all_its_parts() throws IOException, InterruptedException {
        for (String name : List.of("trial", "main")) {
            assertThat(measured(name, 1280, 800)[2]).as(name).isLessThanOrEqualTo(800);
        }
    }

    @Test
    void the_console_stays_silent() throws IOException, InterruptedException {
        Seen seen = browse(folder.resolve("main/report.html"), "--enable-logging=stderr", "--dump-dom");
        assertThat(seen.output()).contains("Ridge relay");
        assertThat(seen.errors()).doesNotContain("CONSOLE");
    }

    @Test
    void it_prints() throws IOException, InterruptedException {
        Path pdf = folder.resolve("page.pdf");
        browse(folder.resolve("trial/report.html"), "--no-pdf-header-footer", "--print-to-pdf=" + pdf);
        byte[] bytes = Files.readAllBytes(pdf);
        assertThat(new String(bytes, 0, 5, java.nio.charset.StandardCharsets.ISO_8859_1)).isEqualTo("%PDF-");
        assertThat(bytes.length).isGreaterThan(20_000);
    }
}

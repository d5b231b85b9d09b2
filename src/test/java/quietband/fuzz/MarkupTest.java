package quietband.fuzz;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatCode;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import java.io.IOException;
import java.io.PrintWriter;
import java.io.StringReader;
import java.io.StringWriter;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.concurrent.TimeUnit;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import javax.xml.parsers.DocumentBuilderFactory;
import javax.xml.parsers.ParserConfigurationException;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.xml.sax.InputSource;
import org.xml.sax.SAXException;
import quietband.cli.Quietband;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.ObjectMapper;

/** Markup and scripts in every text that a user can choose, in every command: on every page and picture they stay text. */
class MarkupTest {

    private static final String EVIL = "<script>document.title=1</script>\"><img src=x onerror=document.title=1>javascript:x ]]> &amp; "
        + "</style></title></svg>";
    private static final String EVIL_FILE = "\"><img src=x onerror=document.title=1>&amp;";
    /** What the program itself never writes; its own pages have no script. */
    private static final Pattern UNESCAPED = Pattern.compile("<script|<img|</style></title>|</svg>javascript|\"><img|&amp; </|]]>");
    private static final Pattern SVG = Pattern.compile("(?s)<svg.*?</svg>");
    private static final Path BROWSER = Path.of("/usr/bin/chromium");

    @TempDir
    private static Path folder;

    private static final List<Path> WRITTEN = new ArrayList<>();

    @BeforeAll
    static void every_command() throws IOException {
        Map<String, String> files = files();
        for (Map.Entry<String, String> file : files.entrySet()) {
            Files.writeString(folder.resolve(file.getKey()), file.getValue());
        }
        List<List<String>> lines = Recipe.all().stream().map(Recipe::args).distinct().toList();
        for (int i = 0; i < lines.size(); i++) {
            List<String> words = new ArrayList<>();
            for (String word : lines.get(i)) {
                words.add(word.equals("OUT") ? folder.resolve("r/" + i).toString()
                    : word.matches("[a-z-]+\\.(csv|yaml)") ? folder.resolve(EVIL_FILE + word).toString() : word);
            }
            StringWriter out = new StringWriter();
            StringWriter err = new StringWriter();
            int status = Quietband.run(new PrintWriter(out), new PrintWriter(err), words.toArray(new String[0]));
            assertThat(status).as(words + ": " + err).isLessThan(2);
        }
        try (Stream<Path> all = Files.walk(folder.resolve("r"))) {
            all.filter(Files::isRegularFile).sorted().forEach(WRITTEN::add);
        }
    }

    /** The files of the recipes, their names and every text in them hostile. */
    private static Map<String, String> files() {
        Map<String, String> files = new LinkedHashMap<>();
        Recipe.files().forEach((name, text) -> {
            String hostile = text;
            if (name.endsWith(".yaml")) {
                hostile = hostile.replaceAll("title: .*", "title: '" + EVIL + "'")
                    .replace("  resonator:\n", "  resonator:\n    cut: '" + EVIL + "'\n    support: '" + EVIL + "'\n")
                    .replaceAll("\\b(gain, phase)\\]", "'gain " + EVIL + "', 'phase " + EVIL + "']")
                    .replaceAll("name: (rate|gain|phase|crystal|cold|rotor)\\b", "name: '$1 " + EVIL + "'")
                    .replaceAll("(file|filter|lot): ([a-z-]+\\.csv)", "$1: '" + Matcher.quoteReplacement(EVIL_FILE) + "$2'");
            } else if (List.of("lot.csv", "unsorted.csv", "shaker.csv", "tip.csv", "coils.csv").contains(name)) {
                hostile = hostile.replaceAll("(?m)^([A-Z][A-Za-z0-9-]*),", "\"$1 " + EVIL.replace("\"", "\"\"") + "\",");
            } else if (name.equals("supports.csv")) {
                hostile = hostile.replaceAll("(?m)^(\\w.*),(?!source)[^,\n]*$", "$1,\"" + EVIL.replace("\"", "\"\"") + "\"");
            }
            files.put(EVIL_FILE + name, hostile);
        });
        return files;
    }

    private static List<Path> written(String ending) {
        return WRITTEN.stream().filter(p -> p.toString().endsWith(ending)).toList();
    }

    @Test
    void no_page_holds_a_text_as_markup() throws IOException {
        assertThat(written(".html")).hasSizeGreaterThan(15);
        int escaped = 0;
        for (Path page : written(".html")) {
            String text = Files.readString(page);
            assertThat(UNESCAPED.matcher(text).results().map(m -> text.substring(Math.max(0, m.start() - 60), m.end() + 20)))
                .as(page.toString()).isEmpty();
            escaped += text.contains("&lt;script>") || text.contains("&lt;script&gt;") ? 1 : 0;
        }
        assertThat(escaped).as("pages that show the texts").isGreaterThan(12);
    }

    @Test
    void every_picture_is_good_xml() throws IOException {
        int pictures = 0;
        for (Path page : written(".html")) {
            Matcher svg = SVG.matcher(Files.readString(page));
            while (svg.find()) {
                parsed(svg.group(), page);
                pictures++;
            }
        }
        for (Path picture : written(".svg")) {
            parsed(Files.readString(picture), picture);
        }
        assertThat(pictures).isGreaterThan(20);
    }

    private static void parsed(String svg, Path from) {
        String named = svg.contains("xmlns=") ? svg : svg.replaceFirst("<svg", "<svg xmlns=\"http://www.w3.org/2000/svg\"");
        assertThatCode(() -> xml(named)).as(from.toString()).doesNotThrowAnyException();
    }

    private static void xml(String text) throws IOException, SAXException, ParserConfigurationException {
        DocumentBuilderFactory.newInstance().newDocumentBuilder().parse(new InputSource(new StringReader(text)));
    }

    @Test
    void every_summary_is_json_that_gives_the_texts_back() {
        int given = 0;
        for (Path summary : written(".json")) {
            JsonNode json = new ObjectMapper().readTree(summary.toFile());
            given += json.toString().contains("document.title=1") ? 1 : 0;
            assertThat(json.path("title").asString(EVIL)).isIn(EVIL, "");
        }
        assertThat(given).isGreaterThan(15);
    }

    @Test
    void in_a_browser_no_script_runs() throws IOException, InterruptedException {
        assumeTrue(Files.isExecutable(BROWSER), "skipped: no " + BROWSER + "; install Debian's package chromium");
        List<Path> pages = written(".html");
        StringBuilder frames = new StringBuilder("<!DOCTYPE html><title>wait</title><body>");
        pages.forEach(p -> frames.append("<iframe src=\"").append(folder.relativize(p)).append("\"></iframe>"));
        Path all = Files.writeString(folder.resolve("all.html"), frames + """
            <script>
            addEventListener('load', () => {
              const seen = [...document.querySelectorAll('iframe')].map(f => f.contentWindow.document);
              const odd = seen.filter(d => d.title === '1' || d.querySelector('script, img, [onerror], a[href^="javascript"]'));
              document.title = ['PROBE', seen.length, odd.length,
                seen.filter(d => d.body.textContent.includes('<script>')).length].join(' ');
            });
            </script>""");
        Process process = new ProcessBuilder(BROWSER.toString(), "--headless", "--no-sandbox", "--disable-gpu", "--no-first-run",
            "--disable-background-networking", "--disable-component-update", "--disable-sync", "--virtual-time-budget=10000",
            "--allow-file-access-from-files", "--user-data-dir=" + folder.resolve("profile"), "--dump-dom", all.toUri().toString())
            .redirectOutput(folder.resolve("out.txt").toFile()).redirectError(ProcessBuilder.Redirect.DISCARD).start();
        assertThat(process.waitFor(120, TimeUnit.SECONDS)).as("the browser ends").isTrue();
        Matcher probe = Pattern.compile("PROBE (\\d+) (\\d+) (\\d+)").matcher(Files.readString(folder.resolve("out.txt")));
        assertThat(probe.find()).isTrue();
        assertThat(Integer.parseInt(probe.group(1))).isEqualTo(pages.size());
        assertThat(Integer.parseInt(probe.group(2))).as("pages where something ran or became an element").isZero();
        assertThat(Integer.parseInt(probe.group(3))).as("pages that show the texts as they are").isGreaterThan(12);
    }
}

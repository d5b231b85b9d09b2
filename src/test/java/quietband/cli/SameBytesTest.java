package quietband.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.TimeZone;
import java.util.TreeMap;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.api.parallel.Isolated;

/** The same model and seed give the same bytes, whatever the number of threads, the language and the time zone. */
@Isolated("changes the locale and the time zone of the process")
class SameBytesTest {

    private static final List<List<String>> WAYS = List.of(List.of("1", "en-US", "UTC"), List.of("2", "de-DE", "Pacific/Kiritimati"),
        List.of("7", "ar-EG-u-nu-arab", "America/Los_Angeles"), List.of("1", "hi-IN-u-nu-deva", "Asia/Kolkata"),
        List.of("2", "tr-TR", "Europe/Istanbul"));

    @TempDir
    private Path temp;

    @Test
    void assess_gives_the_same_bytes_everywhere() throws IOException {
        same("assess", "models/trial-a.yaml", "--points", "30");
    }

    @Test
    void tolerance_gives_the_same_bytes_everywhere() throws IOException {
        same("tolerance", "models/ridge-relay.yaml", "--units", "150", "--points", "20");
    }

    private void same(String... line) throws IOException {
        Map<String, String> first = run(WAYS.get(0), line);
        assertThat(first).hasSizeGreaterThan(4);
        for (List<String> way : WAYS.subList(1, WAYS.size())) {
            Map<String, String> here = run(way, line);
            assertThat(here.keySet()).isEqualTo(first.keySet());
            first.forEach((name, text) -> assertThat(here.get(name)).as(name + " " + way).isEqualTo(text));
        }
    }

    private Map<String, String> run(List<String> way, String... line) throws IOException {
        Locale locale = Locale.getDefault();
        TimeZone zone = TimeZone.getDefault();
        Path out = temp.resolve(String.join("-", way).replace('/', '-'));
        Run run;
        try {
            Locale.setDefault(Locale.forLanguageTag(way.get(1)));
            TimeZone.setDefault(TimeZone.getTimeZone(way.get(2)));
            run = Run.of(Stream.concat(Stream.of(line), Stream.of("--threads", way.get(0), "--out", out.toString())).toArray());
        } finally {
            Locale.setDefault(locale);
            TimeZone.setDefault(zone);
        }
        assertThat(run.status()).as(run.err()).isZero();
        Map<String, String> files = new TreeMap<>();
        try (Stream<Path> all = Files.walk(out)) {
            for (Path p : all.filter(Files::isRegularFile).toList()) {
                files.put(out.relativize(p).toString(), timeless(Files.readString(p, StandardCharsets.ISO_8859_1)));
            }
        }
        // the mark holds a hash of each file, times of this run included
        files.remove("quietband-result.json");
        files.put("printed", timeless(run.out()));
        return files;
    }

    /** Without measured run times and the day, which both zones and the clock change. */
    private static String timeless(String text) {
        return text.replaceAll("(?m)^.*(?:seconds|units_per_second|units a second|units/s).*$", "")
            .replaceAll("<dt>date</dt><dd>[^<]*</dd>", "")
            .replaceAll("[0-9.,]+ s, [0-9.,]+ units a second", "");
    }
}

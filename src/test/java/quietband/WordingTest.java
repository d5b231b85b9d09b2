package quietband;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;

/** One thing has one word in everything a user reads: the words that were given up do not come back. */
class WordingTest {

    private static final Pattern LITERAL = Pattern.compile("\"((?:[^\"\\\\]|\\\\.)*)\"");

    /** What must not stand there, and the word that stands instead. */
    private static final Map<String, String> GIVEN_UP = Map.ofEntries(
        Map.entry("(?<![.])\\bcorrection\\b(?!-only)", "cancellation"), Map.entry("platform alone|correction alone|every measure",
            "a stack's name"),
        Map.entry("\\bbounce [xyz]|\\brock about", "translation, rotation"), Map.entry("law of the (components|lot)|against the law",
            "fitted distribution"),
        Map.entry("accepted though|refused though", "false accept, false reject"),
            Map.entry("quiet phase noise|quiet oscillator|quiet unit", "static"),
        Map.entry("[Tt]urn-over", "2 g tip-over readings"), Map.entry("[Ww]ishes|WISHES", "targets"), Map.entry("just hold",
            "meets the limit"),
        Map.entry("condition binds|\\bbinds:", "active constraint"), Map.entry("\\broads?\\b", "time and frequency domain"),
        Map.entry("[Hh]and-off", "crossover"), Map.entry("\\bmind:", "note:"), Map.entry("differ by went", "RMS difference fell"),
        Map.entry("at 1 frequencies|\\b1 pieces", "a singular"), Map.entry("as filed|Take over|Read no more", "saved, Accept, Hide cursor"),
        Map.entry("you can mend", "input error"), Map.entry("never over a file", "never overwrites"), Map.entry("can be had", "available"),
        Map.entry("asked yield", "required yield"), Map.entry("no test and no", "neither a test result nor a qualification"),
        Map.entry("--top\\b|--want\\b", "--max-level, --good-units"),
        Map.entry("corners? (wanted|of every axis|[xyz] %|near)|wanted corner", "natural frequency"), Map.entry("whoever|made out\\b",
            "plain words"));

    @Test
    void wordsThatWereGivenUpStandInNoTextOfAUser() throws IOException {
        List<String> found = new ArrayList<>();
        for (String root : List.of("src/main/java", "src/main/jte", "src/main/resources/quietband", "models", "README.md",
            "src/site/markdown")) {
            try (Stream<Path> files = Files.walk(Path.of(root))) {
                for (Path file : files.filter(f -> f.toString().matches(".*\\.(java|jte|yaml|md)"))
                    .filter(f -> !f.endsWith("FailureMessage.java") && !f.endsWith("MisuseMessage.java")).sorted().toList()) {
                    look(file, found);
                }
            }
        }
        assertThat(found).isEmpty();
    }

    private static void look(Path file, List<String> found) throws IOException {
        int number = 0;
        for (String line : Files.readAllLines(file)) {
            number++;
            String text = file.toString().endsWith(".java") ? literals(line) : line;
            for (Map.Entry<String, String> each : GIVEN_UP.entrySet()) {
                if (Pattern.compile(each.getKey()).matcher(text).find()) {
                    found.add(file + ":" + number + ": '" + each.getKey() + "', say " + each.getValue() + ": " + line.strip());
                }
            }
        }
    }

    /** The string literals of a line; one that is a key or a name alone is none. */
    private static String literals(String line) {
        if (line.startsWith("import")) {
            return "";
        }
        StringBuilder all = new StringBuilder();
        Matcher m = LITERAL.matcher(line);
        while (m.find()) {
            all.append(m.group(1).matches("[a-z_0-9.,-]*") ? "" : m.group(1)).append(' ');
        }
        return all.toString();
    }
}

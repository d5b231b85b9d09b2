package quietband.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.io.PrintWriter;
import java.io.StringWriter;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import picocli.CommandLine;
import quietband.cli.terminal.FailureMessage;

/** The table of every end of every command: each row's line is run and ends as it says. */
class ExitStatusTest {

    private static final Path PAGE = Path.of("src/site/markdown/exit-status.md");
    private static final Pattern ROW = Pattern.compile("(?m)^\\| (\\w+) \\| (\\d+) \\| .* \\| `([^`]+)` \\|$");
    private static final Pattern WORD = Pattern.compile("\"([^\"]*)\"|(\\S+)");

    @TempDir
    private Path temp;

    /** A row of the table. */
    record Row(String command, int status, String line) { }

    static List<Row> rows() throws IOException {
        return ROW.matcher(Files.readString(PAGE)).results().map(r -> new Row(r.group(1), Integer.parseInt(r.group(2)), r.group(3)))
            .toList();
    }

    @ParameterizedTest
    @MethodSource("rows")
    void a_line_ends_as_its_row_says(Row row) {
        List<Object> words = new ArrayList<>();
        Matcher word = WORD.matcher(row.line());
        while (word.find()) {
            String text = word.group(1) == null ? word.group(2) : word.group(1);
            words.add(text.equals("design.yaml") ? temp.resolve(text) : text);
        }
        boolean writes = !Set.of("window", "schema", "new").contains(row.command());
        if (writes) {
            words.addAll(List.of("--out", temp.resolve("r")));
        }
        Run run = Run.of(words.toArray());
        assertThat(run.status()).as(run.err()).isEqualTo(row.status());
        assertThat(words.get(0)).isEqualTo(row.command());
        if (row.status() == FailureMessage.INPUT_ERROR) {
            assertThat(run.out()).isEmpty();
            assertThat(run.err()).isNotBlank();
            assertThat(temp).isEmptyDirectory();
        } else if (writes) {
            assertThat(temp.resolve("r/quietband-result.json")).isRegularFile();
        }
    }

    /** Every command is done and wrong once; those with --check are not met once, and no others. */
    @Test
    void the_table_is_complete() throws IOException {
        Map<String, Set<Integer>> shown = new TreeMap<>();
        rows().forEach(r -> shown.computeIfAbsent(r.command(), c -> new TreeSet<>()).add(r.status()));
        Map<String, Set<Integer>> due = new TreeMap<>();
        new CommandLine(new Quietband()).getSubcommands().forEach((name, line) ->
            due.put(name, line.getCommandSpec().findOption("--check") == null ? Set.of(0, 2) : Set.of(0, 1, 2)));
        assertThat(shown).isEqualTo(due);
    }

    @Test
    void a_defect_and_too_little_memory_end_with_70() {
        StringWriter said = new StringWriter();
        PrintWriter err = new PrintWriter(said);
        assertThat(FailureMessage.lastResort(new IllegalStateException("odd"), err)).isEqualTo(FailureMessage.DEFECT);
        assertThat(FailureMessage.lastResort(new OutOfMemoryError(), err)).isEqualTo(FailureMessage.DEFECT);
        assertThat(said.toString()).contains("a defect of this program", "odd", "out of memory", "-Xmx").doesNotContain("\tat ");
        assertThat(FailureMessage.DEFECT).isEqualTo(70);
    }
}

package quietband.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Set;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.MethodSource;
import picocli.CommandLine;
import quietband.cli.terminal.FailureMessage;

/** Wrong command lines end with status 2 and one message that names what is wrong in the words that were typed. */
class MistakesTest {

    @TempDir
    private Path temp;

    @ParameterizedTest
    @CsvSource({"assess, MODEL", "simulate, MODEL", "tolerance, MODEL", "compare, MODEL-or-CSV", "springs, MODEL", "filter, MODEL",
        "orient, MODEL", "trade, MODEL", "shaker, file of readings", "sort, LOT.csv", "fit, MEASURED.csv", "new, FILE"})
    void what_is_missing_is_named(String command, String missing) {
        refused(missing, command);
    }

    static Set<String> commands() {
        return new CommandLine(new Quietband()).getSubcommands().keySet();
    }

    @ParameterizedTest
    @MethodSource("commands")
    void an_unknown_option_is_named_before_what_is_missing(String command) {
        refused("unknown option '--bogus'", command, "--bogus=3");
    }

    @ParameterizedTest
    @CsvSource(delimiter = '|', quoteCharacter = '"', value = {
        "asess m.yaml | unknown command 'asess'; did you mean 'assess'?",
        "assess m.yaml --ouut d | unknown option '--ouut'; did you mean '--out'?",
        "assess m.yaml extra | 'extra' is one argument too many",
        "orient m.yaml --goal bogus | --goal: 'bogus' is none of axis, residual, noise",
        "simulate m.yaml --drive ride | --drive: 'ride' is none of sweep, dwell, random, shock, record",
        "fit m.yaml a.csv --free q --measured path,x | --measured: 'x' is none of transmissibility, sensitivity, path",
        "assess m.yaml --points x | --points: 'x' is not a whole number",
        "assess m.yaml --threads 99999999999 | is too large",
        "simulate m.yaml --drive sweep --rate x | --rate: 'x' is not a number"})
    void a_wrong_word_is_named_with_what_is_accepted(String line, String message) {
        refused(message, line.split(" "));
    }

    @Test
    void a_missing_and_an_empty_file_are_named() throws IOException {
        Path empty = Files.createFile(temp.resolve("empty.yaml"));
        for (String command : new String[] {"assess", "tolerance", "filter", "orient"}) {
            refused("there is no such file", command, temp.resolve("none.yaml").toString());
            refused("is empty", command, empty.toString());
        }
        refused("there is no such file", "sort", "none.csv", "--limit", "1 ppb/g");
        refused("is empty", "sort", empty.toString(), "--limit", "1 ppb/g");
        refused("is empty", "shaker", empty.toString(), "--carrier", "10 MHz");
    }

    private static void refused(String said, String... args) {
        Run run = Run.of((Object[]) args);
        assertThat(run.status()).isEqualTo(FailureMessage.INPUT_ERROR);
        assertThat(run.out()).isEmpty();
        assertThat(run.err()).contains(said).doesNotContain("Exception").doesNotContain("defect");
        // the message, and where to read more
        assertThat(run.err().lines().count()).isLessThanOrEqualTo(2);
    }
}

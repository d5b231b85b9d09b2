package quietband.cli;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assumptions.assumeThat;

import com.fasterxml.jackson.core.JsonFactory;
import com.fasterxml.jackson.core.JsonParser;
import com.fasterxml.jackson.core.JsonToken;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.concurrent.TimeUnit;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Sends long work the signal of Ctrl-C: it ends soon and leaves nothing half written. */
class InterruptedProcessTest {

    @TempDir
    private Path temp;

    @Test
    void an_interrupted_simulation_leaves_nothing_behind() throws IOException, InterruptedException {
        Path target = temp.resolve("r");
        Process p = start("simulate", "models/ridge-relay.yaml", "--drive", "random", "--duration", "3000 s", "--out",
            target.toString());
        waitForWork(p, 0);
        interrupt(p);
        assertThat(names()).isEmpty();
    }

    @Test
    void an_interrupted_monte_carlo_leaves_the_finished_units_marked_partial() throws IOException, InterruptedException {
        Path target = temp.resolve("r");
        Process p = start("tolerance", "models/ridge-relay.yaml", "--units", "3000000", "--out", target.toString());
        waitForWork(p, 200_000);
        interrupt(p);
        assertThat(names()).containsExactly("r");
        long units = number(target.resolve("summary.json"), "units");
        assertThat(units).isBetween(1L, 2_999_999L);
        assertThat(Files.readString(target.resolve("summary.json"))).containsPattern("\"partial\" *: *true");
        // the nominal condition and the two of the model, and the header
        try (Stream<String> lines = Files.lines(target.resolve("units.csv"))) {
            assertThat(lines.count()).isEqualTo(3 * units + 1);
        }
    }

    /** Until the hidden sibling holds at least so many bytes. */
    private void waitForWork(Process p, long bytes) throws IOException, InterruptedException {
        for (int i = 0; i < 600; i++) {
            if (size() >= bytes && !names().isEmpty()) {
                return;
            }
            assertThat(p.waitFor(100, TimeUnit.MILLISECONDS)).as("ended before it was interrupted").isFalse();
        }
        throw new AssertionError("no work seen within a minute");
    }

    private long size() throws IOException {
        long sum = 0;
        try (Stream<Path> files = Files.walk(temp)) {
            for (Path f : files.filter(Files::isRegularFile).toList()) {
                sum += Files.size(f);
            }
        }
        return sum;
    }

    private List<String> names() throws IOException {
        try (Stream<Path> list = Files.list(temp)) {
            return list.map(f -> f.getFileName().toString()).sorted().toList();
        }
    }

    private static void interrupt(Process p) throws IOException, InterruptedException {
        assumeThat(p.supportsNormalTermination()).as("signals of a POSIX system").isTrue();
        new ProcessBuilder("kill", "-INT", Long.toString(p.pid())).start().waitFor();
        assertThat(p.waitFor(60, TimeUnit.SECONDS)).as("ends within a minute").isTrue();
        // 128 + SIGINT, as a shell shows it
        assertThat(p.exitValue()).isEqualTo(130);
    }

    private static long number(Path json, String name) throws IOException {
        try (JsonParser parser = new JsonFactory().createParser(json.toFile())) {
            while (parser.nextToken() != null) {
                if (parser.currentToken() == JsonToken.FIELD_NAME && name.equals(parser.currentName())) {
                    parser.nextToken();
                    return parser.getLongValue();
                }
            }
        }
        throw new AssertionError(json + " has no " + name);
    }

    private static Process start(String... arguments) throws IOException {
        List<String> command = new ArrayList<>(List.of(Path.of(System.getProperty("java.home"), "bin", "java").toString(),
            "-cp", System.getProperty("java.class.path"), "quietband.cli.Quietband"));
        command.addAll(Arrays.asList(arguments));
        return new ProcessBuilder(command).redirectErrorStream(true).redirectOutput(ProcessBuilder.Redirect.DISCARD).start();
    }
}

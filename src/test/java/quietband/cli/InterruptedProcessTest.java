package quietband.cli;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assumptions.assumeThat;
import static org.junit.jupiter.params.provider.Arguments.arguments;

import com.fasterxml.jackson.core.JsonFactory;
import com.fasterxml.jackson.core.JsonParser;
import com.fasterxml.jackson.core.JsonToken;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.ArrayList;
import java.util.Collection;
import java.util.List;
import java.util.Locale;
import java.util.concurrent.TimeUnit;
import java.util.function.IntFunction;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.EnumSource;
import org.junit.jupiter.params.provider.MethodSource;
import quietband.report.file.ResultDirectory;
import quietband.report.file.ResultMark;

/**
 * Sends every long command the signal of Ctrl-C or that of a system that stops it: it ends soon, and the old result is there whole
 * unless a new one is.
 */
class InterruptedProcessTest {

    private static final String MODEL = "models/ridge-relay.yaml";
    private static final String STIFFNESS = "platform.springs.stiffness = 6 N/mm to 14 N/mm, 20000 steps";

    @TempDir
    private static Path inputs;
    @TempDir
    private Path temp;
    private Path target;
    private Process process;

    private enum Signal { INT, TERM }

    @BeforeAll
    static void write_inputs_of_long_work() throws IOException {
        write("lot.csv", "serial,x_ppb_per_g,y_ppb_per_g,z_ppb_per_g", 300_000, i -> "U" + i + ",0." + i % 7 + ",0." + i % 5 + ",0.1");
        // thirty readings a unit; sidebands of 1 ppb/g at 10 MHz, 20 log10(1e-9 * 10 * 1e7 / (2 fv)) dBc, a little scattered
        write("run.csv", "serial,axis,frequency_hz,peak_g,sideband_dbc", 100_000, i -> {
            int hz = 100 + 10 * (i % 30 / 3);
            return String.format(Locale.ROOT, "U%d,%s,%d,10,%.2f", i / 30, "xyz".charAt(i % 3), hz,
                20 * Math.log10(0.05 / hz) + i % 4 * 0.05);
        });
        write("response.csv", "frequency_hz,x_ratio,y_ratio,z_ratio", 20_000, i -> {
            double hz = 10 * Math.pow(200, i / 19_999.0);
            double ratio = 1 / Math.hypot(1 - hz * hz / 4900, 0.3 * hz / 70) * (1 + i % 3 * 0.02);
            return String.format(Locale.ROOT, "%.5f,%.6f,%.6f,%.6f", hz, ratio, ratio, ratio);
        });
    }

    private static void write(String name, String head, int rows, IntFunction<String> row) throws IOException {
        Files.write(inputs.resolve(name), Stream.concat(Stream.of(head), IntStream.range(0, rows).mapToObj(row)).toList());
    }

    @BeforeEach
    void an_old_result_is_there() {
        target = temp.resolve("r");
        try (ResultDirectory old = ResultDirectory.prepare(target, new ResultMark("assess", "1", "abc", 1), List.of())) {
            old.write("a.csv", w -> w.write("old"));
            old.commit();
        }
    }

    @AfterEach
    void nothing_runs_on() {
        process.destroyForcibly();
    }

    /** Signal, bytes of the new result that are waited for, command line; fit works before it begins a result. */
    static Stream<Arguments> commands() {
        String response = inputs.resolve("response.csv").toString();
        return Stream.of(
            arguments(Signal.INT, 1, List.of("assess", MODEL, "--points", "40000")),
            arguments(Signal.TERM, 0, List.of("simulate", MODEL, "--drive", "random", "--duration", "3000 s")),
            arguments(Signal.INT, 0, List.of("simulate", MODEL, "--drive", "sweep", "--points", "20000")),
            arguments(Signal.TERM, 0, List.of("springs", MODEL, "--hold")),
            arguments(Signal.INT, 0, List.of("filter", MODEL, "--count", "64", "--points", "20000")),
            arguments(Signal.TERM, 0, List.of("filter", MODEL, "--analog", "2", "--points", "20000")),
            arguments(Signal.INT, 0, List.of("orient", MODEL, "--points", "200000")),
            arguments(Signal.TERM, 0, List.of("trade", MODEL, "--vary", STIFFNESS)),
            arguments(Signal.INT, 0, List.of("trade", MODEL, "--vary", STIFFNESS, "--search", "yield")),
            arguments(Signal.TERM, -1, List.of("fit", MODEL, response, "--measured", "transmissibility", "--free",
                "platform.springs.stiffness,platform.springs.damping")),
            arguments(Signal.INT, 0, List.of("compare", MODEL, "models/soft-platform.yaml", "--points", "200000")),
            arguments(Signal.TERM, 1, List.of("sort", inputs.resolve("lot.csv").toString(), "--limit", "0.3 ppb/g")),
            arguments(Signal.INT, 0, List.of("shaker", inputs.resolve("run.csv").toString(), "--carrier", "10 MHz")));
    }

    @ParameterizedTest
    @MethodSource("commands")
    void a_stopped_command_keeps_the_old_result_and_leaves_nothing_beside(Signal signal, int bytes, List<String> command)
        throws IOException, InterruptedException {
        start(command);
        waitForWork(bytes);
        stop(signal);
        assertThat(names(temp)).containsExactly("r");
        assertThat(names(target)).containsExactlyInAnyOrder("a.csv", ResultMark.FILE);
        assertThat(target.resolve("a.csv")).hasContent("old");
    }

    @ParameterizedTest
    @EnumSource
    void a_stopped_monte_carlo_leaves_the_finished_units_marked_partial(Signal signal) throws IOException, InterruptedException {
        start(List.of("tolerance", MODEL, "--units", "3000000"));
        waitForWork(200_000);
        stop(signal);
        assertThat(names(temp)).containsExactly("r");
        long units = number(target.resolve("summary.json"), "units");
        assertThat(units).isBetween(1L, 2_999_999L);
        assertThat(Files.readString(target.resolve("summary.json"))).containsPattern("\"partial\" *: *true");
        // the nominal condition and the two of the model, and the header
        try (Stream<String> lines = Files.lines(target.resolve("units.csv"))) {
            assertThat(lines.count()).isEqualTo(3 * units + 1);
        }
    }

    private void start(List<String> arguments) throws IOException {
        List<String> command = new ArrayList<>(List.of(Path.of(System.getProperty("java.home"), "bin", "java").toString(),
            "-cp", System.getProperty("java.class.path"), "quietband.cli.Quietband"));
        command.addAll(arguments);
        command.addAll(List.of("--out", target.toString()));
        process = new ProcessBuilder(command).redirectErrorStream(true).redirectOutput(ProcessBuilder.Redirect.DISCARD).start();
    }

    /** Until the hidden sibling holds at least so many bytes; below 0, until two seconds of a processor are spent. */
    private void waitForWork(long bytes) throws IOException, InterruptedException {
        for (int i = 0; i < 6000; i++) {
            if (bytes < 0 ? process.info().totalCpuDuration().orElse(Duration.ZERO).toMillis() > 2000
                : names(temp).size() > 1 && written() >= bytes) {
                return;
            }
            assertThat(process.waitFor(10, TimeUnit.MILLISECONDS)).as("ended before it was stopped").isFalse();
        }
        throw new AssertionError("no work seen within a minute");
    }

    private long written() throws IOException {
        long sum = 0;
        try (Stream<Path> files = Files.walk(temp)) {
            for (Path f : files.filter(f -> !f.startsWith(target) && Files.isRegularFile(f)).toList()) {
                sum += Files.size(f);
            }
        }
        return sum;
    }

    private static Collection<String> names(Path folder) throws IOException {
        try (Stream<Path> list = Files.list(folder)) {
            return list.map(f -> f.getFileName().toString()).toList();
        }
    }

    private void stop(Signal signal) throws IOException, InterruptedException {
        assumeThat(process.supportsNormalTermination()).as("signals of a POSIX system").isTrue();
        assertThat(process.descendants()).as("one process").isEmpty();
        new ProcessBuilder("kill", "-" + signal, Long.toString(process.pid())).start().waitFor();
        assertThat(process.waitFor(60, TimeUnit.SECONDS)).as("ends within a minute").isTrue();
        // 128 and the signal's number, as a shell shows it
        assertThat(process.exitValue()).isEqualTo(signal == Signal.INT ? 128 + 2 : 128 + 15);
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
}

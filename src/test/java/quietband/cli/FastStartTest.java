package quietband.cli;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assumptions.assumeThat;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.TimeUnit;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import quietband.cli.terminal.FailureMessage;

/** The second process is started only where it is safe, and behaves as the first would. */
class FastStartTest {

    private static final Path JAR = Path.of("target/quietband.jar");
    private static final Path HOME = Path.of(System.getProperty("java.home"));

    @TempDir
    private Path temp;

    @Test
    void a_jar_with_its_archive_is_started_again_with_the_same_arguments() throws IOException {
        String jar = jar(true);
        List<String> c = FastStart.command(HOME, jar, new String[] {"-jar", jar, "assess", "m.yaml"}, false, "assess", "m.yaml");
        assertThat(c).startsWith(HOME.resolve("bin/java").toString()).endsWith("-cp", jar, "quietband.cli.Quietband", "assess", "m.yaml")
            .contains("-XX:SharedArchiveFile=" + FastStart.archive(jar), "-XX:TieredStopAtLevel=1");
    }

    @ParameterizedTest
    @CsvSource({"tolerance m.yaml, false", "assess m.yaml --points=100000, false", "assess m.yaml --points 100000, false",
        "assess m.yaml --points 20000, true", "compare a.yaml b.yaml, true", "--help, true"})
    void long_work_is_compiled_thoroughly(String line, boolean quick) throws IOException {
        String jar = jar(true);
        String[] args = line.split(" ");
        String[] given = ("-jar " + jar + " " + line).split(" ");
        assertThat(FastStart.command(HOME, jar, given, false, args).contains("-XX:TieredStopAtLevel=1"))
            .isEqualTo(quick);
    }

    @ParameterizedTest
    @CsvSource({"tolerance m.yaml, true, true", "tolerance m.yaml --units 99999, true, true",
        "tolerance m.yaml --units=100000, true, false",
        "tolerance m.yaml --units 1000000, true, false", "simulate m.yaml, false, false"})
    void units_are_compiled_in_small_pieces_and_few_of_them_alone(String line, boolean small, boolean few) throws IOException {
        String jar = jar(true);
        List<String> c = FastStart.command(HOME, jar, ("-jar " + jar + " " + line).split(" "), false, line.split(" "));
        assertThat(c.stream().anyMatch(o -> o.startsWith("-XX:FreqInlineSize="))).isEqualTo(small);
        assertThat(c).noneMatch(o -> o.startsWith("-XX:CompilerDirectivesFile="));
        Path choice = Files.createFile(temp.resolve("q-compile.json"));
        assertThat(FastStart.command(HOME, jar, ("-jar " + jar + " " + line).split(" "), false, line.split(" "))
            .contains("-XX:CompilerDirectivesFile=" + choice)).isEqualTo(few);
    }

    @Test
    void options_of_the_virtual_machine_are_respected() throws IOException {
        String jar = jar(true);
        String[] own = {"-Xmx1g", "-jar", jar, "schema"};
        assertThat(FastStart.command(HOME, jar, own, false, "schema")).isEmpty();
        assertThat(FastStart.command(HOME, jar, new String[] {"-jar", jar, "schema"}, true, "schema")).isEmpty();
    }

    @Test
    void without_an_archive_or_a_jar_the_first_process_does_the_work() throws IOException {
        String jar = jar(false);
        assertThat(FastStart.command(HOME, jar, new String[] {"-jar", jar, "schema"}, false, "schema")).isEmpty();
        assertThat(FastStart.command(HOME, "classes", new String[] {"-cp", "classes", "Main", "schema"}, false, "schema")).isEmpty();
        assertThat(FastStart.command(HOME, jar, new String[0], false, "schema")).isEmpty();
    }

    @Test
    void output_and_exit_status_come_through() throws IOException, InterruptedException {
        Process p = start("assess", "no-such-file.yaml");
        String said = new String(p.getErrorStream().readAllBytes(), StandardCharsets.UTF_8);
        assertThat(p.waitFor()).isEqualTo(FailureMessage.MENDABLE);
        assertThat(said).contains("no-such-file.yaml").doesNotContain("Exception");
        Process schema = start("schema");
        assertThat(new String(schema.getInputStream().readAllBytes(), StandardCharsets.UTF_8)).contains("\"$schema\"");
        assertThat(schema.waitFor()).isZero();
    }

    @Test
    void a_killed_first_process_takes_the_second_with_it() throws IOException, InterruptedException {
        Process p = start("simulate", "models/ridge-relay.yaml", "--drive", "random", "--duration", "3000 s", "--out",
            temp.resolve("r").toString());
        ProcessHandle second = second(p);
        p.destroyForcibly().waitFor();
        assertThat(second.onExit().orTimeout(20, TimeUnit.SECONDS).join().isAlive()).isFalse();
    }

    @Test
    void the_signal_of_ctrl_c_reaches_the_second_process() throws IOException, InterruptedException {
        Process p = start("simulate", "models/ridge-relay.yaml", "--drive", "random", "--duration", "3000 s", "--out",
            temp.resolve("r").toString());
        ProcessHandle second = second(p);
        new ProcessBuilder("kill", "-INT", Long.toString(p.pid())).start().waitFor();
        assertThat(p.waitFor(60, TimeUnit.SECONDS)).isTrue();
        // a signal before the first has learnt to pass it on ends the second when it misses the first, a moment later
        assertThat(second.onExit().orTimeout(20, TimeUnit.SECONDS).join().isAlive()).isFalse();
        assertThat(temp.resolve("r")).doesNotExist();
    }

    private String jar(boolean archive) throws IOException {
        if (archive) {
            Files.createFile(FastStart.archive(temp.resolve("q.jar").toString()));
        }
        return temp.resolve("q.jar").toString();
    }

    private static ProcessHandle second(Process first) throws InterruptedException {
        for (int i = 0; i < 300; i++) {
            var child = first.children().findFirst();
            // the helper that starts a process is a child for a moment, too
            if (child.isPresent() && child.get().info().command().orElse("").endsWith("java")) {
                return child.get();
            }
            assertThat(first.waitFor(100, TimeUnit.MILLISECONDS)).as("ended by itself").isFalse();
        }
        throw new AssertionError("no second process within half a minute");
    }

    private static Process start(String... arguments) throws IOException {
        assumeThat(JAR).as("the runnable jar, made by package").exists();
        assumeThat(FastStart.archive(JAR.toString())).as("its class data archive").exists();
        List<String> command = new ArrayList<>(List.of(HOME.resolve("bin/java").toString(), "-jar", JAR.toString()));
        command.addAll(List.of(arguments));
        ProcessBuilder b = new ProcessBuilder(command);
        b.environment().keySet().removeAll(List.of("JAVA_TOOL_OPTIONS", "JDK_JAVA_OPTIONS"));
        return b.start();
    }
}

package quietband.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import java.util.concurrent.TimeUnit;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/**
 * Kills the program at random moments while it replaces a result: the old one or the new one must be whole.
 * {@code -Dkills=50} tries as many; the default keeps the suite short.
 */
class KilledProcessTest {

    @TempDir
    private Path temp;

    @Test
    void a_killed_process_leaves_the_old_result_or_the_new_one() throws IOException, InterruptedException {
        Path target = temp.resolve("r");
        assertThat(start(target, 50).waitFor()).isZero();
        int kills = Integer.getInteger("kills", 6);
        Random random = new Random(11);
        int rows = 51;
        for (int k = 0; k < kills; k++) {
            int points = 60 + k;
            Process p = start(target, points);
            if (!p.waitFor(300 + random.nextInt(2200), TimeUnit.MILLISECONDS)) {
                p.destroyForcibly().waitFor();
            }
            int found = Files.readAllLines(target.resolve("response.csv")).size();
            assertThat(found).isIn(rows, points + 1);
            rows = found;
            try (Stream<String> mark = Files.lines(target.resolve("quietband-result.json"))) {
                assertThat(mark.filter(l -> l.contains(".csv") || l.contains(".json"))).isNotEmpty();
            }
            assertThat(target.resolve("summary.json")).isNotEmptyFile();
        }
        // the next command clears what the killed ones left
        assertThat(start(target, 40).waitFor()).isZero();
        try (Stream<Path> list = Files.list(temp)) {
            assertThat(list.toList()).containsExactly(target);
        }
    }

    @Test
    void whoever_is_stopped_during_the_exchange_leaves_a_whole_result() throws IOException, InterruptedException {
        Path target = temp.resolve("r");
        Random random = new Random(12);
        int kills = Integer.getInteger("kills", 6);
        for (int k = 0; k < kills; k++) {
            Process p = loop(target);
            for (int i = 0; i < 6000 && !Files.exists(target); i++) {
                Thread.sleep(10);
            }
            Thread.sleep(random.nextInt(200));
            if (k % 2 == 0) {
                p.destroyForcibly();
            } else {
                new ProcessBuilder("kill", k % 4 == 1 ? "-INT" : "-TERM", Long.toString(p.pid())).start().waitFor();
            }
            assertThat(p.waitFor(30, TimeUnit.SECONDS)).isTrue();
            // the next run clears up, and puts back what stepped aside
            assertThat(loop(target, "0").waitFor()).isZero();
            assertWhole(target);
        }
        assertThat(loop(target, "1").waitFor()).isZero();
        assertWhole(target);
        try (Stream<Path> list = Files.list(temp)) {
            assertThat(list.toList()).containsExactly(target);
        }
    }

    @Test
    void two_programs_on_one_folder_leave_one_whole_result() throws IOException, InterruptedException {
        Path target = temp.resolve("r");
        Process one = loop(target, "60");
        Process other = loop(target, "60");
        assertThat(one.waitFor()).isZero();
        assertThat(other.waitFor()).isZero();
        assertWhole(target);
        try (Stream<Path> list = Files.list(temp)) {
            assertThat(list.toList()).containsExactly(target);
        }
    }

    /** All files of one and the same commit, and the mark. */
    private static void assertWhole(Path target) throws IOException {
        try (Stream<Path> list = Files.list(target)) {
            assertThat(list.map(p -> p.getFileName().toString())).containsExactlyInAnyOrder("f0.csv", "f1.csv", "f2.csv", "f3.csv",
                "quietband-result.json");
        }
        String text = Files.readString(target.resolve("f0.csv"));
        for (int i = 1; i < 4; i++) {
            assertThat(target.resolve("f" + i + ".csv")).hasContent(text);
        }
    }

    private static Process loop(Path target, String... times) throws IOException {
        List<String> command = new ArrayList<>(List.of(Path.of(System.getProperty("java.home"), "bin", "java").toString(), "-cp",
            System.getProperty("java.class.path"), "quietband.cli.CommitLoop", target.toString()));
        command.addAll(List.of(times));
        return new ProcessBuilder(command).redirectErrorStream(true).redirectOutput(ProcessBuilder.Redirect.DISCARD).start();
    }

    private static Process start(Path target, int points) throws IOException {
        return new ProcessBuilder(List.of(Path.of(System.getProperty("java.home"), "bin", "java").toString(), "-cp",
            System.getProperty("java.class.path"), "quietband.cli.Quietband", "assess", "models/ridge-relay.yaml", "--out",
            target.toString(), "--points", Integer.toString(points)))
            .redirectErrorStream(true).redirectOutput(ProcessBuilder.Redirect.DISCARD).start();
    }
}

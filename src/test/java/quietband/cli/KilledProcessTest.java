package quietband.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
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

    private static Process start(Path target, int points) throws IOException {
        return new ProcessBuilder(List.of(Path.of(System.getProperty("java.home"), "bin", "java").toString(), "-cp",
            System.getProperty("java.class.path"), "quietband.cli.Quietband", "assess", "models/ridge-relay.yaml", "--out",
            target.toString(), "--points", Integer.toString(points)))
            .redirectErrorStream(true).redirectOutput(ProcessBuilder.Redirect.DISCARD).start();
    }
}

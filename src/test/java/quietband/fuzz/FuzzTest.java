package quietband.fuzz;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.io.PrintWriter;
import java.io.StringWriter;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.FutureTask;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.TimeoutException;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import quietband.cli.Quietband;

/**
 * Damaged files of every kind that the program reads, through the whole program: it ends with 0, 2 or, asked to check, 1;
 * never with a stack, never with half a result, always with a message that says where.
 * {@code -Dfuzz=20000} runs as many, {@code -Dfuzz.from=N} begins at a seed, {@code -Dfuzz.processes=200} runs so many as processes
 * of their own, {@code -Dfuzz.keep=FOLDER} keeps the files of every case that fails.
 */
class FuzzTest {

    private static final int SECONDS = 20;

    @TempDir
    private Path temp;

    @Test
    void no_damaged_file_makes_more_than_a_message() throws IOException, InterruptedException {
        int count = Integer.getInteger("fuzz", 240);
        int from = Integer.getInteger("fuzz.from", 0);
        Map<String, String> files = Recipe.files();
        List<String> found = new ArrayList<>();
        int[] ends = new int[3];
        for (int seed = from; seed < from + count; seed++) {
            FuzzCase damaged = FuzzCase.of(seed, temp.resolve("case-" + seed), files);
            FuzzCase.Said said = within(damaged);
            ends[Math.min(2, said.status())]++;
            note(damaged, said, found);
        }
        assertThat(found).as("seed, command: what is wrong").isEmpty();
        // both ends must be there, or the accidents are too weak or too strong to say anything
        assertThat(ends[0] + ends[1]).isGreaterThan(count / 20);
        assertThat(ends[2]).isGreaterThan(count / 20);
    }

    @Test
    void a_process_of_its_own_ends_the_same_way() throws IOException, InterruptedException {
        int count = Integer.getInteger("fuzz.processes", 2);
        List<String> found = new ArrayList<>();
        Map<String, String> files = Recipe.files();
        for (int i = 0; i < count; i++) {
            FuzzCase damaged = FuzzCase.of(7919 * (i + 1), temp.resolve("process-" + i), files);
            note(damaged, process(damaged), found);
        }
        assertThat(found).as("seed, command: what is wrong").isEmpty();
    }

    private static void note(FuzzCase damaged, FuzzCase.Said said, List<String> found) throws IOException {
        List<String> faults = damaged.faults(said);
        if (!faults.isEmpty()) {
            String told = said.err().length() > 400 ? said.err().substring(0, 400) + "..." : said.err();
            found.add(damaged.seed() + ", " + damaged.recipe() + ": " + faults + "; said: " + told);
            String keep = System.getProperty("fuzz.keep");
            if (keep != null) {
                Path kept = Path.of(keep).resolve(Integer.toString(damaged.seed()));
                Files.createDirectories(kept);
                Files.copy(damaged.folder().resolve(damaged.recipe().damaged().replace("summary", "tolerance/summary")),
                    kept.resolve(damaged.recipe().damaged()), java.nio.file.StandardCopyOption.REPLACE_EXISTING);
                Files.writeString(kept.resolve("said.txt"), damaged.recipe() + "\n" + faults + "\n" + said.err());
            }
        }
        damaged.remove();
    }

    private static FuzzCase.Said run(FuzzCase damaged) {
        StringWriter out = new StringWriter();
        StringWriter err = new StringWriter();
        int status = Quietband.run(new PrintWriter(out), new PrintWriter(err), damaged.words().toArray(new String[0]));
        return new FuzzCase.Said(status, out.toString(), err.toString());
    }

    /** A run under a watchdog; one that does not end counts as status 99. */
    private static FuzzCase.Said within(FuzzCase damaged) throws InterruptedException {
        FutureTask<FuzzCase.Said> task = new FutureTask<>(() -> run(damaged));
        Thread thread = new Thread(task, "fuzz-" + damaged.seed());
        thread.setDaemon(true);
        thread.start();
        try {
            return task.get(SECONDS, TimeUnit.SECONDS);
        } catch (TimeoutException e) {
            thread.interrupt();
            return new FuzzCase.Said(99, "", "does not end within " + SECONDS + " s");
        } catch (ExecutionException e) {
            return new FuzzCase.Said(98, "", "escapes: " + e.getCause());
        }
    }

    private FuzzCase.Said process(FuzzCase damaged) throws IOException, InterruptedException {
        List<String> command = new ArrayList<>(List.of(Path.of(System.getProperty("java.home"), "bin", "java").toString(), "-Xmx1g", "-cp",
            System.getProperty("java.class.path"), "quietband.cli.Quietband"));
        command.addAll(damaged.words());
        Path out = temp.resolve("out.txt");
        Path err = temp.resolve("err.txt");
        Process process = new ProcessBuilder(command).redirectOutput(out.toFile()).redirectError(err.toFile()).start();
        if (!process.waitFor(3 * SECONDS, TimeUnit.SECONDS)) {
            process.destroyForcibly().waitFor();
            return new FuzzCase.Said(99, "", "does not end");
        }
        return new FuzzCase.Said(process.exitValue(), Files.readString(out), Files.readString(err));
    }
}

package quietband.report.file;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import org.junit.jupiter.api.RepeatedTest;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class ResultDirectoryTest {

    @TempDir
    private Path temp;

    private final ResultMark mark = new ResultMark("assess", "1", "abc", 1);

    private void write(Path target, String name, String text) {
        try (ResultDirectory d = ResultDirectory.prepare(target, mark)) {
            d.write(name, w -> w.write(text));
            d.commit();
        }
    }

    private long entries() throws IOException {
        try (Stream<Path> list = Files.list(temp)) {
            return list.count();
        }
    }

    @Test
    void a_result_replaces_an_earlier_one_whole_and_leaves_nothing_beside() throws IOException {
        Path target = temp.resolve("r");
        write(target, "a.csv", "old");
        write(target, "charts/b.svg", "new");
        assertThat(target.resolve("a.csv")).doesNotExist();
        assertThat(target.resolve("charts/b.svg")).hasContent("new");
        assertThat(entries()).isEqualTo(1);
    }

    @Test
    void nothing_is_there_before_the_end_and_nothing_stays_without_it() throws IOException {
        Path target = temp.resolve("deep/er/r");
        try (ResultDirectory d = ResultDirectory.prepare(target, mark)) {
            d.write("a.csv", w -> w.write("half"));
            assertThat(target).doesNotExist();
        }
        assertThat(target).doesNotExist();
        try (Stream<Path> list = Files.list(target.getParent())) {
            assertThat(list).isEmpty();
        }
    }

    @Test
    void a_strangers_folder_and_a_strangers_file_in_a_result_are_never_replaced() throws IOException {
        Path strange = Files.createDirectory(temp.resolve("photos"));
        Files.writeString(strange.resolve("holiday.txt"), "mine");
        assertThatThrownBy(() -> write(strange, "a.csv", "x")).isInstanceOf(ResultException.class)
            .hasMessageContaining("photos").hasMessageContaining("--out");
        assertThat(strange.resolve("holiday.txt")).hasContent("mine");
        Path result = temp.resolve("r");
        write(result, "a.csv", "old");
        Files.writeString(result.resolve("notes.txt"), "mine");
        assertThatThrownBy(() -> write(result, "a.csv", "new")).isInstanceOf(ResultException.class)
            .hasMessageContaining("notes.txt");
        assertThat(result.resolve("a.csv")).hasContent("old");
        assertThat(result.resolve("notes.txt")).hasContent("mine");
        Path file = Files.writeString(temp.resolve("file"), "mine");
        assertThatThrownBy(() -> write(file, "a.csv", "x")).isInstanceOf(ResultException.class);
        assertThat(file).hasContent("mine");
    }

    @Test
    void a_mark_that_is_no_mark_protects_nothing_and_replaces_nothing() throws IOException {
        Path strange = Files.createDirectory(temp.resolve("s"));
        for (String text : new String[] {"", "{", "[1,2]", "{\"files\": [\"quietband-result.json\"]}"}) {
            Files.writeString(strange.resolve(ResultMark.FILE), text);
            assertThatThrownBy(() -> write(strange, "a.csv", "x")).isInstanceOf(ResultException.class);
            assertThat(strange.resolve(ResultMark.FILE)).hasContent(text);
        }
    }

    @Test
    void an_empty_folder_is_filled() throws IOException {
        Path target = Files.createDirectory(temp.resolve("empty"));
        write(target, "a.csv", "x");
        assertThat(target.resolve("a.csv")).hasContent("x");
    }

    @Test
    void a_result_that_stepped_aside_when_its_process_died_comes_back() throws IOException {
        Path target = temp.resolve("r");
        write(target, "a.csv", "old");
        // as left by a process (number far above any) that was killed between the two renames
        Files.move(target, temp.resolve(".r.quietband-old-999999999-1"));
        Files.createDirectory(temp.resolve(".r.quietband-new-999999999-1"));
        try (ResultDirectory d = ResultDirectory.prepare(target, mark)) {
            assertThat(target.resolve("a.csv")).hasContent("old");
            assertThat(d.target()).isEqualTo(target.toAbsolutePath());
        }
        assertThat(entries()).isEqualTo(1);
    }

    @Test
    void leftovers_that_carry_this_process_s_own_number_are_a_predecessor_s() throws IOException {
        // a container numbers its processes from 1 again
        String own = ProcessHandle.current().pid() + "-1";
        Path target = temp.resolve("r");
        write(target, "a.csv", "old");
        Files.move(target, temp.resolve(".r.quietband-old-" + own));
        Files.createDirectory(temp.resolve(".r.quietband-new-" + own));
        try (ResultDirectory d = ResultDirectory.prepare(target, mark)) {
            assertThat(d.target().resolve("a.csv")).hasContent("old");
        }
        assertThat(entries()).isEqualTo(1);
    }

    @Test
    void a_result_that_ended_is_neither_written_to_nor_committed() throws IOException {
        Path target = temp.resolve("r");
        ResultDirectory d = ResultDirectory.prepare(target, mark);
        d.close();
        assertThatThrownBy(() -> d.write("a.csv", w -> w.write("late"))).isInstanceOf(ResultException.class)
            .hasMessageContaining("interrupted");
        assertThatThrownBy(() -> d.copy(temp, "b.csv")).isInstanceOf(ResultException.class).hasMessageContaining("interrupted");
        assertThatThrownBy(d::commit).isInstanceOf(ResultException.class).hasMessageContaining("interrupted");
        assertThat(entries()).isZero();
    }

    @RepeatedTest(100)
    void work_that_goes_on_while_its_result_is_discarded_leaves_nothing() throws IOException, InterruptedException {
        ResultDirectory d = ResultDirectory.prepare(temp.resolve("r"), mark);
        Thread work = new Thread(() -> {
            try {
                IntStream.range(0, 3000).forEach(i -> d.write(i % 5 + "/" + i + ".csv", w -> w.write("x")));
            } catch (ResultException e) {
                assertThat(e).hasMessageContaining("interrupted");
            }
        });
        work.start();
        while (d.files().size() < 10) {
            Thread.onSpinWait();
        }
        d.close();
        work.join();
        assertThat(entries()).isZero();
    }

    @RepeatedTest(100)
    void a_result_discarded_while_it_is_committed_is_there_whole_or_as_it_was() throws IOException, InterruptedException {
        Path target = temp.resolve("r");
        write(target, "a.csv", "old");
        ResultDirectory d = ResultDirectory.prepare(target, mark);
        for (int i = 0; i < 5; i++) {
            d.write("b/" + i + ".csv", w -> w.write("new"));
        }
        Thread hook = new Thread(d::close);
        hook.start();
        boolean whole;
        try {
            d.commit();
            whole = true;
        } catch (ResultException e) {
            whole = false;
        }
        hook.join();
        assertThat(entries()).isEqualTo(1);
        assertThat(Files.exists(target.resolve("a.csv"))).isNotEqualTo(Files.exists(target.resolve("b")));
        assertThat(target.resolve(whole ? "b/4.csv" : "a.csv")).hasContent(whole ? "new" : "old");
    }

    @Test
    void an_unwritable_place_is_named() {
        Path impossible = Path.of("/proc/quietband/r");
        assertThatThrownBy(() -> write(impossible, "a.csv", "x")).isInstanceOf(ResultException.class)
            .hasMessageContaining("/proc/quietband/r").hasMessageContaining("cannot be written");
    }
}

package quietband.report.file;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.FileTime;
import java.time.Instant;
import java.util.List;
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
        try (ResultDirectory d = ResultDirectory.prepare(target, mark, List.of())) {
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
        try (ResultDirectory d = ResultDirectory.prepare(target, mark, List.of())) {
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

    /** As a run that was killed leaves it. */
    private Path dead(int number) throws IOException {
        String name = ".r.quietband-run-" + number;
        Files.createFile(temp.resolve(name + ".lock"));
        return Files.createDirectory(temp.resolve(name));
    }

    @Test
    void a_result_that_stepped_aside_when_its_process_died_comes_back() throws IOException {
        Path target = temp.resolve("r");
        write(target, "a.csv", "old");
        // killed between the two renames, before them and at the beginning
        Files.move(target, dead(1).resolve("old-0"));
        Files.createDirectories(dead(2).resolve("new/charts"));
        Files.delete(dead(3));
        try (ResultDirectory d = ResultDirectory.prepare(target, mark, List.of())) {
            assertThat(target.resolve("a.csv")).hasContent("old");
            assertThat(d.target()).isEqualTo(target.toAbsolutePath());
        }
        assertThat(entries()).isEqualTo(1);
    }

    @Test
    void an_old_result_is_kept_until_the_new_one_is_whole() throws IOException {
        Path target = temp.resolve("r");
        write(target, "b.csv", "old");
        Files.move(target, dead(1).resolve("old-0"));
        // half of a result: the mark lists what is not there
        Files.createDirectory(target);
        Files.writeString(target.resolve(ResultMark.FILE), "{\"command\": \"assess\", \"files\": [\"c.csv\", \"quietband-result.json\"]}");
        try (ResultDirectory d = ResultDirectory.prepare(target, mark, List.of())) {
            assertThat(d.target().resolve("b.csv")).hasContent("old");
        }
        assertThat(entries()).isEqualTo(1);
    }

    @Test
    void a_strangers_folder_in_the_place_of_a_result_that_stepped_aside_stays_and_so_does_what_was_edited() throws IOException {
        Path target = temp.resolve("r");
        write(target, "b.csv", "old");
        Files.writeString(target.resolve("b.csv"), "mine");
        Files.move(target, dead(1).resolve("old-0"));
        Files.createDirectory(target);
        Files.writeString(target.resolve("notes.txt"), "mine too");
        assertThatThrownBy(() -> write(target, "a.csv", "new")).isInstanceOf(ResultException.class).hasMessageContaining("not a result");
        assertThat(target.resolve("notes.txt")).hasContent("mine too");
        assertThat(temp.resolve("r-edited/b.csv")).hasContent("mine");
        assertThat(entries()).isEqualTo(2);
    }

    @Test
    void what_a_living_run_works_on_is_left_alone() throws IOException {
        Path target = temp.resolve("r");
        try (ResultDirectory first = ResultDirectory.prepare(target, mark, List.of())) {
            first.write("a.csv", w -> w.write("first"));
            write(target, "a.csv", "second");
            assertThat(target.resolve("a.csv")).hasContent("second");
            first.commit();
        }
        assertThat(target.resolve("a.csv")).hasContent("first");
        assertThat(entries()).isEqualTo(1);
    }

    @Test
    void many_writers_at_once_leave_one_whole_result() throws IOException, InterruptedException {
        Path target = temp.resolve("r");
        List<Thread> writers = IntStream.range(0, 8).mapToObj(k -> new Thread(() -> {
            for (int i = 0; i < 20; i++) {
                String text = k + "/" + i;
                try (ResultDirectory d = ResultDirectory.prepare(target, mark, List.of())) {
                    d.write("a.csv", w -> w.write(text));
                    d.write(k + "/b.csv", w -> w.write(text));
                    d.commit();
                }
            }
        })).toList();
        List<Throwable> failed = java.util.Collections.synchronizedList(new java.util.ArrayList<>());
        writers.forEach(w -> w.setUncaughtExceptionHandler((thread, e) -> failed.add(e)));
        writers.forEach(Thread::start);
        for (Thread w : writers) {
            w.join();
        }
        assertThat(failed).isEmpty();
        assertThat(entries()).isEqualTo(1);
        String last = Files.readString(target.resolve("a.csv"));
        assertThat(target.resolve(last.charAt(0) + "/b.csv")).hasContent(last);
        assertThat(ResultMark.whole(target) && ResultMark.onlyListed(target)).isTrue();
    }

    @Test
    void a_file_edited_since_is_kept_beside_the_new_result() throws IOException {
        Path target = temp.resolve("r");
        for (String edit : new String[] {"mine", "mine too"}) {
            try (ResultDirectory d = ResultDirectory.prepare(target, mark, List.of())) {
                d.write("model.yaml", w -> w.write("made"));
                d.write("lots/a.csv", w -> w.write("made"));
                d.commit();
                assertThat(d.kept()).hasSize(edit.equals("mine") ? 0 : 1);
            }
            Files.writeString(target.resolve("model.yaml"), edit);
        }
        write(target, "a.csv", "new");
        assertThat(temp.resolve("r-edited/model.yaml")).hasContent("mine");
        assertThat(temp.resolve("r-edited-2/model.yaml")).hasContent("mine too");
        assertThat(temp.resolve("r-edited-2/lots")).doesNotExist();
        assertThat(target.resolve("a.csv")).hasContent("new");
        assertThat(entries()).isEqualTo(3);
    }

    @Test
    void a_page_edited_later_is_kept_though_its_day_has_no_hash() throws IOException {
        Path target = temp.resolve("r");
        write(target, "report.html", "made");
        write(target, "report.html", "made again");
        assertThat(entries()).isEqualTo(1);
        Files.writeString(target.resolve("report.html"), "mine");
        Files.setLastModifiedTime(target.resolve("report.html"), FileTime.from(Instant.now().plusSeconds(5)));
        write(target, "report.html", "new");
        assertThat(temp.resolve("r-edited/report.html")).hasContent("mine");
        assertThat(target.resolve("report.html")).hasContent("new");
    }

    @Test
    void a_folder_that_holds_what_is_read_or_the_working_folder_is_never_a_result() throws IOException {
        Path target = temp.resolve("r");
        write(target, "model.yaml", "mine");
        Path read = target.resolve("model.yaml");
        Path link = Files.createSymbolicLink(temp.resolve("link"), target);
        for (Path place : List.of(target, link, temp.resolve("x/../r"))) {
            assertThatThrownBy(() -> ResultDirectory.prepare(place, mark, List.of(read))).isInstanceOf(ResultException.class)
                .hasMessageContaining("model.yaml").hasMessageContaining("--out");
        }
        for (Path place : List.of(Path.of(""), Path.of("."), Path.of(".."), Path.of("").toAbsolutePath())) {
            assertThatThrownBy(() -> ResultDirectory.prepare(place, mark, List.of())).isInstanceOf(ResultException.class)
                .hasMessageContaining("working folder").hasMessageContaining("--out");
        }
        assertThat(read).hasContent("mine");
    }

    @Test
    void a_result_whose_files_went_missing_is_not_committed() throws IOException {
        Path target = temp.resolve("r");
        write(target, "a.csv", "old");
        try (ResultDirectory d = ResultDirectory.prepare(target, mark, List.of()); Stream<Path> list = Files.list(temp)) {
            d.write("b.csv", w -> w.write("new"));
            Path working = list.filter(p -> p.getFileName().toString().startsWith(".r.quietband-run-") && Files.isDirectory(p))
                .findFirst().orElseThrow();
            Files.delete(working.resolve("new/b.csv"));
            assertThatThrownBy(d::commit).isInstanceOf(ResultException.class).hasMessageContaining("went missing");
        }
        assertThat(target.resolve("a.csv")).hasContent("old");
        assertThat(entries()).isEqualTo(1);
    }

    @Test
    void a_result_that_ended_is_neither_written_to_nor_committed() throws IOException {
        Path target = temp.resolve("r");
        ResultDirectory d = ResultDirectory.prepare(target, mark, List.of());
        d.close();
        assertThatThrownBy(() -> d.write("a.csv", w -> w.write("late"))).isInstanceOf(ResultException.class)
            .hasMessageContaining("interrupted");
        assertThatThrownBy(d::commit).isInstanceOf(ResultException.class).hasMessageContaining("interrupted");
        assertThat(entries()).isZero();
    }

    @RepeatedTest(100)
    void work_that_goes_on_while_its_result_is_discarded_leaves_nothing() throws IOException, InterruptedException {
        ResultDirectory d = ResultDirectory.prepare(temp.resolve("r"), mark, List.of());
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
        ResultDirectory d = ResultDirectory.prepare(target, mark, List.of());
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

package quietband.window.bench;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.FileSystems;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.PosixFilePermission;
import java.nio.file.attribute.PosixFilePermissions;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Stream;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import quietband.model.edit.ModelFile;
import quietband.model.edit.StartModel;

/** Saving, and what happens when somebody else writes the file. */
class ModelStoreTest {

    @TempDir
    private Path folder;
    private Path model;
    private EditingBench bench;

    @BeforeEach
    void write() throws IOException {
        model = folder.resolve("beacon.yaml");
        Files.writeString(model, StartModel.text());
        bench = EditingBench.of(ModelFile.read(model)).edit("mass", "", "platform.mass", "250 g");
    }

    @Test
    void a_saved_file_holds_the_change_and_all_comments_and_nothing_else_is_left_behind() throws IOException {
        EditingBench saved = ModelStore.save(bench, false);
        assertThat(model).hasContent(StartModel.text().replace("mass: 260 g", "mass: 250 g"));
        assertThat(saved.unsaved()).isFalse();
        assertThat(saved.undo().unsaved()).as("undoing after saving is a change again").isTrue();
        try (Stream<Path> all = Files.list(folder)) {
            assertThat(all).containsExactly(model);
        }
    }

    @Test
    void who_may_read_a_file_stays_as_it_was() throws IOException {
        assumeTrue(FileSystems.getDefault().supportedFileAttributeViews().contains("posix"), "skipped: no permissions to keep here");
        Set<PosixFilePermission> shared = PosixFilePermissions.fromString("rw-rw-r--");
        Files.setPosixFilePermissions(model, shared);
        ModelStore.save(bench, false);
        assertThat(Files.getPosixFilePermissions(model)).isEqualTo(shared);
        Path plain = Files.createFile(folder.resolve("plain"));
        Path written = folder.resolve("new.yaml");
        ModelStore.write(written, new byte[] {1});
        assertThat(Files.getPosixFilePermissions(written)).isEqualTo(Files.getPosixFilePermissions(plain));
    }

    @Test
    void a_file_that_changed_on_disk_is_not_written_over_without_being_told_to() throws IOException {
        Files.writeString(model, StartModel.text() + "# by somebody else\n");
        assertThatThrownBy(() -> ModelStore.save(bench, false)).isInstanceOf(ModelStore.Changed.class)
            .hasMessageContaining("changed on disk");
        assertThat(model).content().endsWith("# by somebody else\n");
        assertThat(ModelStore.save(bench, true).unsaved()).isFalse();
        assertThat(model).content().contains("mass: 250 g");
    }

    @Test
    void reading_again_takes_what_is_on_disk_and_can_be_undone() throws IOException {
        Files.writeString(model, StartModel.text().replace("mass: 260 g", "mass: 300 g"));
        EditingBench read = ModelStore.reload(bench);
        assertThat(read.model().design().platform().orElseThrow().mass()).isEqualTo(0.3);
        assertThat(read.unsaved()).isFalse();
        assertThat(read.undo().model().text()).isEqualTo(bench.model().text());
    }

    @Test
    void a_variant_never_takes_the_place_of_a_file_it_did_not_write() throws IOException {
        Path other = folder.resolve("beacon-light.yaml");
        Files.writeString(other, "somebody's\n");
        EditingBench variant = bench.keep("light", other);
        assertThatThrownBy(() -> ModelStore.save(variant, false)).isInstanceOf(ModelStore.Changed.class)
            .hasMessageContaining("exists already");
        assertThat(other).hasContent("somebody's");
    }

    @Test
    void unsaved_work_is_found_again_and_forgotten_when_it_is_saved() throws IOException {
        Recovery recovery = new Recovery(folder.resolve("state"));
        EditingBench two = bench.keep("light", folder.resolve("beacon-light.yaml")).edit("mass", "", "platform.mass", "200 g");
        recovery.keep(two);
        EditingBench again = EditingBench.of(ModelFile.read(model)).recovered(new Recovery(folder.resolve("state")).kept(model).scene()
            .orElseThrow());
        assertThat(again.variants()).isEqualTo(two.variants());
        assertThat(again.current()).isEqualTo(1);
        assertThat(again.model().text()).isEqualTo(two.model().text());
        assertThat(again.undo().unsaved()).isFalse();
        recovery.keep(EditingBench.of(ModelFile.read(model)));
        assertThat(recovery.kept(model).scene()).isEmpty();
    }

    @ParameterizedTest
    @ValueSource(strings = {"cut", "not base64", "no number", "file first", "bytes", "no variant"})
    void a_damaged_file_of_unsaved_work_is_set_aside_and_no_work(String damage) throws IOException {
        Recovery recovery = new Recovery(folder.resolve("state"));
        recovery.keep(bench.edit("mass", "", "platform.mass", "200 g"));
        Path kept = only();
        String text = Files.readString(kept);
        String[] lines = text.split("\n");
        byte[] damaged = (switch (damage) {
            case "cut" -> text.substring(0, text.length() / 2);
            case "not base64" -> lines[0] + "\n0\nvariant\t!!\t!!\t!!\nend\n";
            case "no number" -> text.replace("\n0\n", "\nx\n");
            case "file first" -> lines[0] + "\n0\nfile\tYQ==\tYQ==\nend\n";
            case "no variant" -> lines[0] + "\n0\nend\nend\n";
            default -> "\u00ff\u00fe";
        }).getBytes(StandardCharsets.ISO_8859_1);
        Files.write(kept, damaged);
        Recovery.Kept found = recovery.kept(model);
        assertThat(found.scene()).isEmpty();
        assertThat(found.setAside()).contains(only());
        assertThat(only().toString()).endsWith(".damaged");
        assertThat(only()).hasBinaryContent(damaged);
        assertThat(recovery.kept(model)).isEqualTo(new Recovery.Kept(Optional.empty(), Optional.empty()));
    }

    @Test
    void unsaved_work_is_read_by_its_owner_only() throws IOException {
        assumeTrue(folder.getFileSystem().supportedFileAttributeViews().contains("posix"));
        new Recovery(folder.resolve("state")).keep(bench.edit("mass", "", "platform.mass", "200 g"));
        assertThat(PosixFilePermissions.toString(Files.getPosixFilePermissions(only()))).isEqualTo("rw-------");
    }

    private Path only() throws IOException {
        try (Stream<Path> all = Files.list(folder.resolve("state"))) {
            return all.reduce((a, b) -> {
                throw new IllegalStateException("two files");
            }).orElseThrow();
        }
    }
}

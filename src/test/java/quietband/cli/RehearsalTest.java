package quietband.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** What the build runs to learn which classes are needed does run: the build itself would go on without. */
class RehearsalTest {

    @TempDir
    private Path results;

    @Test
    void every_command_of_it_leaves_its_result() {
        Rehearsal.main(new String[] {"models/ridge-relay.yaml", results.toString()});
        assertThat(results.resolve("assess/report.html")).isNotEmptyFile();
        assertThat(results.resolve("tolerance/units.csv")).isNotEmptyFile();
        assertThat(results.resolve("compare/report.html")).isNotEmptyFile();
    }
}

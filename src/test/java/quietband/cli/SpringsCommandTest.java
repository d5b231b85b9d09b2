package quietband.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import quietband.model.Axis;
import quietband.model.Vec;
import quietband.model.edit.ModelFile;
import quietband.response.ModeProperties;
import quietband.response.verdict.Assessor;

/** The command springs as a person calls it. */
class SpringsCommandTest {

    @TempDir
    private Path folder;

    /** Corners by the words of assess: the mode in whose energy the axis has the largest share. */
    private static Vec corners(Path model) {
        List<ModeProperties> modes = Assessor.assess(ModelFile.read(model).design()).modes();
        Vec corners = Vec.ZERO;
        for (Axis axis : Axis.ALL) {
            ModeProperties best = modes.get(0);
            for (ModeProperties m : modes) {
                best = m.energyShares()[axis.ordinal()] > best.energyShares()[axis.ordinal()] ? m : best;
            }
            corners = corners.with(axis, best.frequencyHz());
        }
        return corners;
    }

    @ParameterizedTest
    @CsvSource(delimiter = '|', value = {
        "ridge-relay|90 Hz|90|90|90",
        "ridge-relay|x=80 Hz, y=80 Hz, z=95 Hz|80|80|95",
        "trial-a|101 Hz|101|101|101",
        "trial-a-cured|x=75 Hz, y=110 Hz, z=87 Hz|75|110|87",
        "rough-ride|140 Hz|140|140|140",
        "platform-only|63 Hz|63|63|63"})
    void assess_finds_the_wanted_corner_of_every_axis_within_1_percent_in_the_written_model(String name, String corner,
    double x, double y,
                                                                                           double z) {
        Run run = Run.of("springs", "models/" + name + ".yaml", "--natural-frequency", corner, "--out", folder.resolve("s"));
        assertThat(run.status()).as(run.err()).isZero();
        Vec found = corners(folder.resolve("s/model.yaml"));
        // what was asked for: 1 % after rounding to parts
        assertThat(found.x()).isBetween(0.99 * x, 1.01 * x);
        assertThat(found.y()).isBetween(0.99 * y, 1.01 * y);
        assertThat(found.z()).isBetween(0.99 * z, 1.01 * z);
    }

    @Test
    void the_summary_has_the_names_that_others_rely_on_and_the_folder_every_file() throws IOException {
        Run run = Run.of("springs", "models/ridge-relay.yaml", "--natural-frequency", "90 Hz", "--out", folder.resolve("s"),
            "--format", "json");
        assertThat(run.status()).as(run.err()).isZero();
        String json = Files.readString(folder.resolve("s/summary.json"));
        assertThat(run.out()).isEqualTo(json);
        assertThat(json).contains("\"natural_frequency_hz\"", "\"surge_hz\"", "\"sag_mm\"", "\"random_3sigma_mm\"",
            "\"sustained_mm\"", "\"shock_mm\"");
        assertThat(folder.resolve("s"))
            .isDirectoryContaining("glob:**/{model.yaml,springs.csv,sketch.svg,report.html,chart-travel.svg}");
        assertThat(Files.readString(folder.resolve("s/model.yaml"))).contains("# surge at 2.6 kHz and above");
    }

    @ParameterizedTest
    @CsvSource(delimiter = '|', value = {
        "bolted-down|--natural-frequency|90 Hz|no platform",
        "ridge-relay|--natural-frequency|90|Hz",
        "ridge-relay|--natural-frequency|w=90 Hz|names no axis",
        "ridge-relay|--natural-frequency|-5 Hz|not above 0",
        "ridge-relay|--natural-frequency|4 kHz|standing wave",
        "ridge-relay|--reduction|20 dB|20 dB at 300 Hz",
        "ridge-relay|--damping|0.2|nothing is wanted"})
    void what_cannot_be_worked_on_gets_one_line_and_status_2(String name, String option, String value, String told) {
        Run run = Run.of("springs", "models/" + name + ".yaml", option, value, "--out", folder.resolve("s"));
        assertThat(run.status()).isEqualTo(2);
        assertThat(run.err()).contains(told).doesNotContain("\tat ");
        assertThat(folder.resolve("s")).doesNotExist();
    }

    @ParameterizedTest
    @CsvSource(delimiter = '|', value = {
        "--hold|--damping|0.2|leave --damping out",
        "--hold|--natural-frequency|90 Hz|more than one thing",
        "--keep-places|--measured|71.2, 69.8 Hz|three are due",
        "--hold|--measured|71.2, 69.8, 84.0 Hz|leave --hold out",
        "--keep-places|--parts|catalogue|nothing is wanted",
        "--hold|--catalogue|no-such.csv|no such file"})
    void options_that_do_not_go_together_are_refused(String flag, String option, String value, String told) {
        Run run = Run.of("springs", "models/ridge-relay.yaml", flag, option, value, "--out", folder.resolve("s"));
        assertThat(run.status()).isEqualTo(2);
        assertThat(run.err()).contains(told).doesNotContain("\tat ");
        assertThat(folder.resolve("s")).doesNotExist();
    }
}

package quietband.cli;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import quietband.model.Design;
import quietband.model.Vec;
import quietband.model.edit.ModelFile;

/** The command orient as a person calls it. */
class OrientCommandTest {

    @TempDir
    private Path folder;

    @Test
    void a_bolted_down_resonator_is_turned_until_its_axes_are_equal() throws IOException {
        Path model = folder.resolve("m.yaml");
        Files.writeString(model, "quietband: 1\noscillator:\n  carrier: 10 MHz\n  resonator:\n"
            + "    sensitivity: {x: 0.3 ppb/g, y: 0.4 ppb/g, z: 1.2 ppb/g}   # measured\n");
        Run run = Run.of("orient", model, "--out", folder.resolve("out"));
        assertThat(run.status()).as(run.err()).isZero();
        ModelFile changed = ModelFile.read(folder.resolve("out/model.yaml"));
        Vec g = changed.design().oscillator().resonator().mountedSensitivityPerG();
        for (int i = 0; i < 3; i++) {
            // |G| = 1.3 ppb/g
            assertThat(Math.abs(g.get(i))).isCloseTo(1.3e-9 / Math.sqrt(3), within(1e-15));
        }
        assertThat(changed.text()).contains("# measured");
        assertThat(run.out()).contains("0.7506 ppb/g");
    }

    @Test
    void supports_are_compared_and_each_is_a_model_that_assess_reads() {
        Run run = Run.of("orient", "models/ridge-relay.yaml", "--supports", "models/supports.csv", "--support", "three-point", "--out",
            folder.resolve("out"));
        assertThat(run.status()).as(run.err()).isZero();
        assertThat(run.out()).contains("two-point", "720 Hz", "invented", "resonates within the band");
        Design design = ModelFile.read(folder.resolve("out/model.yaml")).design();
        assertThat(design.oscillator().resonator().support()).isEqualTo("three-point");
        assertThat(design.oscillator().resonator().supportResonance().frequencyHz().z()).isEqualTo(2700);
        // 1.4 times the four-point row's, which the model was measured on
        assertThat(design.oscillator().resonator().sensitivityPerG().x()).isCloseTo(1.4 * 0.35e-9, within(1e-20));
        Run soft = Run.of("assess", folder.resolve("out/supports/two-point/model.yaml"), "--out", folder.resolve("a"), "--format", "json");
        assertThat(soft.status()).as(soft.err()).isZero();
        // z resonates at 720 Hz with a Q of 70: bare, the worst point is there
        assertThat(soft.out()).contains("\"frequency_hz\" : 719.");
    }

    @Test
    void what_cannot_be_turned_is_told() throws IOException {
        Path model = folder.resolve("m.yaml");
        Files.writeString(model, "quietband: 1\noscillator:\n  carrier: 10 MHz\n  resonator:\n    sensitivity: 0 ppb/g\n");
        assertThat(Run.of("orient", model).err()).contains("sensitivity is 0");
        assertThat(Run.of("orient", "models/bolted-down.yaml", "--support", "x", "--supports", "models/supports.csv").err())
            .contains("four-point");
        Files.writeString(model, "quietband: 1\noscillator:\n  carrier: 10 MHz\n  resonator:\n    sensitivity: 1 ppb/g\n");
        Run noise = Run.of("orient", model, "--goal", "noise");
        assertThat(noise.status()).isEqualTo(2);
        assertThat(noise.err()).contains("vibration.random");
    }
}

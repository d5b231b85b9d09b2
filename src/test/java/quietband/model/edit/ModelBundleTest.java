package quietband.model.edit;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import quietband.model.Design;

class ModelBundleTest {

    @TempDir
    Path directory;

    private void written(ModelBundle bundle, Path to) throws IOException {
        Files.createDirectories(to);
        Files.writeString(to.resolve("model.yaml"), bundle.text());
        for (Map.Entry<String, byte[]> file : bundle.files().entrySet()) {
            Files.createDirectories(to.resolve(file.getKey()).getParent());
            Files.write(to.resolve(file.getKey()), file.getValue());
        }
    }

    @Test
    void referencesInsideTheDirectoryStay() throws IOException {
        ModelFile file = ModelFile.read(ModelFileTest.FULL);
        assertThat(file.bundle().text()).isEqualTo(file.text());
        written(file.bundle(), directory);
        assertThat(ModelFile.read(directory.resolve("model.yaml")).hash()).isEqualTo(file.hash());
    }

    @Test
    void referencesThatLeadOutAreBroughtIn() throws IOException {
        Path inner = Files.createDirectories(directory.resolve("a/b"));
        Files.copy(ModelFileTest.GOOD.resolve("profiles/rotor-cabin.csv"), directory.resolve("a/p.csv"));
        Path absolute = Files.copy(ModelFileTest.GOOD.resolve("ridge-relay-filter.csv"), directory.resolve("f.csv"));
        ModelFile file = ModelFile.parse(inner.resolve("m.yaml"), """
            quietband: 1
            oscillator: {carrier: 10 MHz, resonator: {sensitivity: 1 ppb/g}}
            cancellation: {sensor: {place: housing}, path: {sample_rate: 100 kHz, filter: %s}}
            vibration: {random: {x: {file: ../p.csv}, y: {file: &p ../../a/p.csv}, z: {file: *p}}}
            """.formatted(absolute.toAbsolutePath()));
        assertThat(file.bundle().files()).containsOnlyKeys("files/f.csv", "files/p.csv", "files/2-p.csv");
        written(file.bundle(), directory.resolve("out"));
        Design again = ModelFile.read(directory.resolve("out/model.yaml")).design();
        assertThat(again.vibration().random()).allSatisfy(c -> assertThat(c.orElseThrow().at(20)).isEqualTo(0.004));
    }
}

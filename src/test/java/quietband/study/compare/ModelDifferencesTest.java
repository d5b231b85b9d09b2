package quietband.study.compare;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import quietband.model.Design;
import quietband.model.edit.ModelFile;

/** A change of one value is told by its path, and nothing else is. */
class ModelDifferencesTest {

    private static final Path MAIN = Path.of("models/ridge-relay.yaml");

    private static Design changed(String from, String to) throws IOException {
        String text = Files.readString(MAIN);
        assertThat(text).contains(from);
        return ModelFile.parse(MAIN, text.replace(from, to)).design();
    }

    @ParameterizedTest
    @CsvSource(delimiter = '|', value = {
        "latency: 8 us | latency: 9 us | cancellation.path.latency",
        "stiffness: {x: 16 N/mm, y: 16 N/mm | stiffness: {x: 16 N/mm, y: 16.5 N/mm | platform.springs.corners.stiffness.y",
        "damping: {x: 4 N*s/m, y: 4 N*s/m, z: 4 N*s/m} | damping: 5 N*s/m | platform.springs.corners.damping",
        "at: [{x: 24 mm, y: 24 mm, z: 0 mm} | at: [{x: 25 mm, y: 24 mm, z: 0 mm} | platform.springs.corners[1].at.x",
        "cross_axis: 0.5 % | cross_axis: 0.6 % | cancellation.sensor.cross_axis",
        "mass: 210 g | mass: 211 g | platform.mass",
        "title: Ridge relay | title: Ridge | title",
        "place: platform | place: housing | cancellation.sensor.place",
        "taps: [2.3, -1.3] | taps: [2.4, -1.4] | cancellation.path.taps",
        "frequency: 68 Hz | frequency: 69 Hz | vibration.tones.blade passing.frequency",
        "scale: 0 dB | scale: 1 dB | vibration.random",
        "by: axis | by: vector | requirement.by",
        "coefficient: 0.5 | coefficient: 0.4 | correlations"})
    void one_value_changed_names_its_path_and_no_other(String from, String to, String path) throws IOException {
        List<ModelDifference> found = ModelDifferences.between(changed(from, from), changed(from, to));
        assertThat(found).extracting(ModelDifference::of).hasSize(1).allSatisfy(p -> assertThat(p).startsWith(path));
    }

    @Test
    void the_same_file_has_no_difference() throws IOException {
        assertThat(ModelDifferences.between(changed("by: axis", "by: axis"), changed("by: axis", "by: axis"))).isEmpty();
    }

    @Test
    void a_measure_left_out_is_one_difference() throws IOException {
        Design main = ModelFile.read(MAIN).design();
        Design without = ModelFile.read(Path.of("models/correction-only.yaml")).design();
        assertThat(ModelDifferences.between(main, without)).extracting(ModelDifference::of)
            .contains("platform", "title").noneMatch(p -> p.startsWith("platform."));
    }
}

package quietband.model.edit;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.function.Predicate;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import quietband.model.quantity.BadPathException;
import quietband.model.text.ModelException;

/** What a file holds and what it leaves out, as an editor lists it. */
class FileValuesTest {

    /** Keys that name a file, or are refused beside what stands there whatever their value. */
    private static final Set<String> NOT_ALONE = Set.of("filter", "file", "points", "correlations");

    @ParameterizedTest
    @ValueSource(strings = {"ridge-relay", "bolted-down", "correction-only"})
    void the_example_of_every_key_that_is_left_out_does_there(String name) {
        ModelFile file = ModelFile.read(Path.of("models", name + ".yaml"));
        List<String> refused = new ArrayList<>();
        Predicate<FileValue> scatter = v -> v.block().startsWith("tolerances.") || v.block().startsWith("conditions.");
        for (FileValue v : file.values()) {
            if (!v.given() && !NOT_ALONE.contains(v.key()) && !scatter.test(v)) {
                try {
                    ModelFile with = file.withValue(v.path(), v.yaml(v.example()));
                    if (with.without(v.path()).values().stream().noneMatch(w -> w.path().equals(v.path()) && !w.given())) {
                        refused.add(v.path() + " is not left out again");
                    }
                } catch (ModelException | BadPathException e) {
                    refused.add(v.path() + ": " + v.example() + ": " + e.getMessage());
                }
            }
        }
        assertThat(refused).isEmpty();
    }
}

package quietband.model.format;

import static org.assertj.core.api.Assertions.assertThat;

import com.networknt.schema.Error;
import com.networknt.schema.InputFormat;
import com.networknt.schema.Schema;
import com.networknt.schema.SchemaRegistry;
import com.networknt.schema.SpecificationVersion;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import org.snakeyaml.engine.v2.api.Load;
import org.snakeyaml.engine.v2.api.LoadSettings;
import quietband.model.edit.ModelFile;
import quietband.model.edit.ModelFileTest;
import quietband.model.text.BadModelTest;
import tools.jackson.databind.ObjectMapper;

public class ModelSchemaTest {

    private static final Schema SCHEMA = SchemaRegistry.withDefaultDialect(SpecificationVersion.DRAFT_2020_12)
        .getSchema(ModelSchema.text());

    public static Stream<Path> goodFiles() throws IOException {
        List<Path> all = new ArrayList<>(List.of(Path.of("src/main/resources/quietband/model/edit/start.yaml")));
        for (Path directory : List.of(ModelFileTest.GOOD, Path.of("models"))) {
            if (Files.isDirectory(directory)) {
                try (Stream<Path> files = Files.list(directory)) {
                    files.filter(f -> f.toString().endsWith(".yaml")).sorted().forEach(all::add);
                }
            }
        }
        return all.stream();
    }

    private static List<Error> errors(Path file) throws IOException {
        Object yaml = new Load(LoadSettings.builder().build()).loadFromString(Files.readString(file));
        return SCHEMA.validate(new ObjectMapper().writeValueAsString(yaml), InputFormat.JSON);
    }

    @ParameterizedTest
    @MethodSource("goodFiles")
    void everyGoodModelReadsAndIsAcceptedBySchema(Path file) throws IOException {
        assertThat(ModelFile.read(file).design()).isNotNull();
        assertThat(errors(file)).isEmpty();
    }

    static Stream<String> structurallyBad() throws IOException {
        return BadModelTest.badFiles().filter(name -> text(name).contains("# refused by the schema too: yes"));
    }

    private static String text(String name) {
        try {
            return Files.readString(BadModelTest.BAD.resolve(name));
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    @ParameterizedTest
    @MethodSource("structurallyBad")
    void everyModelThatIsBadByStructureIsRefusedBySchema(String name) throws IOException {
        assertThat(errors(BadModelTest.BAD.resolve(name))).isNotEmpty();
    }

    @Test
    void mostBadFilesAreBadByStructure() throws IOException {
        assertThat(structurallyBad().count()).isGreaterThanOrEqualTo(30);
    }

    @Test
    void theSchemaIsTheSameEveryTime() {
        assertThat(ModelSchema.text()).isEqualTo(ModelSchema.text()).contains("\"$schema\"");
    }
}

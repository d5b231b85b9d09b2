package quietband.model.text;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.catchThrowableOfType;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import quietband.model.edit.ModelFile;

/** Every bad model file says in its first lines where its problems are and what must be said of them. */
public class BadModelTest {

    public static final Path BAD = Path.of("src/test/resources/quietband/model/bad");

    public static Stream<String> badFiles() throws IOException {
        try (Stream<Path> files = Files.list(BAD)) {
            return files.map(f -> f.getFileName().toString()).filter(n -> n.endsWith(".yaml")).sorted().toList()
                .stream();
        }
    }

    static List<FileProblem> problems(String name) {
        ModelException e = catchThrowableOfType(ModelException.class, () -> ModelFile.read(BAD.resolve(name)));
        assertThat(e).as("%s is refused", name).isNotNull();
        return e.problems();
    }

    @ParameterizedTest
    @MethodSource("badFiles")
    void isRefusedWithPlacePathFindingAndAdvice(String name) throws IOException {
        List<String> expected = Files.readAllLines(BAD.resolve(name)).stream().filter(l -> l.startsWith("# expect: "))
            .map(l -> l.substring("# expect: ".length())).toList();
        List<FileProblem> problems = problems(name);
        for (String line : expected) {
            String[] parts = line.split(" \\| ", -1);
            assertThat(problems).as(line).anySatisfy(p -> {
                assertThat(p.line() + ":" + p.column()).isEqualTo(parts[0]);
                assertThat(p.path()).isEqualTo(parts[1]);
                for (int i = 2; i < parts.length; i++) {
                    assertThat(p.toString()).contains(parts[i]);
                }
            });
        }
        if (!expected.isEmpty()) {
            assertThat(problems.size()).as(problems.toString()).isLessThanOrEqualTo(expected.size() + 1);
        }
    }

    /** Each former name has one message, with nothing that follows from it: the rest is read as if it were right. */
    @Test
    void aFormerNameIsRefusedOnceWithTheNameItHasNow() {
        assertThat(problems("former-names.yaml")).hasSize(7).allSatisfy(p -> assertThat(p.toString()).contains("it is called '"));
    }

    @Test
    void thereAreThirtyKindsAtLeast() throws IOException {
        assertThat(badFiles().count()).isGreaterThanOrEqualTo(30);
    }

    @Test
    void aProfileOutOfOrderIsToldWithItsLine() {
        assertThat(problems("profile-out-of-order.yaml")).extracting(FileProblem::toString).containsExactly(
            BAD + "/falling.csv:3: frequency_hz: '10' does not rise; "
                + "sort the points from above 0, one for each frequency",
            BAD + "/falling.csv:4: density_g2_per_hz: 'soft' does not start with a number; write a plain number");
    }

    @Test
    void aLotWithAnotherHeaderIsRefused() {
        assertThat(problems("lot-header.yaml")).extracting(FileProblem::toString).containsExactly(
            BAD + "/lot.csv:1: header is 'serial,x,y,z'; expected serial,x_ppb_per_g,y_ppb_per_g,z_ppb_per_g");
    }
}

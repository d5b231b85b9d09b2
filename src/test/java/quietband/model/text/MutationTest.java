package quietband.model.text;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;
import quietband.model.Design;
import quietband.model.edit.ModelFile;
import quietband.model.format.ModelSchemaTest;

/** Good models damaged at random give a design or told problems, never anything else. */
class MutationTest {

    private static final String[] TOKENS = {"{", "}", "[", "]", ": ", ", ", "- ", "\n", "  ", "\t", "&a ", "*a", "!!x ",
        "null", "~", "9", "-", "1e400", ".nan", "1e-330", "0", "#", "'", "\"", "|", ">", "%", "\u0000", "\ufeff",
        "\ud83d\ude00", "---\n", "...\n", "<<: ", "? ", "x", "y", "platform.mass", "g", " N/m", "\r\n", "\u0085"};

    private String mutated(String text, Random random) {
        StringBuilder out = new StringBuilder(text);
        for (int i = random.nextInt(3); i >= 0; i--) {
            int at = random.nextInt(out.length());
            int end = Math.min(out.length(), at + 1 + random.nextInt(random.nextInt(4) == 0 ? 60 : 3));
            switch (random.nextInt(6)) {
                case 0 -> out.deleteCharAt(at);
                case 1 -> out.setCharAt(at, (char) (' ' + random.nextInt(95)));
                case 2 -> out.insert(at, TOKENS[random.nextInt(TOKENS.length)]);
                case 3 -> out.replace(at, end, TOKENS[random.nextInt(TOKENS.length)]);
                case 4 -> out.insert(random.nextInt(out.length()), out.substring(at, end));
                default -> swapWords(out, at, random);
            }
        }
        return out.toString();
    }

    private void swapWords(StringBuilder out, int at, Random random) {
        List<String> words = new ArrayList<>(List.of(out.toString().split(" ")));
        int a = Math.min(words.size() - 1, at % words.size());
        int b = random.nextInt(words.size());
        String first = words.get(a);
        words.set(a, words.get(b));
        words.set(b, first);
        out.setLength(0);
        out.append(String.join(" ", words));
    }

    @Test
    void twoThousandRandomMutationsNeverEscape() throws IOException {
        List<Path> models = ModelSchemaTest.goodFiles().toList();
        int good = 0;
        for (int seed = 0; seed < 2000; seed++) {
            Random random = new Random(seed);
            Path model = models.get(seed % models.size());
            String text = mutated(Files.readString(model), random);
            try {
                Design design = ModelFile.parse(model, text).design();
                assertThat(design.quantities().outOfRange()).isEmpty();
                good++;
            } catch (ModelException e) {
                assertThat(e.problems()).isNotEmpty();
                assertThat(e.problems()).allSatisfy(p -> assertThat(p.toString()).doesNotContain("\n", "Exception"));
            } catch (RuntimeException | StackOverflowError e) {
                throw new AssertionError("seed " + seed + " on " + model, e);
            }
        }
        // both outcomes must be there, or the mutations are too weak or too strong to say anything
        assertThat(good).isBetween(100, 1900);
    }
}

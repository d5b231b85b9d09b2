package quietband.report.assess;

import com.fasterxml.jackson.core.JacksonException;
import com.fasterxml.jackson.core.JsonFactory;
import com.fasterxml.jackson.core.JsonParser;
import com.fasterxml.jackson.core.JsonToken;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayDeque;
import java.util.Deque;
import java.util.HashMap;
import java.util.Locale;
import java.util.Map;

/** What a result of {@code tolerance} beside this one says of the share of good units, when it is of the same model. */
final class YieldLine {

    private static final long LARGEST = 1 << 22;
    private static final String NONE = "Yield not computed: no result of tolerance for this model hash stands beside this one.";

    private YieldLine() { }

    /**
     * The sentence.
     *
     * @param summary   {@code summary.json} of the result of tolerance; need not exist
     * @param modelHash of the model at hand
     */
    static String of(Path summary, String modelHash) {
        Map<String, String> found = new HashMap<>();
        try {
            if (!Files.isRegularFile(summary) || Files.size(summary) > LARGEST) {
                return NONE;
            }
            try (JsonParser parser = new JsonFactory().createParser(summary.toFile())) {
                read(parser, found);
            }
        } catch (JacksonException e) {
            return NONE;
        } catch (IOException e) {
            return "Yield not computed: " + summary.getFileName() + " of tolerance cannot be read.";
        }
        return modelHash.equals(found.get("model_hash")) ? sentence(found) : NONE;
    }

    /** Scalars by path, keys joined with dots; what stands in arrays is left out. */
    private static void read(JsonParser parser, Map<String, String> found) throws IOException {
        Deque<String> keys = new ArrayDeque<>();
        for (JsonToken token = parser.nextToken(); token != null; token = parser.nextToken()) {
            if (token == JsonToken.START_ARRAY) {
                parser.skipChildren();
            } else if (token == JsonToken.START_OBJECT) {
                keys.addLast(parser.currentName() == null ? "" : parser.currentName() + ".");
            } else if (token == JsonToken.END_OBJECT) {
                keys.pollLast();
            } else if (token.isScalarValue()) {
                found.put(String.join("", keys) + parser.currentName(), parser.getText());
            }
        }
    }

    private static String sentence(Map<String, String> found) {
        try {
            return String.format(Locale.ROOT, "%.1f %% of units good (%.1f to %.1f %% at %.0f %% confidence, %s units).",
                percent(found, "yield.estimate"), percent(found, "yield.low"), percent(found, "yield.high"),
                percent(found, "yield.confidence"), found.getOrDefault("units", "?"));
        } catch (NumberFormatException e) {
            return NONE;
        }
    }

    private static double percent(Map<String, String> found, String key) {
        return 100 * Double.parseDouble(found.getOrDefault(key, "none"));
    }
}

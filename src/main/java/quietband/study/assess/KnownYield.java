package quietband.study.assess;

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
import java.util.Map;
import java.util.Optional;

/**
 * What a result of {@code tolerance} says of the share of good units.
 *
 * @param estimate   share, 0 to 1
 * @param low        lower end of its interval
 * @param high       upper end
 * @param confidence of the interval, 0 to 1
 * @param units      how many were drawn, as the result writes it
 * @param readable   whether the result could be read; without that nothing else is known
 */
public record KnownYield(double estimate, double low, double high, double confidence, String units, boolean readable) {

    private static final long LARGEST = 1 << 22;
    private static final KnownYield UNREADABLE = new KnownYield(Double.NaN, Double.NaN, Double.NaN, Double.NaN, "", false);

    /**
     * Reads it; empty when there is none for this model.
     *
     * @param summary   {@code summary.json} of the result of tolerance; need not exist
     * @param modelHash of the model at hand
     */
    static Optional<KnownYield> of(Path summary, String modelHash) {
        Map<String, String> found = new HashMap<>();
        try {
            if (!Files.isRegularFile(summary) || Files.size(summary) > LARGEST) {
                return Optional.empty();
            }
            try (JsonParser parser = new JsonFactory().createParser(summary.toFile())) {
                read(parser, found);
            }
            return modelHash.equals(found.get("model_hash")) ? Optional.of(new KnownYield(number(found, "estimate"), number(found, "low"),
                number(found, "high"), number(found, "confidence"), found.getOrDefault("units", "?"), true)) : Optional.empty();
        } catch (JacksonException | NumberFormatException e) {
            return Optional.empty();
        } catch (IOException e) {
            return Optional.of(UNREADABLE);
        }
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

    private static double number(Map<String, String> found, String key) {
        return Double.parseDouble(found.getOrDefault("yield." + key, "none"));
    }
}

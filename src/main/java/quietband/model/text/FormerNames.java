package quietband.model.text;

import java.util.Collection;
import java.util.Map;
import java.util.Optional;

/** Keys and words that a model file used to have, each refused with the name it has now. */
public final class FormerNames {

    private static final Map<String, String> NOW = Map.of("quiet_phase_noise", "static_phase_noise", "turn", "orientation",
        "held", "bonded", "seated", "compression_only", "shape", "distribution", "limits", "truncate_at", "once", "unit");

    private FormerNames() { }

    /** The name that stands in place of a former one, where it is among the known ones and the former one is not. */
    public static Optional<String> now(String word, Collection<String> known) {
        return known.contains(word) ? Optional.empty() : Optional.ofNullable(NOW.get(word)).filter(known::contains);
    }

    /** A path with every former key replaced. */
    public static String path(String path) {
        String now = path;
        for (Map.Entry<String, String> each : NOW.entrySet()) {
            now = now.replaceAll("\\b" + each.getKey() + "\\b", each.getValue());
        }
        return now;
    }
}

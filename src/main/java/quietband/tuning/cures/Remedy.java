package quietband.tuning.cures;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import quietband.model.Design;

/**
 * Something about a design that can be moved towards its ideal, a number or some together.
 *
 * @param key    name in files
 * @param words  name for people
 * @param design as it is
 * @param slides its numbers, at least one
 */
record Remedy(String key, String words, Design design, List<PartialChange> slides) {

    Remedy {
        slides = List.copyOf(slides);
    }

    /** Both moved together. */
    Remedy with(Remedy other) {
        List<PartialChange> both = new ArrayList<>(slides);
        both.addAll(other.slides);
        return new Remedy(key + "+" + other.key, words + " and " + other.words, design, both);
    }

    /** The design at a share of the way, 0 (as it is) to 1 (ideal). */
    Design at(double share) {
        double[] values = design.quantities().values();
        slides.forEach(s -> values[s.slot()] = s.at(share));
        return design.with(design.quantities().with(values));
    }

    /** What to write into the model file for a share of the way, with the shortest paths that say it. */
    List<ValueChange> settings(double share) {
        Map<Integer, PartialChange> moved = new LinkedHashMap<>();
        slides.stream().filter(s -> s.now() != s.ideal()).forEach(s -> moved.put(s.slot(), s));
        return ShortestPaths.of(design.quantities(), moved.values().stream()
            .map(s -> new ShortestPaths.Change(s.slot(), s.now(), s.at(share))).toList());
    }
}

package quietband.tuning;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.function.Function;
import quietband.model.Design;
import quietband.model.Slot;

/**
 * Something about a design that can be moved towards its ideal, a number or some together.
 *
 * @param key    name in files
 * @param words  name for people
 * @param design as it is
 * @param slides its numbers, at least one
 */
record Remedy(String key, String words, Design design, List<Slide> slides) {

    private static final List<Function<Slot, String>> NAMES = List.of(Slot::quantity,
        s -> withoutAxis(s, withoutPlace(s.path())), s -> withoutPlace(s.path()), Slot::path);

    Remedy {
        slides = List.copyOf(slides);
    }

    /** Both moved together. */
    Remedy with(Remedy other) {
        List<Slide> both = new ArrayList<>(slides);
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
    List<Setting> settings(double share) {
        Map<Integer, Slide> moved = new LinkedHashMap<>();
        slides.stream().filter(s -> s.now() != s.ideal()).forEach(s -> moved.put(s.slot(), s));
        Map<String, List<Slide>> byQuantity = new LinkedHashMap<>();
        moved.values().forEach(s -> byQuantity.computeIfAbsent(slot(s).quantity(), k -> new ArrayList<>()).add(s));
        List<Setting> settings = new ArrayList<>();
        byQuantity.values().forEach(group -> settings.addAll(shortest(group, share)));
        return settings;
    }

    private Slot slot(Slide slide) {
        return design.quantities().slot(slide.slot());
    }

    private List<Setting> shortest(List<Slide> group, double share) {
        for (Function<Slot, String> name : NAMES) {
            Map<String, Slide> first = new LinkedHashMap<>();
            Set<String> unequal = new HashSet<>();
            Map<String, Integer> count = new LinkedHashMap<>();
            for (Slide s : group) {
                Slide other = first.putIfAbsent(name.apply(slot(s)), s);
                if (other != null && (other.now() != s.now() || other.at(share) != s.at(share))) {
                    unequal.add(name.apply(slot(s)));
                }
                count.merge(name.apply(slot(s)), 1, Integer::sum);
            }
            if (unequal.isEmpty() && first.keySet().stream().allMatch(k -> named(name, k) == count.get(k))) {
                return first.entrySet().stream().map(e -> new Setting(e.getKey(), slot(e.getValue()).dimension(),
                    e.getValue().now(), e.getValue().at(share))).toList();
            }
        }
        throw new IllegalStateException("every number has a path of its own");
    }

    /** How many numbers of the design a name stands for. */
    private long named(Function<Slot, String> name, String key) {
        return design.quantities().slots().stream().filter(s -> !s.absent() && name.apply(s).equals(key)).count();
    }

    private static String withoutPlace(String path) {
        return path.replaceAll("\\[[0-9]+]", "");
    }

    private static String withoutAxis(Slot slot, String path) {
        return slot.axis() < 0 ? path : path.substring(0, path.lastIndexOf('.'));
    }
}

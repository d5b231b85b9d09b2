package quietband.tuning.cures;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.function.Function;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import quietband.model.quantity.NumberSlot;
import quietband.model.quantity.Quantities;

/** Names changed numbers of a design with the shortest paths that say exactly which: a group of springs, an axis, a place. */
public final class ShortestPaths {

    private static final List<Function<NumberSlot, String>> NAMES = List.of(
        s -> s.group().isEmpty() ? s.quantity() : withoutAxis(s, withoutPlace(s.path())),
        s -> withoutAxis(s, withoutPlace(s.path())), s -> withoutPlace(s.path()), s -> withoutAxis(s, s.path()), NumberSlot::path);

    private static final Pattern PLACE = Pattern.compile("\\[[0-9]+]");

    private ShortestPaths() { }

    /** One changed number: its slot, as it was, as it is to be. */
    public record Change(int slot, double now, double then) { }

    /**
     * Settings that together make all the changes and no other.
     *
     * @param quantities of the design that is changed
     */
    public static List<ValueChange> of(Quantities quantities, List<Change> changes) {
        Map<String, List<Change>> byQuantity = changes.stream().collect(Collectors.groupingBy(
            c -> quantities.slot(c.slot()).quantity(), LinkedHashMap::new, Collectors.toList()));
        List<ValueChange> settings = new ArrayList<>();
        byQuantity.values().forEach(group -> settings.addAll(shortest(quantities, group)));
        return settings;
    }

    private static List<ValueChange> shortest(Quantities quantities, List<Change> group) {
        for (Function<NumberSlot, String> name : NAMES) {
            Map<String, List<Change>> named = group.stream().collect(Collectors.groupingBy(
                c -> name.apply(quantities.slot(c.slot())), LinkedHashMap::new, Collectors.toList()));
            boolean says = named.entrySet().stream().allMatch(e -> alike(e.getValue())
                && count(quantities, name, e.getKey()) == e.getValue().size());
            if (says) {
                return named.entrySet().stream().map(e -> new ValueChange(e.getKey(),
                    quantities.slot(e.getValue().get(0).slot()).dimension(), e.getValue().get(0).now(),
                    e.getValue().get(0).then())).toList();
            }
        }
        throw new IllegalStateException("every number has a path of its own");
    }

    private static boolean alike(List<Change> changes) {
        Change first = changes.get(0);
        return changes.stream().allMatch(c -> c.now() == first.now() && c.then() == first.then());
    }

    /** How many numbers of the design a name stands for. */
    private static long count(Quantities quantities, Function<NumberSlot, String> name, String key) {
        return quantities.slots().stream().filter(s -> !s.absent() && name.apply(s).equals(key)).count();
    }

    private static String withoutPlace(String path) {
        return PLACE.matcher(path).replaceAll("");
    }

    private static String withoutAxis(NumberSlot slot, String path) {
        return slot.axis() < 0 ? path : path.substring(0, path.lastIndexOf('.'));
    }
}

package quietband.identification.search;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.IntStream;
import quietband.identification.FitException;
import quietband.model.quantity.BadPathException;
import quietband.model.quantity.NumberSlot;
import quietband.model.quantity.Quantities;
import quietband.model.quantity.SelectedNumbers;

/**
 * The numbers to be found, in the order they were named. A path without axis frees each axis by itself; all places of a
 * spring group share one number unless the path names one place.
 */
public final class FreeValues {

    private final List<FreeValue> values;
    private final Quantities own;

    private FreeValues(List<FreeValue> values, Quantities own) {
        this.values = values;
        this.own = own;
    }

    /** Finds what paths name. @throws FitException when one names nothing, or a number is named twice */
    public static FreeValues of(Quantities own, List<String> paths) {
        Map<String, List<Integer>> groups = new LinkedHashMap<>();
        Map<Integer, String> taken = new HashMap<>();
        for (String path : paths) {
            SelectedNumbers selection = find(own, path);
            for (int slot : selection.slots()) {
                String before = taken.put(slot, path);
                if (before != null) {
                    throw new FitException("--free names " + own.slot(slot).path() + " twice, by " + before + " and " + path
                        + "; name it once");
                }
                groups.computeIfAbsent(name(own.slot(slot), path), k -> new ArrayList<>()).add(slot);
            }
        }
        List<FreeValue> values = new ArrayList<>();
        groups.forEach((name, slots) -> values.add(FreeValue.of(name, slots.stream().mapToInt(i -> i).toArray(), own)));
        return new FreeValues(List.copyOf(values), own);
    }

    private static SelectedNumbers find(Quantities own, String path) {
        try {
            return own.find(path);
        } catch (BadPathException e) {
            throw new FitException("--free " + e.getMessage());
        }
    }

    private static String name(NumberSlot slot, String path) {
        boolean each = path.contains("[") || slot.quantity().endsWith(".at");
        return each ? slot.path() : slot.path().replaceAll("\\[[0-9]+]", "");
    }

    public int size() {
        return values.size();
    }

    public FreeValue get(int i) {
        return values.get(i);
    }

    List<FreeValue> all() {
        return values;
    }

    /** Where the model stands. */
    public double[] start() {
        return values.stream().mapToDouble(v -> v.toU(v.start())).toArray();
    }

    /** The design's numbers with the free ones set. */
    public Quantities at(double[] u) {
        double[] numbers = own.values();
        for (int i = 0; i < u.length; i++) {
            FreeValue v = values.get(i);
            for (int slot : v.slots()) {
                numbers[slot] = v.toValue(u[i]);
            }
        }
        return own.with(numbers);
    }

    /** u moved to the nearest that makes sense; a copy. */
    double[] clipped(double[] u) {
        double[] c = u.clone();
        for (int i = 0; i < c.length; i++) {
            c[i] = Math.max(values.get(i).least(), Math.min(values.get(i).most(), c[i]));
        }
        return c;
    }

    boolean within(Quantities q) {
        return q.within(values.stream().flatMapToInt(v -> Arrays.stream(v.slots())).toArray());
    }

    /** Indices of the values of one quantity each, such as all stiffnesses. */
    List<int[]> families() {
        Map<String, List<Integer>> by = new LinkedHashMap<>();
        IntStream.range(0, size()).forEach(i -> by.computeIfAbsent(values.get(i).detail().quantity(), k -> new ArrayList<>()).add(i));
        return by.values().stream().map(l -> l.stream().mapToInt(i -> i).toArray()).toList();
    }
}

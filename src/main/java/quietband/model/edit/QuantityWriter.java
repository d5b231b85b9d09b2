package quietband.model.edit;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;
import quietband.model.quantity.Quantities;
import quietband.units.Amounts;
import quietband.units.Dimension;

/** Writes the numbers that differ between two sets of quantities into a model's text, with as few edits as possible. */
final class QuantityWriter {

    private final ModelEditor editor;
    private final Quantities from;
    private final Quantities to;

    private QuantityWriter(ModelEditor editor, Quantities from, Quantities to) {
        this.editor = editor;
        this.from = from;
        this.to = to;
    }

    /** Edits the text; a group of springs is split only where its places come to differ. */
    static void write(ModelEditor editor, Quantities from, Quantities to) {
        QuantityWriter writer = new QuantityWriter(editor, from, to);
        Map<String, List<Integer>> leaves = new LinkedHashMap<>();
        for (int slot = 0; slot < from.size(); slot++) {
            leaves.computeIfAbsent(from.slot(slot).address().leaf(), k -> new ArrayList<>()).add(slot);
        }
        leaves.keySet().removeIf(writer::inertia);
        leaves.forEach(writer::leaf);
    }

    private boolean changed(int slot) {
        return from.slot(slot).varies() && from.value(slot) != to.value(slot);
    }

    /** Writes all of an inertia that is not in the file so far when any of it changed; whether the leaf is done. */
    private boolean inertia(String leaf) {
        String block = "platform.inertia";
        if (!leaf.startsWith(block + ".") || editor.current(leaf).isPresent()) {
            return false;
        }
        List<String> keys = List.of("xx", "yy", "zz", "xy", "xz", "yz");
        if (keys.stream().anyMatch(k -> changed(from.slotOf(block + "." + k)))) {
            editor.set(block, keys.stream().map(k -> k + ": " + Amounts.print(to.value(from.slotOf(block + "." + k)),
                Dimension.INERTIA)).collect(Collectors.joining(", ", "{", "}")));
        }
        return true;
    }

    /** All places and axes of one quantity. */
    private void leaf(String leaf, List<Integer> slots) {
        if (slots.stream().noneMatch(this::changed)) {
            return;
        }
        Map<Integer, List<Integer>> places = new LinkedHashMap<>();
        slots.forEach(s -> places.computeIfAbsent(from.slot(s).place(), k -> new ArrayList<>()).add(s));
        List<List<Integer>> all = List.copyOf(places.values());
        boolean alike = !leaf.endsWith(".at") && all.stream().allMatch(p -> same(p, all.get(0)));
        if (alike) {
            axes(leaf, all.get(0));
        } else {
            all.forEach(p -> axes(from.slot(p.get(0)).address().allAxes(), p));
        }
    }

    private boolean same(List<Integer> a, List<Integer> b) {
        for (int i = 0; i < a.size(); i++) {
            if (to.value(a.get(i)) != to.value(b.get(i))) {
                return false;
            }
        }
        return true;
    }

    /** The axes of one quantity at one path: one value where they are alike and the file has one, else each changed. */
    private void axes(String path, List<Integer> slots) {
        if (slots.stream().noneMatch(this::changed)) {
            return;
        }
        double first = to.value(slots.get(0));
        boolean present = slots.size() >= 3 && slots.stream().noneMatch(s -> from.slot(s).absent());
        boolean alike = present && slots.stream().allMatch(s -> to.value(s) == first);
        boolean map = alike && editor.current(path).filter(t -> t.startsWith("{") || t.contains(":")).isPresent();
        boolean single = slots.size() == 1 && from.slot(slots.get(0)).address().tail().isEmpty();
        if (single || (alike && !map)) {
            editor.set(path, first, from.slot(slots.get(0)).dimension());
            return;
        }
        boolean others = slots.stream().anyMatch(s -> !changed(s) && to.value(s) != 0);
        if (others && from.slot(slots.get(0)).spread() && editor.current(path).isEmpty()) {
            editor.set(path, slots.stream().map(s -> from.slot(s).address().tail() + ": " + Amounts.print(
                to.value(s), from.slot(s).dimension())).collect(Collectors.joining(", ", "{", "}")));
            return;
        }
        for (int slot : slots) {
            if (changed(slot)) {
                editor.set(path + "." + from.slot(slot).address().tail(), to.value(slot),
                    from.slot(slot).dimension());
            }
        }
    }
}

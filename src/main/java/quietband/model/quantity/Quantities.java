package quietband.model.quantity;

import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.TreeSet;
import java.util.function.Consumer;
import java.util.stream.IntStream;
import quietband.model.text.FormerNames;
import quietband.model.text.SpellingSuggestion;
import quietband.units.Dimension;

/**
 * Every number of a design by path: an immutable layout, shared by all designs that come from one model file, and one
 * number for each of its slots, in the base unit of its dimension. A slot without a value is marked absent; it holds
 * infinity or NaN, or a number that follows others.
 */
public final class Quantities {

    private final List<NumberSlot> slots;
    private final double[] values;

    public Quantities(List<NumberSlot> slots, double[] values) {
        this.slots = List.copyOf(slots);
        this.values = values;
    }

    /** Number of slots. */
    public int size() {
        return values.length;
    }

    /** The number in a slot. */
    public double value(int slot) {
        return values[slot];
    }

    /** All numbers; a copy. */
    public double[] values() {
        return values.clone();
    }

    /** What is known of a slot. */
    public NumberSlot slot(int index) {
        return slots.get(index);
    }

    /** Every slot in order. */
    public List<NumberSlot> slots() {
        return slots;
    }

    /**
     * Other numbers in the same layout. They are not checked.
     *
     * @param numbers one per slot, in slot order; copied
     */
    public Quantities with(double[] numbers) {
        if (numbers.length != values.length) {
            throw new IllegalArgumentException(numbers.length + " numbers for " + values.length + " slots");
        }
        return new Quantities(slots, numbers.clone());
    }

    /**
     * The same after a change of the numbers, one per slot, in slot order. They are not checked.
     *
     * @param change is handed the numbers to modify, and keeps none of them
     */
    public Quantities altered(Consumer<double[]> change) {
        double[] altered = Arrays.copyOf(values, values.length);
        change.accept(altered);
        return new Quantities(slots, altered);
    }

    /** The same with every number a path names replaced by one value, in the base unit. @throws BadPathException */
    public Quantities with(String path, double value) {
        return changed(List.of(new NumberChange(path, NumberChange.Act.SET, value)));
    }

    /** The same after some changes, in order. @throws BadPathException when a path names nothing */
    public Quantities changed(List<NumberChange> changes) {
        double[] changed = values.clone();
        for (NumberChange change : changes) {
            for (int slot : find(change.of()).slots()) {
                changed[slot] = switch (change.act()) {
                    case SET -> change.value();
                    case SCALE -> changed[slot] * (1 + change.value());
                    case ADD -> changed[slot] + change.value();
                };
            }
        }
        return new Quantities(slots, changed);
    }

    /** The first number out of the range that makes sense for it, in words; empty when all are within. */
    public Optional<String> outOfRange() {
        return IntStream.range(0, values.length)
            .filter(i -> !slots.get(i).absent() && !(range(i).holds(values[i]) && Double.isFinite(values[i])))
            .mapToObj(i -> slots.get(i).path() + " " + range(i).words(slots.get(i).dimension())).findFirst();
    }

    /** Whether some numbers, by slot, are all finite and in the range that makes sense for them. */
    public boolean within(int... some) {
        for (int i : some) {
            if (!range(i).holds(values[i]) || Double.isInfinite(values[i])) {
                return false;
            }
        }
        return true;
    }

    /** Which numbers make sense in a slot. */
    public NumberRange range(int slot) {
        return slots.get(slot).range();
    }

    /** The first value a path names, in the base unit. @throws BadPathException */
    public double valueOf(String path) {
        return values[find(path).slot(0)];
    }

    /**
     * The numbers a path names: keys joined with dots, a list entry by name or number from 1 or left out for all, one
     * place of a spring group as {@code corners[2]}, an axis last or left out for all. Where there is no group
     * {@code corners}, but {@code corners-1} and so on, into which it was split, {@code corners} names them all.
     *
     * @throws BadPathException when it names no number, or only such as have no value
     */
    public SelectedNumbers find(String path) {
        List<NumberAddress.Token> tokens = NumberAddress.tokens(path);
        if (tokens == null) {
            throw new BadPathException(path, "is no path", "join keys with dots, e.g. platform.springs.stiffness.x");
        }
        int[] all = matching(tokens, false);
        all = all.length == 0 ? matching(tokens, true) : all;
        int[] present = Arrays.stream(all).filter(i -> slots.get(i).varies()).toArray();
        if (present.length > 0) {
            return new SelectedNumbers(path, present, slots);
        }
        if (all.length > 0) {
            throw new BadPathException(path, "has no value in this model", "write one in the model file first");
        }
        throw unknown(path, tokens);
    }

    private int[] matching(List<NumberAddress.Token> tokens, boolean split) {
        return IntStream.range(0, values.length).filter(i -> slots.get(i).address().matches(tokens, split)).toArray();
    }

    /** The dimension of what a path names. @throws BadPathException */
    public Dimension dimension(String path) {
        return find(path).dimension();
    }

    private BadPathException unknown(String path, List<NumberAddress.Token> tokens) {
        TreeSet<String> inside = new TreeSet<>();
        TreeSet<String> known = new TreeSet<>();
        for (NumberSlot slot : slots) {
            known.add(slot.quantity());
            known.add(bare(slot));
            known.add(slot.path());
            if (slot.path().startsWith(path + ".") || slot.quantity().startsWith(path + ".")) {
                inside.add(slot.quantity().substring(slot.quantity().lastIndexOf('.') + 1));
            }
        }
        if (!inside.isEmpty()) {
            return new BadPathException(path, "is a block", "name a number in it: " + String.join(", ", inside));
        }
        if (tokens.get(0).name().equals("platform") && slots.stream()
            .noneMatch(s -> s.path().startsWith("platform.springs."))) {
            return new BadPathException(path, "the model has no platform", "");
        }
        String now = FormerNames.path(path);
        if (!now.equals(path) && (known.contains(now) || known.stream().anyMatch(k -> k.startsWith(now + ".")))) {
            return new BadPathException(path, "names no number of this model", "it is called '" + now + "' now");
        }
        return new BadPathException(path, "names no number of this model",
            SpellingSuggestion.advice(path, known, "paths look like platform.springs.stiffness or oscillator.carrier"));
    }

    /** The path without place and axis: as a person would write it for a whole group. */
    private static String bare(NumberSlot slot) {
        String path = slot.path().replaceAll("\\[[0-9]+]", "");
        int dot = path.lastIndexOf('.');
        return slot.axis() < 0 ? path : path.substring(0, dot);
    }

    /** The first slot that a path names, also where it has no value. @throws BadPathException */
    public int slotOf(String path) {
        List<NumberAddress.Token> tokens = NumberAddress.tokens(path);
        int[] all = tokens == null ? new int[0] : matching(tokens, false);
        return all.length == 0 ? find(path).slot(0) : all[0];
    }

    /** The numbers themselves, not to be modified. */
    public double[] raw() {
        return values;
    }

    /** Whether both come from one model file, so that each number of one has its place in the other. */
    public boolean sharesLayout(Quantities other) {
        return slots == other.slots;
    }
}

package quietband.model.quantity;

import java.util.List;
import java.util.stream.IntStream;
import quietband.units.Dimension;

/** The numbers a path names, by group, place and axis; at least one. */
public final class SelectedNumbers {

    private final String path;
    private final int[] slots;
    private final List<NumberSlot> details;

    SelectedNumbers(String path, int[] slots, List<NumberSlot> all) {
        this.path = path;
        this.slots = slots.clone();
        this.details = IntStream.of(slots).mapToObj(all::get).toList();
    }

    /** As the person wrote it. */
    public String path() {
        return path;
    }

    /** The same for all of them. */
    public Dimension dimension() {
        return details.get(0).dimension();
    }

    /** How many numbers. */
    public int size() {
        return slots.length;
    }

    /** Index of a number in {@link Quantities}. */
    public int slot(int index) {
        return slots[index];
    }

    /** Indices of all of them; a copy. */
    public int[] slots() {
        return slots.clone();
    }

    /** What is known of a number. */
    public NumberSlot detail(int index) {
        return details.get(index);
    }

    /** How many different springs they belong to; 0 when they belong to none. */
    public int springs() {
        return (int) details.stream().filter(s -> s.place() > 0).map(s -> s.group() + "[" + s.place() + "]").distinct()
            .count();
    }
}

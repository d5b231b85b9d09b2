package quietband.model.compile;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import quietband.model.format.FormatKey;
import quietband.model.format.FormatNode;
import quietband.model.format.WrittenValue;
import quietband.model.quantity.NumberAddress;
import quietband.model.quantity.NumberSlot;

/** Gives every number of a value tree its slot, in the order of the format, by group, place and axis. */
public final class QuantityLayout {

    /** The blocks whose numbers are quantities. */
    static final List<String> BLOCKS = List.of("oscillator", "platform", "cancellation", "vibration", "requirement");

    private final List<NumberSlot> slots = new ArrayList<>();
    private final List<Double> values = new ArrayList<>();
    private final Map<String, int[]> extents = new HashMap<>();

    /** Lays out the tree of a whole file; sets the slot of each of its numbers and expands spring groups. */
    public QuantityLayout(WrittenValue root) {
        for (String block : BLOCKS) {
            int first = slots.size();
            add(root.get(block), new Spot(NumberAddress.ROOT.key(block), "", 0), -1);
            extents.put(block, new int[] {first, slots.size()});
        }
    }

    private record Spot(NumberAddress address, String group, int place) {

        Spot key(String name) {
            return new Spot(address.key(name), group, place);
        }

        Spot entry(String name, int number, int at) {
            return new Spot(address.entry(name, number, at), name, at);
        }
    }

    private void add(WrittenValue written, Spot spot, int axis) {
        FormatNode form = written.form();
        if (form instanceof FormatNode.Num num) {
            written.slot(slots.size());
            String tail = axis < 0 ? "" : FormatNode.Spread.XYZ.get(axis);
            slot(spot, num, tail, axis, written, 0);
        } else if (form instanceof FormatNode.Spread spread) {
            written.slot(slots.size());
            for (int i = 0; i < spread.keys().size(); i++) {
                slot(spot, spread.each(), spread.keys().get(i), spread.perAxis() ? i : -1, written, i);
            }
        } else if (form instanceof FormatNode.AxisBlock axes) {
            for (FormatKey key : axes.each().keys()) {
                for (int i = 0; i < 3; i++) {
                    add(written.get(FormatNode.Spread.XYZ.get(i)).get(key.name()), spot.key(key.name()), i);
                }
            }
        } else if (form instanceof FormatNode.Block) {
            for (Map.Entry<String, WrittenValue> child : written.children().entrySet()) {
                add(child.getValue(), spot.key(child.getKey()), axis);
            }
        } else if (form instanceof FormatNode.Entries) {
            for (int i = 0; i < written.items().size(); i++) {
                entry(written.items().get(i), spot, i + 1, axis);
            }
        }
    }

    private void entry(WrittenValue entry, Spot spot, int number, int axis) {
        WrittenValue at = entry.children().get("at");
        if (at == null) {
            add(entry, spot.entry(entry.text(), number, 0), axis);
            return;
        }
        WrittenValue template = entry.copy();
        template.put("at", at.items().isEmpty() ? at : at.items().get(0));
        for (int i = 0; i < at.items().size(); i++) {
            WrittenValue place = template.copy();
            place.put("at", at.items().get(i));
            entry.items().add(place);
            add(place, spot.entry(entry.text(), number, i + 1), axis);
        }
    }

    private void slot(Spot spot, FormatNode.Num num, String tail, int axis, WrittenValue written, int index) {
        NumberAddress address = spot.address().tail(tail);
        slots.add(new NumberSlot(address.toString(), address.quantity(), num.dimension(), spot.group(), spot.place(), axis,
            written.absent(index), DerivedNumbers.MARK.equals(written.value()), written.form() instanceof FormatNode.Spread,
            num.range(), address));
        values.add(written.numbers()[index]);
    }

    /** The first slot of a block and the one after its last. */
    int[] extent(String block) {
        return extents.get(block).clone();
    }

    /** Every slot in order. */
    public List<NumberSlot> slots() {
        return List.copyOf(slots);
    }

    /** The numbers as written, in slot order. */
    public double[] values() {
        return values.stream().mapToDouble(Double::doubleValue).toArray();
    }
}

package quietband.model;

import java.util.ArrayList;
import java.util.BitSet;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import quietband.units.Dimension;

/** Gives every number of a value tree its slot, in the order of the format, by group, place and axis. */
final class Layout {

    /** The blocks whose numbers are quantities. */
    static final List<String> BLOCKS = List.of("oscillator", "platform", "cancellation", "vibration", "requirement");

    private final List<Slot> slots = new ArrayList<>();
    private final List<Address> addresses = new ArrayList<>();
    private final List<Range> ranges = new ArrayList<>();
    private final List<Double> values = new ArrayList<>();
    private final BitSet spreads = new BitSet();
    private final BitSet followers = new BitSet();
    private final Map<String, int[]> extents = new HashMap<>();
    private DesignMaker maker;

    /** Lays out the tree of a whole file; sets the slot of each of its numbers and expands spring groups. */
    Layout(Written root) {
        for (String block : BLOCKS) {
            int first = slots.size();
            add(root.get(block), new Spot(Address.ROOT.key(block), "", 0), -1);
            extents.put(block, new int[] {first, slots.size()});
        }
    }

    private record Spot(Address address, String group, int place) {

        Spot key(String name) {
            return new Spot(address.key(name), group, place);
        }

        Spot entry(String name, int number, int at) {
            return new Spot(address.entry(name, number, at), name, at);
        }
    }

    private void add(Written written, Spot spot, int axis) {
        Form form = written.form();
        if (Followers.MARK.equals(written.value())) {
            followers.set(slots.size(), slots.size() + written.numbers().length);
        }
        if (form instanceof Form.Num num) {
            written.slot(slots.size());
            String tail = axis < 0 ? "" : Form.Spread.XYZ.get(axis);
            slot(spot, num, tail, axis, written.number(), written.absent(0));
        } else if (form instanceof Form.Spread spread) {
            written.slot(slots.size());
            spreads.set(slots.size(), slots.size() + spread.keys().size());
            for (int i = 0; i < spread.keys().size(); i++) {
                slot(spot, spread.each(), spread.keys().get(i), spread.perAxis() ? i : -1, written.numbers()[i],
                    written.absent(i));
            }
        } else if (form instanceof Form.AxisBlock axes) {
            for (Key key : axes.each().keys()) {
                for (int i = 0; i < 3; i++) {
                    add(written.get(Form.Spread.XYZ.get(i)).get(key.name()), spot.key(key.name()), i);
                }
            }
        } else if (form instanceof Form.Block) {
            for (Map.Entry<String, Written> child : written.children().entrySet()) {
                add(child.getValue(), spot.key(child.getKey()), axis);
            }
        } else if (form instanceof Form.Entries) {
            for (int i = 0; i < written.items().size(); i++) {
                entry(written.items().get(i), spot, i + 1, axis);
            }
        }
    }

    private void entry(Written entry, Spot spot, int number, int axis) {
        Written at = entry.children().get("at");
        if (at == null) {
            add(entry, spot.entry(entry.text(), number, 0), axis);
            return;
        }
        Written template = entry.copy();
        template.put("at", at.items().isEmpty() ? at : at.items().get(0));
        for (int i = 0; i < at.items().size(); i++) {
            Written place = template.copy();
            place.put("at", at.items().get(i));
            entry.items().add(place);
            add(place, spot.entry(entry.text(), number, i + 1), axis);
        }
    }

    private void slot(Spot spot, Form.Num num, String tail, int axis, double value, boolean absent) {
        Address address = spot.address().tail(tail);
        slots.add(new Slot(address.toString(), address.quantity(), num.dimension(), spot.group(), spot.place(), axis,
            absent));
        addresses.add(address);
        ranges.add(num.range());
        values.add(value);
    }

    /** Sets what makes records from numbers in these slots; once, after checking. */
    void compiled(DesignMaker made) {
        maker = made;
    }

    /** The first slot of a block and the one after its last. */
    int[] extent(String block) {
        return extents.get(block).clone();
    }

    DesignMaker maker() {
        return maker;
    }

    /** Whether a slot is one of a map of numbers that a file may write as one value. */
    boolean isSpread(int index) {
        return spreads.get(index);
    }

    /** Whether a slot has a number that can be varied: one of its own, or one that follows others. */
    boolean varies(int index) {
        return !slots.get(index).absent() || followers.get(index);
    }

    Slot slot(int index) {
        return slots.get(index);
    }

    Address address(int index) {
        return addresses.get(index);
    }

    Range range(int index) {
        return ranges.get(index);
    }

    Dimension dimension(int index) {
        return slots.get(index).dimension();
    }

    List<Slot> slots() {
        return slots;
    }

    /** The numbers as written, in slot order. */
    double[] values() {
        return values.stream().mapToDouble(Double::doubleValue).toArray();
    }
}

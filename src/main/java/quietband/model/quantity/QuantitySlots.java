package quietband.model.quantity;

import java.util.List;
import quietband.units.Dimension;

/** The slots of a design's numbers: which number has which path, range and dimension, in the order of the format. */
public interface QuantitySlots {

    /** What is known of a slot. */
    NumberSlot slot(int index);

    /** Every slot in order; not to be modified. */
    List<NumberSlot> slots();

    /** Where the number stands in the format. */
    NumberAddress address(int index);

    /** Which numbers make sense in the slot. */
    NumberRange range(int index);

    /** Whether a slot is one of a map of numbers that a file may write as one value. */
    boolean isSpread(int index);

    /** Whether a slot has a number that can be varied: one of its own, or one that follows others. */
    boolean varies(int index);

    /** What kind of quantity stands in the slot. */
    default Dimension dimension(int index) {
        return slot(index).dimension();
    }
}

package quietband.model.quantity;

import quietband.units.Dimension;

/**
 * One number of a design.
 *
 * @param path      canonical, e.g. {@code platform.springs.corners[2].stiffness.x}
 * @param quantity  the path without list entries, places and axis, e.g. {@code platform.springs.stiffness}
 * @param dimension what it is; its value is in the dimension's base unit
 * @param group     name of the list entry it belongs to, e.g. the spring group; empty when in none
 * @param place     number of the place in the spring group, from 1; 0 when it has none
 * @param axis      0 to 2 for x to z; -1 when it has none
 * @param absent    whether the design has no number of its own here: none, so that it cannot be varied, or one that
 *                  follows others (output, inertia, default weights), which can
 * @param follows   whether it is a number that follows others
 * @param spread    whether it is one of a map of numbers that a file may write as one value
 * @param range     which numbers make sense here
 * @param address   where it stands in the format
 */
public record NumberSlot(String path, String quantity, Dimension dimension, String group, int place, int axis,
                         boolean absent, boolean follows, boolean spread, NumberRange range, NumberAddress address) {

    /** Whether there is a number that can be varied: one of its own, or one that follows others. */
    public boolean varies() {
        return !absent || follows;
    }
}

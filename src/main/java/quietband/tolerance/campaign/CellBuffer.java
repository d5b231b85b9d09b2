package quietband.tolerance.campaign;

import java.util.ArrayList;
import java.util.List;

/**
 * Cells of some units on their way to the counts, which are larger than the processor's fast memory: counted are all units of one
 * frequency before the next. They lie in strips of neighbouring frequencies, unit after unit. One object serves one thread.
 */
final class CellBuffer {

    private static final int MOST_UNITS = 256;
    private static final int FEWEST_UNITS = 16;
    /** About as many cells as are kept at once. */
    private static final int ROOM = 1 << 19;
    /** Cells of a strip: what the processor fetches at once. */
    private static final int STRIP = 32;

    private final List<LevelCounts> levels = new ArrayList<>();
    private final int frequencies;
    /** Cells of the unit at hand, frequency after frequency for each stack. */
    private final char[] row;
    private final char[] strips;
    private final int room;
    private int units;

    /** For a table of some stacks at some frequencies. */
    CellBuffer(int stacks, int frequencies) {
        this.frequencies = frequencies;
        for (int s = 0; s < stacks; s++) {
            levels.add(new LevelCounts(frequencies));
        }
        row = new char[(stacks * frequencies + STRIP - 1) / STRIP * STRIP];
        room = Math.max(FEWEST_UNITS, Math.min(MOST_UNITS, ROOM / row.length));
        strips = new char[row.length * room];
    }

    /** Takes in what a unit has on some frequencies: the larger of three powers at each, 1/g^2. */
    void put(int stack, int at, double[] x, double[] y, double[] z, int n) {
        int first = stack * frequencies + at;
        for (int t = 0; t < n; t++) {
            row[first + t] = LevelCounts.cell(Math.max(x[t], Math.max(y[t], z[t])));
        }
    }

    /** Ends a unit, of which everything has been put. */
    void next() {
        for (int from = 0; from < row.length; from += STRIP) {
            System.arraycopy(row, from, strips, from * room + units * STRIP, STRIP);
        }
        if (++units == room) {
            count();
        }
    }

    /** The counts by stack, of all units ended so far. */
    List<LevelCounts> levels() {
        count();
        return levels;
    }

    private void count() {
        for (int i = 0; i < levels.size() * frequencies; i++) {
            levels.get(i / frequencies).add(i % frequencies, strips, i / STRIP * STRIP * room + i % STRIP, STRIP, units);
        }
        units = 0;
    }
}

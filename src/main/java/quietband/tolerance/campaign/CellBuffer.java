package quietband.tolerance.campaign;

import java.util.ArrayList;
import java.util.List;

/**
 * Cells of some units on their way to the counts, which are larger than the processor's fast memory: counted are all units of one
 * frequency before the next. One object serves one thread.
 */
final class CellBuffer {

    private static final int MOST_UNITS = 256;
    private static final int FEWEST_UNITS = 16;
    /** About as many cells as are kept at once. */
    private static final int ROOM = 1 << 19;

    private final List<LevelCounts> levels = new ArrayList<>();
    private final int frequencies;
    private final int perUnit;
    /** Unit after unit, of each frequency after frequency for each stack. */
    private final char[] cells;
    private int units;

    /** For a table of some stacks at some frequencies. */
    CellBuffer(int stacks, int frequencies) {
        this.frequencies = frequencies;
        for (int s = 0; s < stacks; s++) {
            levels.add(new LevelCounts(frequencies));
        }
        perUnit = stacks * frequencies;
        cells = new char[perUnit * Math.max(FEWEST_UNITS, Math.min(MOST_UNITS, ROOM / perUnit))];
    }

    /** Takes in what a unit has on some frequencies: the larger of three powers at each, 1/g^2. */
    void put(int stack, int at, double[] x, double[] y, double[] z, int n) {
        int first = units * perUnit + stack * frequencies + at;
        for (int t = 0; t < n; t++) {
            cells[first + t] = LevelCounts.cell(Math.max(x[t], Math.max(y[t], z[t])));
        }
    }

    /** Ends a unit, of which everything has been put. */
    void next() {
        if (++units * perUnit == cells.length) {
            count();
        }
    }

    /** The counts by stack, of all units ended so far. */
    List<LevelCounts> levels() {
        count();
        return levels;
    }

    private void count() {
        for (int i = 0; i < perUnit; i++) {
            levels.get(i / frequencies).add(i % frequencies, cells, i, perUnit, units);
        }
        units = 0;
    }
}

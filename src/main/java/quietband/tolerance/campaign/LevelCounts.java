package quietband.tolerance.campaign;

/**
 * How often a residual had which size, at every frequency of a table: whole counts in cells, so that memory does not grow with the
 * number of units and the order of counting changes nothing.
 *
 * <p>Cells are a 128th of the octave in power that they belong to: 0.034 dB wide where it begins and 0.017 dB where it ends, from 2^-100
 * to 2^20 in power over 1/g^2 (about 1e-6 to 1e12 ppb/g). They are parts of a number's own bits. A percentile is placed inside its cell
 * in proportion: where many units share a value, as rows of a lot do, it may be off by the cell, else by much less.
 */
public final class LevelCounts {

    private static final int CELL_BITS = 7;
    private static final int PER_OCTAVE = 1 << CELL_BITS;
    private static final int IN_OCTAVE = PER_OCTAVE - 1;
    private static final int LOWEST = -100;
    private static final int OCTAVES = 120;

    private static final int EXPONENT_BIAS = 1023;
    private static final int MANTISSA_BITS = 52;
    private static final int FIRST = EXPONENT_BIAS + LOWEST << CELL_BITS;

    private final int frequencies;
    private final int[][][] counts;
    /** How many units were counted at each frequency. */
    private final long[] all;

    LevelCounts(int frequencies) {
        this.frequencies = frequencies;
        this.counts = new int[frequencies][OCTAVES][];
        this.all = new long[frequencies];
    }

    /**
     * Counts units at one frequency.
     *
     * @param cells from {@link #cell}
     * @param from  the first unit's
     * @param step  from unit to unit
     */
    void add(int frequency, char[] cells, int from, int step, int units) {
        all[frequency] += units;
        int[][] octaves = counts[frequency];
        for (int u = from; u < from + units * step; u += step) {
            int octave = cells[u] >>> CELL_BITS;
            if (octaves[octave] == null) {
                octaves[octave] = new int[PER_OCTAVE];
            }
            octaves[octave][cells[u] & IN_OCTAVE]++;
        }
    }

    private int[] octave(int frequency, int octave) {
        int[] c = counts[frequency][octave];
        if (c == null) {
            c = new int[PER_OCTAVE];
            counts[frequency][octave] = c;
        }
        return c;
    }

    /** The cell of a power in 1/g^2: its exponent and the first bits of its mantissa. */
    public static char cell(double power) {
        if (!(power > 0)) {
            return 0;
        }
        int cell = (int) (Double.doubleToRawLongBits(power) >>> MANTISSA_BITS - CELL_BITS) - FIRST;
        return (char) Math.max(0, Math.min((OCTAVES << CELL_BITS) - 1, cell));
    }

    /** Adds the counts of another. */
    void add(LevelCounts other) {
        for (int f = 0; f < frequencies; f++) {
            all[f] += other.all[f];
            for (int o = 0; o < OCTAVES; o++) {
                int[] more = other.counts[f][o];
                for (int i = 0; more != null && i < PER_OCTAVE; i++) {
                    octave(f, o)[i] += more[i];
                }
            }
        }
    }

    /** The size below which a share of all units stays at a frequency, 1/g; 0 for the lowest cell, NaN without units. */
    double percentile(int frequency, double share) {
        if (all[frequency] == 0) {
            return Double.NaN;
        }
        double wanted = share * all[frequency];
        long below = 0;
        for (int o = 0; o < OCTAVES; o++) {
            int[] c = counts[frequency][o];
            for (int i = 0; c != null && i < PER_OCTAVE; i++) {
                if (c[i] > 0 && below + c[i] >= wanted) {
                    double place = (i + (wanted - below) / c[i]) / PER_OCTAVE;
                    return o == 0 && i == 0 ? 0 : Math.sqrt(Math.scalb(1 + place, LOWEST + o));
                }
                below += c[i];
            }
        }
        throw new IllegalStateException("counts do not add up");
    }
}

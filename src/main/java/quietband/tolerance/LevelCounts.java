package quietband.tolerance;

import java.util.Arrays;

/**
 * How often a residual had which size, at every frequency of a table: whole counts in cells of equal width on a logarithmic scale, so
 * that memory does not grow with the number of units and the order of counting changes nothing.
 *
 * <p>Cells are 1/96 of an octave in power (0.0314 dB) wide, from 2^-100 to 2^-10 in power over 1/g^2 (about 1e-6 to 3e7 ppb/g);
 * a percentile is placed inside its cell in proportion and is good to about 0.02 dB, 0.2 %.
 */
final class LevelCounts {

    private static final int PER_OCTAVE = 96;
    private static final int LOWEST = -100;
    private static final int OCTAVES = 120;

    /** Cells of an octave in a cell's number, so that octave and place are parts of its bits. */
    private static final int OCTAVE_BITS = 7;
    private static final int IN_OCTAVE = (1 << OCTAVE_BITS) - 1;
    private static final int EXPONENT_BIAS = 1023;
    private static final int MANTISSA_BITS = 52;
    private static final long MANTISSA = (1L << MANTISSA_BITS) - 1;
    private static final int GUESS_BITS = 8;

    /** Lower edges of an octave's cells as bits of the mantissa; no mantissa reaches the last. */
    private static final long[] EDGE = new long[PER_OCTAVE + 1];
    /** The cell in which each 256th of an octave begins; none holds more than one edge. */
    private static final byte[] GUESS = new byte[1 << GUESS_BITS];

    static {
        for (int i = 0; i < PER_OCTAVE; i++) {
            EDGE[i] = Double.doubleToRawLongBits(StrictMath.pow(2, (double) i / PER_OCTAVE)) & MANTISSA;
        }
        EDGE[PER_OCTAVE] = Long.MAX_VALUE;
        for (int g = 0, cell = 0; g < GUESS.length; g++) {
            while (EDGE[cell + 1] <= (long) g << MANTISSA_BITS - GUESS_BITS) {
                cell++;
            }
            GUESS[g] = (byte) cell;
        }
    }

    private final int frequencies;
    private final int[][][] counts;

    LevelCounts(int frequencies) {
        this.frequencies = frequencies;
        this.counts = new int[frequencies][OCTAVES][];
    }

    /**
     * Counts units at one frequency.
     *
     * @param cells from {@link #cell}
     * @param from  the first unit's
     * @param step  from unit to unit
     */
    void add(int frequency, char[] cells, int from, int step, int units) {
        int[][] octaves = counts[frequency];
        for (int u = from; u < from + units * step; u += step) {
            int octave = cells[u] >>> OCTAVE_BITS;
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

    /** The cell of a power in 1/g^2: octave from the exponent's bits, place in it from a table of edges. */
    static char cell(double power) {
        if (!(power > 0)) {
            return 0;
        }
        long bits = Double.doubleToRawLongBits(power);
        int octave = (int) (bits >>> MANTISSA_BITS) - EXPONENT_BIAS - LOWEST;
        if (octave < 0) {
            return 0;
        }
        if (octave >= OCTAVES) {
            return (char) (OCTAVES - 1 << OCTAVE_BITS | PER_OCTAVE - 1);
        }
        int guess = GUESS[(int) (bits >>> MANTISSA_BITS - GUESS_BITS) & GUESS.length - 1];
        return (char) ((octave << OCTAVE_BITS) + guess + ((bits & MANTISSA) >= EDGE[guess + 1] ? 1 : 0));
    }

    /** Adds the counts of another. */
    void add(LevelCounts other) {
        for (int f = 0; f < frequencies; f++) {
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
        long all = 0;
        for (int[] c : counts[frequency]) {
            all += c == null ? 0 : Arrays.stream(c).asLongStream().sum();
        }
        if (all == 0) {
            return Double.NaN;
        }
        double wanted = share * all;
        long below = 0;
        for (int o = 0; o < OCTAVES; o++) {
            int[] c = counts[frequency][o];
            for (int i = 0; c != null && i < PER_OCTAVE; i++) {
                if (c[i] > 0 && below + c[i] >= wanted) {
                    double place = LOWEST + o + (i + (wanted - below) / c[i]) / PER_OCTAVE;
                    return o == 0 && i == 0 ? 0 : StrictMath.pow(2, place / 2);
                }
                below += c[i];
            }
        }
        throw new IllegalStateException("counts do not add up");
    }
}

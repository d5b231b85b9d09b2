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

    private static final double[] EDGE = new double[PER_OCTAVE + 1];
    private static final int[] GUESS = new int[256];

    static {
        for (int i = 0; i <= PER_OCTAVE; i++) {
            EDGE[i] = StrictMath.pow(2, (double) i / PER_OCTAVE);
        }
        for (int g = 0, cell = 0; g < GUESS.length; g++) {
            double mantissa = 1 + (double) g / GUESS.length;
            while (EDGE[cell + 1] <= mantissa) {
                cell++;
            }
            GUESS[g] = cell;
        }
    }

    private final int frequencies;
    private final int[][][] counts;

    LevelCounts(int frequencies) {
        this.frequencies = frequencies;
        this.counts = new int[frequencies][OCTAVES][];
    }

    /** Counts one unit's power at a frequency. */
    void add(int frequency, double power) {
        int cell = cell(power);
        octave(frequency, cell / PER_OCTAVE)[cell % PER_OCTAVE]++;
    }

    private int[] octave(int frequency, int octave) {
        int[] c = counts[frequency][octave];
        if (c == null) {
            c = new int[PER_OCTAVE];
            counts[frequency][octave] = c;
        }
        return c;
    }

    /** Octave from the exponent's bits, place in it from a table of edges that halve on a logarithmic scale. */
    private static int cell(double power) {
        if (!(power > 0)) {
            return 0;
        }
        int octave = Math.getExponent(power) - LOWEST;
        if (octave < 0) {
            return 0;
        }
        if (octave >= OCTAVES) {
            return OCTAVES * PER_OCTAVE - 1;
        }
        double mantissa = Double.longBitsToDouble(Double.doubleToRawLongBits(power) & 0xFFFFFFFFFFFFFL | 0x3FF0000000000000L);
        int guess = GUESS[(int) ((mantissa - 1) * GUESS.length)];
        while (guess + 1 < PER_OCTAVE && mantissa >= EDGE[guess + 1]) {
            guess++;
        }
        return octave * PER_OCTAVE + guess;
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

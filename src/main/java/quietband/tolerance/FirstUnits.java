package quietband.tolerance;

import java.util.Arrays;
import java.util.BitSet;

/** Margin in the nominal condition of the first units of a campaign, and which of them meet everything there. */
final class FirstUnits {

    /** How many are kept at most. */
    static final int MOST = 100_000;

    private static final int SMALL = 1024;

    private double[] margin = new double[SMALL];
    private final BitSet met = new BitSet();
    private int size;

    /** Takes up the next unit; those beyond the most are left out. */
    void add(UnitVerdict nominal) {
        if (size < MOST) {
            if (size == margin.length) {
                margin = Arrays.copyOf(margin, Math.min(MOST, 4 * size));
            }
            margin[size] = nominal.marginDb();
            met.set(size++, nominal.met());
        }
    }

    boolean met(int unit) {
        return met.get(unit);
    }

    double marginDb(int unit) {
        return margin[unit];
    }
}

package quietband.tolerance.campaign;

import java.util.Arrays;
import java.util.BitSet;
import quietband.tolerance.judge.UnitVerdict;

/** Margin in the nominal condition of the first units of a campaign, and which of them meet everything there. */
public final class FirstUnits {

    /** How many are kept at most. */
    public static final int MOST = 100_000;

    private static final int SMALL = 1024;

    private double[] margin = new double[SMALL];
    private final BitSet met = new BitSet();
    private int size;

    /** Takes up the next unit; those beyond the most are left out. */
    public void add(UnitVerdict nominal) {
        if (size < MOST) {
            if (size == margin.length) {
                margin = Arrays.copyOf(margin, Math.min(MOST, 4 * size));
            }
            margin[size] = nominal.marginDb();
            met.set(size++, nominal.met());
        }
    }

    public boolean met(int unit) {
        return met.get(unit);
    }

    public double marginDb(int unit) {
        return margin[unit];
    }
}

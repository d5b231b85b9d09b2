package quietband.filter.analog;

import java.util.Arrays;

/**
 * Values of resistors and capacitors that are made: E24 and E96 of IEC 60063 (from memory). E96 is 10^(k/96) with three digits;
 * E24 differs from 10^(k/24) in eight places and is written out.
 */
public enum PreferredValues {
    /** 24 values a decade, commonly 5 %. */
    E24(10, 11, 12, 13, 15, 16, 18, 20, 22, 24, 27, 30, 33, 36, 39, 43, 47, 51, 56, 62, 68, 75, 82, 91),
    /** 96 values a decade, commonly 1 %. */
    E96(steps());

    private static final double LEAST_OHM = 1e3;
    private static final double MOST_OHM = 1e7;
    private static final double LEAST_FARAD = 1e-10;
    private static final double MOST_FARAD = 1e-6;

    @SuppressWarnings("ImmutableEnumChecker") // never handed out
    private final int[] digits;

    PreferredValues(int... digits) {
        this.digits = digits;
    }

    private static int[] steps() {
        int[] values = new int[96];
        for (int k = 0; k < values.length; k++) {
            values[k] = (int) Math.round(100 * StrictMath.pow(10, k / 96.0));
        }
        return values;
    }

    /** Resistors from 1 kohm to 10 Mohm, rising, ohm; a fresh array. */
    public double[] resistors() {
        return between(LEAST_OHM, MOST_OHM);
    }

    /** Capacitors from 100 pF to 1 uF, rising, farad; E24 for either series: capacitors are hardly made in E96. */
    public static double[] capacitors() {
        return E24.between(LEAST_FARAD, MOST_FARAD);
    }

    private double[] between(double least, double most) {
        int first = (int) Math.round(StrictMath.log10(least));
        int last = (int) Math.round(StrictMath.log10(most));
        int places = digits.length > 24 ? 2 : 1;
        double[] values = new double[(last - first) * digits.length + 1];
        int n = 0;
        for (int decade = first; decade < last; decade++) {
            for (int d : digits) {
                values[n++] = Double.parseDouble(d + "e" + (decade - places));
            }
        }
        values[n] = most;
        return values;
    }

    /** The nearest values to one that is wanted, by ratio, at most so many (values rising). */
    public static double[] near(double[] values, double wanted, int most) {
        if (!(wanted > 0) || Double.isInfinite(wanted)) {
            return new double[] {wanted > 0 ? values[values.length - 1] : values[0]};
        }
        int found = Arrays.binarySearch(values, wanted);
        int hi = found >= 0 ? found : -found - 1;
        int lo = hi - 1;
        double[] near = new double[Math.min(most, values.length)];
        for (int n = 0; n < near.length; n++) {
            boolean up = lo < 0 || hi < values.length && values[hi] / wanted < wanted / values[lo];
            near[n] = up ? values[hi++] : values[lo--];
        }
        return near;
    }

    /** The value some steps up or down, the end of the row at most. */
    public static double step(double[] values, double from, int steps) {
        int at = Arrays.binarySearch(values, from);
        int near = at >= 0 ? at : -at - 1;
        return values[Math.max(0, Math.min(values.length - 1, near + steps))];
    }
}

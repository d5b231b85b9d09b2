package quietband.tolerance.campaign;

import quietband.demand.Decibels;

/** How many units have which margin: whole counts in steps of 0.005 dB from -100 to 100 dB, what is beyond in the last ones. */
public final class MarginCounts {

    /** Width of a step, dB. */
    public static final double STEP_DB = 0.005;

    private static final int HALF = 20_000;

    private final long[] counts = new long[2 * HALF];
    private long units;

    void add(double marginDb) {
        int cell = (int) Math.floor(marginDb / STEP_DB) + HALF;
        counts[Math.max(0, Math.min(counts.length - 1, cell))]++;
        units++;
    }

    /** How many were counted. */
    public long units() {
        return units;
    }

    /** How many have a margin from one bound to below another, dB; bounds are rounded to steps. */
    public long between(double fromDb, double toDb) {
        long sum = 0;
        int from = Math.max(0, (int) Math.rint(fromDb / STEP_DB) + HALF);
        int to = Math.min(counts.length, (int) Math.rint(toDb / STEP_DB) + HALF);
        for (int i = from; i < to; i++) {
            sum += counts[i];
        }
        return sum;
    }

    /** The margin that a share of units falls short of, dB, good to a step; NaN without units. */
    public double quantile(double share) {
        double wanted = share * units;
        long below = 0;
        for (int i = 0; i < counts.length; i++) {
            if (counts[i] > 0 && below + counts[i] >= wanted) {
                return (i - HALF + (wanted - below) / counts[i]) * STEP_DB;
            }
            below += counts[i];
        }
        return Double.NaN;
    }

    /**
     * The factor on the residual limit at which a share of units would meet it: 1.1 asks for a limit 10 % wider, 0.9 leaves
     * room for one 10 % narrower.
     */
    public double limitFactor(double share) {
        return Decibels.amplitude(-quantile(1 - share));
    }
}

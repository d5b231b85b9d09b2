package quietband.lot;

/**
 * How a lot is sorted.
 *
 * @param limitPpbPerG what a good unit may have, ppb/g, above 0
 * @param by           what is held against it
 * @param edgesPpbPerG rising upper edges of the classes, ppb/g; beyond the last is one class more
 * @param guardPpbPerG how far below the limit a reading must stay, ppb/g, at least 0
 * @param risk         largest chance that an accepted unit is beyond the limit all the same; 1 when any will do
 * @param confidence   of intervals, between 0 and 1
 * @param wanted       good units wanted, at least 1
 */
public record SortRule(double limitPpbPerG, By by, double[] edgesPpbPerG, double guardPpbPerG, double risk,
                       double confidence, int wanted) {

    /** What is held against a limit. */
    public enum By {
        /** The length of the vector. */
        VECTOR,
        /** The largest of the three components. */
        AXIS
    }

    /** A reading on the edge is within; rounding must not decide. */
    static final double EDGE = 1 + 1e-12;

    /** Whether a reading in ppb/g is within a limit in ppb/g. */
    static boolean within(double value, double limit) {
        return value <= limit * EDGE;
    }

    /** Largest reading that is accepted, ppb/g. */
    public double acceptedUpTo() {
        return limitPpbPerG - guardPpbPerG;
    }

    /** The class of a reading, from 0; the number of edges when it is beyond the last. */
    public int classOf(double value) {
        int k = 0;
        while (k < edgesPpbPerG.length && !within(value, edgesPpbPerG[k])) {
            k++;
        }
        return k;
    }
}

package quietband.report.chart;

import java.util.ArrayDeque;
import java.util.BitSet;
import java.util.Deque;

/**
 * Leaves out the points of a drawn line that nobody would miss. Method: D. Douglas and T. Peucker, Cartographica 10 (1973) 112
 * (from memory), with the distance measured upright: between two points that stay, the straight line between them is nowhere
 * further from what is left out than the tolerance.
 */
final class LineReducer {

    private final double[] x;
    private final double[] y;
    private final double tolerance;
    private final BitSet kept;

    private LineReducer(double[] x, double[] y, double tolerance, BitSet always) {
        this.x = x;
        this.y = y;
        this.tolerance = tolerance;
        this.kept = (BitSet) always.clone();
    }

    /**
     * The points that stay: first and last, those that are always wanted, those where the line breaks off, and what keeps its shape.
     *
     * @param x         rising, in px
     * @param y         as many, in px; NaN where the line has a gap
     * @param tolerance in px, above 0
     */
    static BitSet kept(double[] x, double[] y, BitSet always, double tolerance) {
        LineReducer reducer = new LineReducer(x, y, tolerance, always);
        reducer.reduce();
        return reducer.kept;
    }

    private void reduce() {
        if (x.length == 0) {
            return;
        }
        kept.set(0);
        kept.set(x.length - 1);
        for (int i = 0; i < x.length; i++) {
            if (Double.isNaN(y[i])) {
                kept.set(Math.max(0, i - 1), Math.min(x.length, i + 2));
            }
        }
        Deque<int[]> open = new ArrayDeque<>();
        for (int from = 0, to = kept.nextSetBit(1); to > 0; from = to, to = kept.nextSetBit(to + 1)) {
            open.add(new int[] {from, to});
        }
        while (!open.isEmpty()) {
            int[] stretch = open.pop();
            int worst = worst(stretch[0], stretch[1]);
            if (worst > 0) {
                kept.set(worst);
                open.push(new int[] {stretch[0], worst});
                open.push(new int[] {worst, stretch[1]});
            }
        }
    }

    /** The point within a stretch that is furthest from its chord, when that is further than the tolerance; else -1. */
    private int worst(int from, int to) {
        double slope = (y[to] - y[from]) / (x[to] - x[from]);
        double most = tolerance;
        int worst = -1;
        for (int i = from + 1; i < to; i++) {
            double off = Math.abs(y[i] - y[from] - slope * (x[i] - x[from]));
            if (off > most) {
                most = off;
                worst = i;
            }
        }
        return worst;
    }
}

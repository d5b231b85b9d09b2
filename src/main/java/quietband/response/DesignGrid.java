package quietband.response;

import quietband.model.Design;
import quietband.platform.Assembly;

/** The program's own frequencies for a design, which show every resonance: for charts and searches. */
public final class DesignGrid {

    private DesignGrid() { }

    /**
     * Rising frequencies in Hz between two ends, both included.
     *
     * @param from above 0
     * @param to   above {@code from}
     */
    public static double[] of(Design design, double from, double to) {
        return of(design, design.platform().map(Assembly::new).orElse(null), from, to);
    }

    /** The same with the platform's matrices built before; null when the design has no platform. */
    public static double[] of(Design design, Assembly assembly, double from, double to) {
        return new GridSeeds(design, assembly).between(from, to);
    }
}

package quietband.tuning.cures;

import java.util.ArrayList;
import java.util.List;
import java.util.stream.IntStream;
import quietband.demand.ResidualDemand;
import quietband.model.Design;
import quietband.model.Platform;
import quietband.model.Stack;
import quietband.numerics.BrentMaximum;
import quietband.platform.Assembly;
import quietband.response.DesignGrid;
import quietband.response.ResidualResponse;

/**
 * How far a stack is over the residual limit within a stretch of the band, for one changed design after the other. The
 * frequencies at which earlier designs were worst are remembered: looking there alone costs next to nothing.
 */
public final class GapMargin {

    // of the logarithm of a peak's frequency
    private static final double NEAR = 1e-7;
    private static final int COARSE = 4;
    private static final int REMEMBERED = 12;
    // springs so soft that hundreds of their own resonances fall into the band are no remedy
    private static final int MOST_POINTS = 2500;
    private static final double FAR_OVER_DB = 300;

    private final Design base;
    private final Assembly baseAssembly;
    private final Stack stack;
    private final double from;
    private final double to;
    private final double[] baseGrid;
    private final int[] platformSlots;
    private final List<Double> critical = new ArrayList<>();

    /**
     * For a stretch between two frequencies in Hz.
     *
     * @param base     the design that is changed
     * @param assembly its matrices; null when it has no platform
     * @param worstHz where it is worst
     */
    GapMargin(Design base, Assembly assembly, Stack stack, double from, double to, double worstHz) {
        this.base = base;
        this.baseAssembly = assembly;
        this.stack = stack;
        this.from = from;
        this.to = to;
        this.baseGrid = DesignGrid.of(base, baseAssembly, from, to);
        this.platformSlots = IntStream.range(0, base.quantities().size())
            .filter(i -> base.quantities().slot(i).path().startsWith("platform.")).toArray();
        critical.add(worstHz);
    }

    /** Whether a changed design has every number of the platform unchanged. */
    private boolean samePlatform(Design design) {
        for (int i : platformSlots) {
            if (Double.compare(design.quantities().value(i), base.quantities().value(i)) != 0) {
                return false;
            }
        }
        return true;
    }

    private Assembly assembly(Design design) {
        return samePlatform(design) ? baseAssembly : design.platform().map(Assembly::unchecked).orElse(null);
    }

    /** Whether the base's grid serves: more damping only widens what it follows already. */
    private boolean sameResonances(Design design) {
        if (samePlatform(design)) {
            return true;
        }
        return base.platform().isPresent() && design.platform().isPresent()
            && base.platform().get().mass() == design.platform().get().mass()
            && base.platform().get().springs().stream().map(Platform.Spring::stiffness).toList()
                .equals(design.platform().get().springs().stream().map(Platform.Spring::stiffness).toList());
    }

    /** The excess in dB at the remembered frequencies: at most that of the whole stretch. */
    double excessRemembered(Design design) {
        Over over = new Over(design, assembly(design), stack);
        return critical.stream().mapToDouble(over::at).max().orElse(-300);
    }

    /** A point of the excess over the limit: where, in Hz, and how much, in dB. */
    record Peak(double frequencyHz, double overDb) { }

    /** The excess in dB at the worst point of the stretch, which is remembered. */
    double excess(Design design) {
        Peak top = top(design);
        critical.add(0, top.frequencyHz());
        if (critical.size() > REMEMBERED) {
            critical.remove(REMEMBERED);
        }
        return top.overDb();
    }

    /** The worst point of the stretch. */
    Peak top(Design design) {
        Assembly assembly = assembly(design);
        double[] grid = sameResonances(design) ? baseGrid : DesignGrid.of(design, assembly, from, to);
        if (grid.length > MOST_POINTS) {
            return new Peak(grid[0], FAR_OVER_DB);
        }
        Over over = new Over(design, assembly, stack);
        int n = (grid.length + COARSE - 2) / COARSE + 1;
        double[] f = new double[n];
        double[] v = new double[n];
        double most = Double.NEGATIVE_INFINITY;
        for (int i = 0; i < n; i++) {
            f[i] = grid[Math.min(i * COARSE, grid.length - 1)];
            v[i] = over.at(f[i]);
            most = Math.max(most, v[i]);
        }
        Peak top = new Peak(f[0], Double.NEGATIVE_INFINITY);
        for (int i = 0; i < n; i++) {
            boolean local = (i == 0 || v[i] >= v[i - 1]) && (i == n - 1 || v[i] >= v[i + 1]);
            if (local && v[i] > most - 3) {
                Peak peak = peak(over, new Peak(f[i], v[i]), f[Math.max(0, i - 1)], f[Math.min(n - 1, i + 1)]);
                top = peak.overDb() > top.overDb() ? peak : top;
            }
        }
        return top;
    }

    /** The peak on a logarithmic axis around a point that is known. */
    private static Peak peak(Over over, Peak known, double low, double high) {
        BrentMaximum.Found top = BrentMaximum.between(x -> over.at(StrictMath.exp(x)), StrictMath.log(low), StrictMath.log(high), NEAR);
        return top.value() > known.overDb() ? new Peak(StrictMath.exp(top.x()), top.value()) : known;
    }

    /** The excess over the limit in dB of one design's worst axis, or vector. */
    public static final class Over {

        private final ResidualResponse response;
        private final ResidualDemand demand;
        private final Stack stack;

        public Over(Design design, Stack stack) {
            this(design, design.platform().map(Assembly::unchecked).orElse(null), stack);
        }

        public Over(Design design, Assembly assembly, Stack stack) {
            this.response = new ResidualResponse(design, assembly);
            this.demand = new ResidualDemand(design);
            this.stack = stack;
        }

        public double at(double f) {
            response.at(f);
            return demand.overDb(f, response.squares(stack));
        }
    }
}

package quietband.identification.search;

import java.util.stream.IntStream;
import org.hipparchus.exception.MathRuntimeException;
import org.hipparchus.linear.Array2DRowRealMatrix;
import org.hipparchus.linear.ArrayRealVector;
import org.hipparchus.linear.RealMatrix;
import org.hipparchus.linear.RealVector;
import org.hipparchus.optim.nonlinear.vector.leastsquares.LeastSquaresBuilder;
import org.hipparchus.optim.nonlinear.vector.leastsquares.LevenbergMarquardtOptimizer;
import org.hipparchus.optim.nonlinear.vector.leastsquares.ValueAndJacobianFunction;
import org.hipparchus.stat.StatUtils;
import org.hipparchus.util.Pair;

/** Levenberg-Marquardt within bounds: a number at its bound that would go on beyond is set aside. */
final class BoundedLeastSquares {

    private static final int MOST = 80;

    /** Where a search ended: u, half the sum of squares doubled, which numbers sit at a bound. */
    record End(double[] u, double cost, boolean[] atBound) { }

    private final WeightedMisfit misfit;
    private final FreeValues free;

    BoundedLeastSquares(WeightedMisfit misfit, FreeValues free) {
        this.misfit = misfit;
        this.free = free;
    }

    /**
     * Searches from a start.
     *
     * @param held which numbers stay
     */
    End run(double[] start, boolean[] held) {
        boolean[] aside = held.clone();
        double[] u = free.clipped(start);
        for (int round = 0; round <= u.length; round++) {
            int[] which = IntStream.range(0, u.length).filter(i -> !aside[i]).toArray();
            if (which.length == 0) {
                break;
            }
            u = free.clipped(once(u, which));
            if (!setAside(u, which, aside)) {
                break;
            }
        }
        boolean[] bound = new boolean[u.length];
        for (int i = 0; i < bound.length; i++) {
            bound[i] = aside[i] && !held[i];
        }
        return new End(u, StatUtils.sumSq(misfit.at(u)), bound);
    }

    /** Sets aside what sits at a bound and is pushed outwards; whether there was any. */
    private boolean setAside(double[] u, int[] which, boolean[] aside) {
        boolean any = false;
        double[] r = null;
        for (int i : which) {
            FreeValue v = free.get(i);
            boolean low = u[i] <= v.least() + 1e-9;
            boolean high = u[i] >= v.most() - 1e-9;
            if (low || high) {
                r = r == null ? misfit.at(u) : r;
                double[] slope = misfit.slopes(u, new int[] {i})[0];
                double push = 0;
                for (int k = 0; k < r.length; k++) {
                    push += r[k] * slope[k];
                }
                if (low ? push >= 0 : push <= 0) {
                    aside[i] = true;
                    any = true;
                }
            }
        }
        return any;
    }

    private double[] once(double[] start, int[] which) {
        double[] best = start.clone();
        double[] least = {StatUtils.sumSq(misfit.at(start))};
        ValueAndJacobianFunction model = new ValueAndJacobianFunction() {
            @Override
            public Pair<RealVector, RealMatrix> value(RealVector point) {
                return new Pair<>(computeValue(point.toArray()), computeJacobian(point.toArray()));
            }

            @Override
            public RealVector computeValue(double[] point) {
                double[] u = whole(start, which, point);
                double[] r = misfit.at(u);
                double cost = StatUtils.sumSq(r);
                if (cost < least[0]) {
                    least[0] = cost;
                    System.arraycopy(u, 0, best, 0, u.length);
                }
                return new ArrayRealVector(r, false);
            }

            @Override
            public RealMatrix computeJacobian(double[] point) {
                double[][] columns = misfit.slopes(whole(start, which, point), which);
                return new Array2DRowRealMatrix(columns, false).transpose();
            }
        };
        double[] from = IntStream.of(which).mapToDouble(i -> start[i]).toArray();
        try {
            new LevenbergMarquardtOptimizer().withInitialStepBoundFactor(1).optimize(new LeastSquaresBuilder()
                .start(from).model(model).target(new double[misfit.rows()]).lazyEvaluation(true)
                .parameterValidator(p -> new ArrayRealVector(clipped(start, which, p.toArray()), false))
                .maxEvaluations(5 * MOST).maxIterations(MOST).build());
        } catch (MathRuntimeException e) {
            // too many steps, or none that helps at the precision of a double: the best point so far stands
            return best;
        }
        return best;
    }

    private double[] whole(double[] start, int[] which, double[] point) {
        double[] u = start.clone();
        for (int k = 0; k < which.length; k++) {
            u[which[k]] = point[k];
        }
        return u;
    }

    private double[] clipped(double[] start, int[] which, double[] point) {
        double[] u = free.clipped(whole(start, which, point));
        return IntStream.of(which).mapToDouble(i -> u[i]).toArray();
    }
}

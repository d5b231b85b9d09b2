package quietband.lot;

import java.util.Arrays;
import java.util.Optional;
import org.hipparchus.linear.Array2DRowRealMatrix;
import org.hipparchus.linear.EigenDecompositionSymmetric;
import org.hipparchus.linear.LUDecomposition;
import org.hipparchus.linear.RealMatrix;

/**
 * What a unit really is, its reading known: with a lot's distribution (mean m, covariance C) and the reading's covariance U it is normal
 * with mean m + C (C + U)^-1 (x - m) and covariance C - C (C + U)^-1 C (Bayes' rule for normals); without one, mean x and
 * covariance U. One object serves one thread; the matrices are kept while the uncertainties stay the same.
 */
final class UnitTruth {

    /** Keeps C + U invertible where neither scatters. */
    private static final double TINY = 1e-14;

    private final Optional<ComponentDistribution> fitted;
    private final SortRule.By by;
    private final double[] kept = {Double.NaN, 0, 0};
    private double[] spread;
    private double[][] left = new double[3][3];
    private RealMatrix gain;
    private RealMatrix axes;

    UnitTruth(Optional<ComponentDistribution> fitted, SortRule.By by) {
        this.fitted = fitted;
        this.by = by;
    }

    /**
     * Chance that the unit is within a limit.
     *
     * @param reading ppb/g (length 3)
     * @param sigma   its standard uncertainties, ppb/g (length 3)
     */
    double within(double[] reading, double[] sigma, double limit) {
        if (!Arrays.equals(sigma, kept)) {
            prepare(sigma);
        }
        double[] mean = reading;
        if (fitted.isPresent()) {
            double[] m = fitted.get().mean();
            double[] shift = gain.operate(new double[] {reading[0] - m[0], reading[1] - m[1], reading[2] - m[2]});
            mean = new double[] {m[0] + shift[0], m[1] + shift[1], m[2] + shift[2]};
        }
        return by == SortRule.By.VECTOR ? new LengthDistribution(axes.preMultiply(mean), spread, NormalQuadrature.QUICK).within(limit)
            : new WorstAxisDistribution(mean, left, NormalQuadrature.QUICK).within(limit);
    }

    private void prepare(double[] sigma) {
        System.arraycopy(sigma, 0, kept, 0, 3);
        left = new double[3][3];
        for (int i = 0; i < 3; i++) {
            left[i][i] = sigma[i] * sigma[i];
        }
        fitted.ifPresent(l -> {
            RealMatrix c = new Array2DRowRealMatrix(l.covariance());
            RealMatrix sum = c.add(new Array2DRowRealMatrix(left));
            double trace = TINY * sum.getTrace();
            for (int i = 0; i < 3; i++) {
                sum.addToEntry(i, i, trace);
            }
            gain = c.multiply(new LUDecomposition(sum, 1e-300).getSolver().getInverse());
            RealMatrix rest = c.subtract(gain.multiply(c));
            left = rest.add(rest.transpose()).scalarMultiply(0.5).getData();
            for (int i = 0; i < 3; i++) {
                left[i][i] = Math.max(0, left[i][i]);
            }
        });
        EigenDecompositionSymmetric eigen = new EigenDecompositionSymmetric(new Array2DRowRealMatrix(left));
        axes = eigen.getV();
        spread = Arrays.stream(eigen.getEigenvalues()).map(v -> Math.sqrt(Math.max(0, v))).toArray();
    }
}

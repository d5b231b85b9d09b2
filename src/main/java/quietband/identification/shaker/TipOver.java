package quietband.identification.shaker;

import java.util.List;
import org.hipparchus.distribution.continuous.TDistribution;
import org.hipparchus.linear.Array2DRowRealMatrix;
import org.hipparchus.linear.ArrayRealVector;
import org.hipparchus.linear.LUDecomposition;
import org.hipparchus.linear.RealMatrix;

/**
 * Sensitivity along an axis from turning it over in gravity: f = c + d t + s f0 G, s = +1 with the axis up (it feels +1 g),
 * so that f_up - f_down = 2 f0 G. The drift d is fitted where times are given and at least four readings stand.
 *
 * @param readings   how many
 * @param perG       G, 1/g, signed
 * @param sigmaPerG  standard uncertainty, 1/g; NaN without readings to spare
 * @param halfPerG   half of the 95 % interval, 1/g; NaN without
 * @param driftPerS  d/f0, 1/s; NaN when not fitted
 */
public record TipOver(int readings, double perG, double sigmaPerG, double halfPerG, double driftPerS) {

    /**
     * Works it out.
     *
     * @param list      2 g tip-over readings of one axis
     * @param carrierHz nominal frequency they were read at, Hz
     * @return null when one of the two senses is missing
     */
    static TipOver of(List<ShakerReading> list, double carrierHz) {
        if (list.stream().noneMatch(r -> r.sense() > 0) || list.stream().noneMatch(r -> r.sense() < 0)) {
            return null;
        }
        int n = list.size();
        boolean drift = n >= 4 && list.stream().noneMatch(r -> Double.isNaN(r.time()));
        int columns = drift ? 3 : 2;
        double middle = drift ? list.stream().mapToDouble(ShakerReading::time).average().orElse(0) : 0;
        RealMatrix a = new Array2DRowRealMatrix(n, columns);
        double[] y = new double[n];
        for (int i = 0; i < n; i++) {
            ShakerReading r = list.get(i);
            a.setEntry(i, 0, 1);
            a.setEntry(i, 1, r.sense());
            if (drift) {
                a.setEntry(i, 2, r.time() - middle);
            }
            y[i] = r.outputHz() / carrierHz - 1;
        }
        LUDecomposition normal = new LUDecomposition(a.transposeMultiply(a), 1e-12);
        if (!normal.getSolver().isNonSingular()) {
            return null;
        }
        RealMatrix inverse = normal.getSolver().getInverse();
        double[] p = inverse.operate(a.transpose().operate(y));
        double[] left = new ArrayRealVector(y, false).subtract(new ArrayRealVector(a.operate(p), false)).toArray();
        double ssr = 0;
        for (double d : left) {
            ssr += d * d;
        }
        int spare = n - columns;
        double sigma = spare > 0 ? Math.sqrt(ssr / spare * inverse.getEntry(1, 1)) : Double.NaN;
        double half = spare > 0 ? sigma * new TDistribution(spare).inverseCumulativeProbability(0.975) : Double.NaN;
        return new TipOver(n, p[1], sigma, half, drift ? p[2] : Double.NaN);
    }
}

package quietband.tuning.springs;

import org.hipparchus.linear.Array2DRowRealMatrix;
import org.hipparchus.linear.ArrayRealVector;
import org.hipparchus.linear.LUDecomposition;
import org.hipparchus.linear.RealMatrix;
import org.hipparchus.util.MathArrays;
import quietband.model.Axis;
import quietband.model.Design;
import quietband.model.Vec;
import quietband.platform.Assembly;
import quietband.platform.AxisFrequencies;
import quietband.tuning.parts.PlatformNumbers;

/**
 * Finds by how much the rates along each principal axis of all springs must be multiplied so that the natural frequencies of the
 * three axes are as wanted: damped Newton steps on the logarithms of both, whose relation is a straight line where
 * nothing couples.
 *
 * @param design   with the rates found
 * @param factors  on the rates along the springs' principal axes
 * @param cornerHz reached, Hz
 * @param off      largest relative error of the three natural frequencies
 */
record NaturalFrequencySolver(Design design, Vec factors, Vec cornerHz, double off) {

    private static final int MOST_STEPS = 60;
    private static final double CLOSE = 1e-11;
    private static final double PROBE = 1e-5;
    private static final double RIDGE = 1e-7;

    /**
     * Solves.
     *
     * @param start  a design with a platform
     * @param wanted natural frequencies, Hz, above 0
     */
    static NaturalFrequencySolver solve(Design start, Vec wanted) {
        Vec now = AxisFrequencies.hz(new Assembly(start.platform().orElseThrow()));
        double[] x = new double[3];
        for (int i = 0; i < 3; i++) {
            x[i] = 2 * StrictMath.log(wanted.get(i) / now.get(i));
        }
        NaturalFrequencySolver best = at(start, x, wanted);
        double damping = 0;
        for (int step = 0; step < MOST_STEPS && best.off > CLOSE; step++) {
            double[] next = MathArrays.ebeAdd(x, best.move(start, x, wanted, damping));
            NaturalFrequencySolver found = at(start, next, wanted);
            if (found.off < best.off) {
                best = found;
                x = next;
                damping /= 4;
            } else {
                damping = damping == 0 ? 1e-3 : damping * 8;
            }
        }
        return best;
    }

    private static NaturalFrequencySolver at(Design start, double[] x, Vec wanted) {
        Vec factors = Vec.of(x).map(StrictMath::exp);
        PlatformNumbers numbers = new PlatformNumbers(start);
        for (int i = 0; i < 3; i++) {
            numbers.scale("stiffness", "", i, factors.get(i));
        }
        Design design = numbers.design();
        Vec reached = AxisFrequencies.hz(new Assembly(design.platform().orElseThrow()));
        double off = 0;
        for (Axis a : Axis.ALL) {
            off = Math.max(off, Math.abs(reached.get(a) / wanted.get(a) - 1));
        }
        return new NaturalFrequencySolver(design, factors, reached, off);
    }

    private double[] logs(Vec wanted) {
        return Vec.perAxis(a -> StrictMath.log(cornerHz.get(a) / wanted.get(a))).toArray();
    }

    private double[] move(Design start, double[] x, Vec wanted, double damping) {
        double[] here = logs(wanted);
        RealMatrix j = new Array2DRowRealMatrix(3, 3);
        for (int c = 0; c < 3; c++) {
            double[] moved = x.clone();
            moved[c] += PROBE;
            double[] there = at(start, moved, wanted).logs(wanted);
            j.setColumn(c, MathArrays.scale(1 / PROBE, MathArrays.ebeSubtract(there, here)));
        }
        RealMatrix square = j.transposeMultiply(j);
        for (int i = 0; i < 3; i++) {
            square.addToEntry(i, i, damping + RIDGE);
        }
        double[] right = j.preMultiply(here);
        double[] move = new LUDecomposition(square).getSolver().solve(new ArrayRealVector(right)).toArray();
        for (int i = 0; i < 3; i++) {
            move[i] = Math.max(-1, Math.min(1, -move[i]));
        }
        return move;
    }
}

package quietband.filter.goal;

import java.util.List;
import org.hipparchus.complex.Complex;
import quietband.filter.ResidualTerms;

/**
 * The unknowns of three filters in one row: those of x first, then y, then z, and behind them one number for the goal. The
 * rows that follow hold what the residual depends on: only unknowns that the band sees.
 */
public final class FilterUnknowns {

    private final List<FilterBasis> bases;
    private final int[] offset = new int[4];
    private final int[] seenIndex;
    private final int[] seenIndexWithGoal;
    private final int[] seenFrom = new int[4];
    private final double[][] re = new double[3][];
    private final double[][] im = new double[3][];

    public FilterUnknowns(List<FilterBasis> bases) {
        this.bases = bases;
        for (int i = 0; i < 3; i++) {
            offset[i + 1] = offset[i] + bases.get(i).size();
            seenFrom[i + 1] = seenFrom[i] + bases.get(i).seen();
            re[i] = new double[bases.get(i).seen()];
            im[i] = new double[bases.get(i).seen()];
        }
        seenIndex = new int[seenFrom[3]];
        seenIndexWithGoal = new int[seenFrom[3] + 1];
        for (int i = 0; i < 3; i++) {
            for (int k = 0; k < bases.get(i).seen(); k++) {
                seenIndex[seenFrom[i] + k] = offset[i] + k;
                seenIndexWithGoal[seenFrom[i] + k] = offset[i] + k;
            }
        }
        seenIndexWithGoal[seenFrom[3]] = offset[3];
    }

    public FilterBasis basis(int axis) {
        return bases.get(axis);
    }

    /** Number of all unknowns of the filters; the goal's own number has this index. */
    public int goal() {
        return offset[3];
    }

    /** Where an axis begins. */
    int from(int axis) {
        return offset[axis];
    }

    /** Where an axis begins among the unknowns that the band sees. */
    int seenFrom(int axis) {
        return seenFrom[axis];
    }

    /** Numbers of the unknowns the band sees, rising; not to be modified. */
    int[] seen() {
        return seenIndex;
    }

    /** The same with the goal's number behind. */
    int[] seenWithGoal() {
        return seenIndexWithGoal;
    }

    /** Unknowns of one axis out of all. */
    public double[] of(int axis, double[] x) {
        double[] part = new double[bases.get(axis).size()];
        System.arraycopy(x, offset[axis], part, 0, part.length);
        return part;
    }

    /** Works out the responses of the seen unknowns at f in Hz, for the calls that follow. */
    void at(double f) {
        for (int i = 0; i < 3; i++) {
            if (i > 0 && bases.get(i) == bases.get(i - 1)) {
                System.arraycopy(re[i - 1], 0, re[i], 0, re[i].length);
                System.arraycopy(im[i - 1], 0, im[i], 0, im[i].length);
            } else {
                bases.get(i).at(f, re[i], im[i]);
            }
        }
    }

    /**
     * Writes what y_j takes per seen unknown, a_ij psi_ik, times a factor: real and imaginary row (modified from the start).
     */
    void rows(ResidualTerms.At terms, int drive, double factor, double[] intoRe, double[] intoIm) {
        for (int i = 0; i < 3; i++) {
            double ar = terms.aRe()[3 * i + drive] * factor;
            double ai = terms.aIm()[3 * i + drive] * factor;
            int at = seenFrom[i];
            for (int k = 0; k < re[i].length; k++) {
                intoRe[at + k] = ar * re[i][k] - ai * im[i][k];
                intoIm[at + k] = ar * im[i][k] + ai * re[i][k];
            }
        }
    }

    /** Writes an axis's F per seen unknown, times a factor; everything else in the rows becomes 0. */
    void filterRows(int axis, double factor, double[] intoRe, double[] intoIm) {
        java.util.Arrays.fill(intoRe, 0);
        java.util.Arrays.fill(intoIm, 0);
        for (int k = 0; k < re[axis].length; k++) {
            intoRe[seenFrom[axis] + k] = factor * re[axis][k];
            intoIm[seenFrom[axis] + k] = factor * im[axis][k];
        }
    }

    /** F_x, F_y, F_z at the frequency of the last {@link #at}. */
    Complex[] filters(double[] x) {
        Complex[] filters = new Complex[3];
        for (int i = 0; i < 3; i++) {
            double sr = 0;
            double si = 0;
            for (int k = 0; k < re[i].length; k++) {
                double g = x[offset[i] + k];
                sr += g * re[i][k];
                si += g * im[i][k];
            }
            filters[i] = new Complex(sr, si);
        }
        return filters;
    }
}

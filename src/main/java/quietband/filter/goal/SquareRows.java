package quietband.filter.goal;

import java.util.Arrays;
import quietband.numerics.NormalEquations;
import quietband.numerics.SecondOrderCone;

/**
 * A sum of squares over some of the unknowns, |R x - c|^2.
 *
 * @param rows  of R, each with its c behind
 * @param index which unknowns, rising
 */
record SquareRows(double[][] rows, int[] index) {

    /** As few rows as there are unknowns that stand for many, and one for what they leave at best. */
    static SquareRows of(NormalEquations moments, double rest, int[] index) {
        double[][] factor = moments.factor();
        double[][] rows = Arrays.copyOf(factor, factor.length + 1);
        rows[factor.length] = new double[index.length + 1];
        rows[factor.length][index.length] = rest;
        return new SquareRows(rows, index);
    }

    /** Root of what is left at best. */
    double rest() {
        return rows[rows.length - 1][index.length];
    }

    /** The sum at all unknowns. */
    double at(double[] x) {
        double sum = 0;
        for (double[] row : rows) {
            double s = row[index.length];
            for (int k = 0; k < index.length; k++) {
                s -= row[k] * x[index[k]];
            }
            sum += s * s;
        }
        return sum;
    }

    /** Root of the sum at most a room above 0. */
    SecondOrderCone within(double room) {
        SecondOrderCone cone = cone(index, room);
        cone.bound()[0] = 1;
        return cone;
    }

    /** Root of the sum over a unit at most the goal's number. */
    SecondOrderCone least(FilterUnknowns unknowns, double unit) {
        SecondOrderCone cone = cone(unknowns.seenWithGoal(), unit);
        cone.g()[0][index.length] = -1;
        return cone;
    }

    private SecondOrderCone cone(int[] over, double unit) {
        double[][] g = new double[rows.length + 1][over.length];
        double[] bound = new double[rows.length + 1];
        for (int r = 0; r < rows.length; r++) {
            for (int k = 0; k < index.length; k++) {
                g[r + 1][k] = rows[r][k] / unit;
            }
            bound[r + 1] = rows[r][index.length] / unit;
        }
        return new SecondOrderCone(over, g, bound);
    }
}

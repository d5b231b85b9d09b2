package quietband.filter.goal;

import java.util.List;
import quietband.filter.ResidualTerms;

/** The residual at fixed frequencies as rows over the unknowns that the band sees, kept for many looks. */
final class BandRows {

    private final FilterUnknowns unknowns;
    private final double[] frequency;
    private final double[][][] rows;
    private final double[][] c;

    /** Works them out at frequencies in Hz (kept) with the terms at each. */
    BandRows(FilterUnknowns unknowns, List<ResidualTerms.At> terms, double[] frequency) {
        this.unknowns = unknowns;
        this.frequency = frequency;
        int n = unknowns.seen().length;
        rows = new double[frequency.length][6][n];
        c = new double[frequency.length][6];
        for (int at = 0; at < frequency.length; at++) {
            ResidualTerms.At t = terms.get(at);
            unknowns.at(frequency[at]);
            for (int j = 0; j < 3; j++) {
                unknowns.rows(t, j, 1, rows[at][2 * j], rows[at][2 * j + 1]);
                c[at][2 * j] = t.cRe()[j];
                c[at][2 * j + 1] = t.cIm()[j];
            }
        }
    }

    int size() {
        return frequency.length;
    }

    double frequency(int at) {
        return frequency[at];
    }

    /** What stands without any cancellation: Re and Im of y_x, y_y, y_z (length 6); not to be modified. */
    double[] plain(int at) {
        return c[at];
    }

    /** Rows that are taken from it: Re and Im for x, y, z (6 rows over the seen unknowns); not to be modified. */
    double[][] rows(int at) {
        return rows[at];
    }

    /** |y_j|^2 at some unknowns. */
    double squared(int at, int drive, double[] x) {
        double re = part(at, 2 * drive, x);
        double im = part(at, 2 * drive + 1, x);
        return re * re + im * im;
    }

    private double part(int at, int row, double[] x) {
        int[] index = unknowns.seen();
        double[] r = rows[at][row];
        double sum = c[at][row];
        for (int k = 0; k < r.length; k++) {
            sum -= r[k] * x[index[k]];
        }
        return sum;
    }
}

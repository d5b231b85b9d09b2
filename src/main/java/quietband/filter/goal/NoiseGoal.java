package quietband.filter.goal;

import java.util.ArrayList;
import java.util.BitSet;
import java.util.List;
import quietband.demand.Decibels;
import quietband.demand.PhaseNoise;
import quietband.filter.NoiseTerms;
import quietband.filter.ResidualTerms;
import quietband.model.Axis;
import quietband.numerics.ConeProgram;
import quietband.numerics.NormalEquations;
import quietband.numerics.SecondOrderCone;
import quietband.oscillator.Sidebands;

/**
 * Least integrated phase noise of the worst row, sensor noise included, under the condition that no row is above what there
 * is without cancellation by more than 0.01 dB. t is over the least there is without bounds and condition.
 */
public final class NoiseGoal implements DesignGoal {

    /** Most a row may rise over no cancellation, dB. */
    public static final double MOST_DB = 0.01;

    private static final double NEAR = 5e-4;
    // between the grid's points the condition may be a little worse
    private static final double AIM_DB = 0.009;
    private static final int START = 50;

    private final FilterUnknowns unknowns;
    private final BandRows rows;
    private final List<PhaseNoise.Row> lines;
    private final List<double[][]> factor = new ArrayList<>();
    private final double[][] without;
    private final double[][] sensor;
    private final double[][] vibration;
    private final double[] fixed;
    private final boolean[] asked;
    private final BitSet active = new BitSet();
    private double unit = 1;

    /**
     * Integrates between two frequencies and holds the condition in a band.
     *
     * @param grid rising, Hz, over both
     * @param from lower and upper end of the integral, then of the band
     */
    public NoiseGoal(FilterUnknowns unknowns, ResidualTerms residual, NoiseTerms terms, double[] grid, double[] from) {
        this.unknowns = unknowns;
        this.rows = new BandRows(unknowns, residual, grid);
        this.lines = terms.rows();
        int n = grid.length;
        without = new double[lines.size()][n];
        sensor = new double[n][3];
        vibration = new double[n][3];
        fixed = new double[n];
        asked = new boolean[n];
        double[] squared = new double[3];
        for (int at = 0; at < n; at++) {
            double f = grid[at];
            fixed[at] = terms.fixed(f);
            asked[at] = f >= from[2] * (1 - 1e-12) && f <= from[3] * (1 + 1e-12);
            for (int i = 0; i < 3; i++) {
                double[] c = rows.plain(at);
                squared[i] = c[2 * i] * c[2 * i] + c[2 * i + 1] * c[2 * i + 1];
                sensor[at][i] = terms.sensor(i, f);
                vibration[at][i] = terms.vibration(Axis.ALL.get(i), f);
            }
            for (int k = 0; k < lines.size(); k++) {
                without[k][at] = terms.without(lines.get(k), f, squared);
            }
        }
        for (int k = 0; k < lines.size(); k++) {
            factor.add(factor(k, from[0], from[1]));
        }
        int step = Math.max(1, n / START);
        for (int at = 0; at < n; at += step) {
            active.set(at);
        }
        double least = 0;
        for (double[][] r : factor) {
            least = Math.max(least, r[r.length - 1][r[0].length - 1]);
        }
        unit = least > 0 ? least : value(new double[unknowns.goal() + 1]);
    }

    private double[][] factor(int k, double low, double high) {
        int n = unknowns.seen().length;
        NormalEquations moments = new NormalEquations(n);
        double[] re = new double[n];
        double[] im = new double[n];
        for (int at = 0; at < rows.size(); at++) {
            double df = width(at, low, high);
            if (df <= 0) {
                continue;
            }
            unknowns.at(rows.frequency(at));
            for (Axis axis : lines.get(k).axes()) {
                double s = Sidebands.jitterRad(df * vibration[at][axis.ordinal()]);
                for (int part = 0; part < 2; part++) {
                    double[] row = rows.rows(at)[2 * axis.ordinal() + part];
                    for (int m = 0; m < n; m++) {
                        re[m] = s * row[m];
                    }
                    moments.add(re, s * rows.plain(at)[2 * axis.ordinal() + part]);
                }
            }
            for (int i = 0; i < 3; i++) {
                unknowns.filterRows(i, Sidebands.jitterRad(df * sensor[at][i]), re, im);
                moments.add(re, 0);
                moments.add(im, 0);
            }
        }
        double[][] r = moments.factor();
        double rest = moments.norm(moments.least(0));
        double[][] whole = java.util.Arrays.copyOf(r, n + 1);
        whole[n] = new double[n + 1];
        whole[n][n] = rest;
        return whole;
    }

    /** Half the distance to the neighbours within the integral's ends: the trapezoid's weight. */
    private double width(int at, double low, double high) {
        double left = Math.max(low, at == 0 ? low : (rows.frequency(at - 1) + rows.frequency(at)) / 2);
        double right = Math.min(high, at == rows.size() - 1 ? high : (rows.frequency(at + 1) + rows.frequency(at)) / 2);
        return right - left;
    }

    @Override
    public void addTo(ConeProgram program) {
        int[] index = unknowns.seenWithGoal();
        int n = index.length - 1;
        for (double[][] r : factor) {
            double[][] g = new double[n + 2][n + 1];
            double[] bound = new double[n + 2];
            g[0][n] = -1;
            for (int row = 0; row <= n; row++) {
                for (int m = 0; m < n; m++) {
                    g[row + 1][m] = r[row][m] / unit;
                }
                bound[row + 1] = r[row][n] / unit;
            }
            program.add(new SecondOrderCone(index, g, bound));
        }
        active.stream().filter(at -> asked[at]).forEach(at -> {
            for (int k = 0; k < lines.size(); k++) {
                double room = room(at, k);
                if (room > 0) {
                    program.add(condition(at, k, Math.sqrt(room)));
                }
            }
        });
    }

    /** What vibration and sensors may add to a row; not above 0 where the port alone exceeds. */
    private double room(int at, int k) {
        return without[k][at] * Decibels.power(AIM_DB) - fixed[at];
    }

    private SecondOrderCone condition(int at, int k, double room) {
        int n = unknowns.seen().length;
        List<Axis> axes = lines.get(k).axes();
        double[][] g = new double[1 + 2 * axes.size() + 6][n];
        double[] bound = new double[g.length];
        bound[0] = 1;
        int row = 1;
        for (Axis axis : axes) {
            double s = Math.sqrt(vibration[at][axis.ordinal()]) / room;
            for (int part = 0; part < 2; part++) {
                double[] from = rows.rows(at)[2 * axis.ordinal() + part];
                for (int m = 0; m < n; m++) {
                    g[row][m] = s * from[m];
                }
                bound[row++] = s * rows.plain(at)[2 * axis.ordinal() + part];
            }
        }
        unknowns.at(rows.frequency(at));
        for (int i = 0; i < 3; i++) {
            unknowns.filterRows(i, Math.sqrt(sensor[at][i]) / room, g[row], g[row + 1]);
            row += 2;
        }
        return new SecondOrderCone(unknowns.seen(), g, bound);
    }

    private double total(int at, int k, double[] x) {
        double sum = fixed[at];
        for (Axis axis : lines.get(k).axes()) {
            sum += vibration[at][axis.ordinal()] * rows.squared(at, axis.ordinal(), x);
        }
        double[] re = new double[3];
        double[] im = new double[3];
        unknowns.at(rows.frequency(at));
        unknowns.filters(x, re, im);
        for (int i = 0; i < 3; i++) {
            sum += sensor[at][i] * (re[i] * re[i] + im[i] * im[i]);
        }
        return sum;
    }

    @Override
    public boolean refine(double[] x) {
        boolean more = false;
        double most = Decibels.power(AIM_DB + 2e-4);
        for (int at = 0; at < rows.size(); at++) {
            for (int k = 0; k < lines.size() && asked[at]; k++) {
                if (!active.get(at) && room(at, k) > 0 && total(at, k, x) > most * without[k][at]) {
                    active.set(at);
                    more = true;
                }
            }
        }
        return more;
    }

    @Override
    public double value(double[] x) {
        int[] index = unknowns.seen();
        double most = 0;
        for (double[][] r : factor) {
            double sum = 0;
            for (double[] row : r) {
                double s = row[index.length];
                for (int m = 0; m < index.length; m++) {
                    s -= row[m] * x[index[m]];
                }
                sum += s * s;
            }
            most = Math.max(most, sum);
        }
        return Math.sqrt(most) / unit;
    }

    @Override
    public double slack() {
        return NEAR;
    }
}

package quietband.filter.goal;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.BitSet;
import java.util.List;
import quietband.demand.Decibels;
import quietband.filter.NoiseGrid;
import quietband.filter.NoiseTerms;
import quietband.filter.ResidualTerms;
import quietband.model.Axis;
import quietband.model.Requirement;
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
    private final NoiseGrid noise;
    private final List<SquareRows> sums = new ArrayList<>();
    private final BitSet active = new BitSet();
    private double unit = 1;

    /**
     * Integrates over the jitter's band and holds the condition in the requirement's own.
     *
     * @param grid rising, Hz, over both
     */
    public NoiseGoal(FilterUnknowns unknowns, ResidualTerms residual, NoiseTerms terms, double[] grid, Requirement r) {
        this.unknowns = unknowns;
        List<ResidualTerms.At> at = residual.on(grid);
        this.rows = new BandRows(unknowns, at, grid);
        this.noise = new NoiseGrid(terms, grid, at, r);
        for (int k = 0; k < noise.rows(); k++) {
            sums.add(sum(k));
        }
        int step = Math.max(1, grid.length / START);
        for (int n = 0; n < grid.length; n += step) {
            active.set(n);
        }
        double least = sums.stream().mapToDouble(SquareRows::rest).max().orElse(0);
        unit = least > 0 ? least : value(new double[unknowns.goal() + 1]);
    }

    private SquareRows sum(int k) {
        int n = unknowns.seen().length;
        NormalEquations moments = new NormalEquations(n);
        double[] re = new double[n];
        double[] im = new double[n];
        for (int at = 0; at < rows.size(); at++) {
            double df = noise.width(at);
            if (df <= 0) {
                continue;
            }
            unknowns.at(rows.frequency(at));
            for (Axis axis : noise.axes(k)) {
                double s = Sidebands.jitterRad(df * noise.vibration(at, axis));
                for (int part = 0; part < 2; part++) {
                    double[] row = rows.rows(at)[2 * axis.ordinal() + part];
                    for (int m = 0; m < n; m++) {
                        re[m] = s * row[m];
                    }
                    moments.add(re, s * rows.plain(at)[2 * axis.ordinal() + part]);
                }
            }
            for (int i = 0; i < 3; i++) {
                unknowns.filterRows(i, Sidebands.jitterRad(df * noise.sensor(at, i)), re, im);
                moments.add(re, 0);
                moments.add(im, 0);
            }
        }
        return SquareRows.of(moments, moments.norm(moments.least(0)), unknowns.seen());
    }

    @Override
    public void addTo(ConeProgram program) {
        sums.forEach(sum -> program.add(sum.least(unknowns, unit)));
        active.stream().filter(noise::asked).forEach(at -> {
            for (int k = 0; k < noise.rows(); k++) {
                double room = room(at, k);
                if (room > 0) {
                    program.add(condition(at, k, Math.sqrt(room)));
                }
            }
        });
    }

    /** What vibration and sensors may add to a row; not above 0 where the port alone exceeds. */
    private double room(int at, int k) {
        return noise.without(at, k) * Decibels.power(AIM_DB) - noise.fixed(at);
    }

    private SecondOrderCone condition(int at, int k, double room) {
        int n = unknowns.seen().length;
        List<Axis> axes = noise.axes(k);
        double[][] g = new double[1 + 2 * axes.size() + 6][n];
        double[] bound = new double[g.length];
        bound[0] = 1;
        int row = 1;
        for (Axis axis : axes) {
            double s = Math.sqrt(noise.vibration(at, axis)) / room;
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
            unknowns.filterRows(i, Math.sqrt(noise.sensor(at, i)) / room, g[row], g[row + 1]);
            row += 2;
        }
        return new SecondOrderCone(unknowns.seen(), g, bound);
    }

    private double total(int at, int k, double[] x) {
        unknowns.at(rows.frequency(at));
        double[] filter = Arrays.stream(unknowns.filters(x))
            .mapToDouble(c -> c.getReal() * c.getReal() + c.getImaginary() * c.getImaginary()).toArray();
        return noise.total(at, k, new double[] {rows.squared(at, 0, x), rows.squared(at, 1, x), rows.squared(at, 2, x)}, filter);
    }

    @Override
    public boolean refine(double[] x) {
        boolean more = false;
        double most = Decibels.power(AIM_DB + 2e-4);
        for (int at = 0; at < rows.size(); at++) {
            for (int k = 0; k < noise.rows() && noise.asked(at); k++) {
                if (!active.get(at) && room(at, k) > 0 && total(at, k, x) > most * noise.without(at, k)) {
                    active.set(at);
                    more = true;
                }
            }
        }
        return more;
    }

    @Override
    public double value(double[] x) {
        return Math.sqrt(sums.stream().mapToDouble(sum -> sum.at(x)).max().orElse(0)) / unit;
    }

    @Override
    public double slack() {
        return NEAR;
    }
}

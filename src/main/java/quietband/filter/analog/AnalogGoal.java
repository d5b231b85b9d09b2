package quietband.filter.analog;

import java.util.List;
import quietband.demand.Decibels;
import quietband.demand.ResidualDemand;
import quietband.filter.AnalogNetwork;
import quietband.filter.FilterGoal;
import quietband.filter.FilterTask;
import quietband.filter.NoiseGrid;
import quietband.filter.NoiseTerms;
import quietband.filter.PathResponse;
import quietband.filter.ResidualTerms;
import quietband.filter.goal.NoiseGoal;
import quietband.oscillator.Sidebands;
import quietband.platform.Assembly;
import quietband.response.DesignGrid;

/**
 * The goal of a filter's design as a number for three networks, one of which is tried while the other two stand: root of the sum of
 * squares (1/g), largest ratio to the limit, or integrated phase noise (rad) with a price on being above no cancellation.
 */
public final class AnalogGoal {

    private static final double PRICE_PER_DB = 100;
    // of a goal that only the worst axis decides, a little of each axis is looked at too: else the other two have no direction
    private static final double EACH = 0.02;

    private final FilterGoal goal;
    private final double[] f;
    private final List<ResidualTerms.At> terms;
    private final ResidualDemand demand;
    private final double[][] limit;
    private final double[][] rest;
    private final double[] out = new double[2];
    private final double[][] others = new double[3][];
    private final Noise noise;
    private int axis;

    /** For a task; its count is not looked at. */
    public AnalogGoal(FilterTask task) {
        goal = task.goal();
        var design = task.design();
        Assembly assembly = design.platform().map(Assembly::new).orElse(null);
        double[] ends = task.ends();
        f = goal == FilterGoal.FLAT ? task.grid().clone() : DesignGrid.of(design, assembly, ends[0], ends[1]);
        PathResponse path = PathResponse.of(design);
        terms = new ResidualTerms(design, assembly, path).on(f);
        demand = new ResidualDemand(design, Double.POSITIVE_INFINITY);
        rest = new double[f.length][6];
        limit = new double[f.length][3];
        noise = goal == FilterGoal.NOISE
            ? new Noise(new NoiseGrid(new NoiseTerms(design, path, false), f, terms, design.requirement())) : null;
        for (int n = 0; n < f.length; n++) {
            for (int j = 0; j < 3; j++) {
                limit[n][j] = demand.limit(j, f[n]);
            }
        }
    }

    /** Takes two networks as given while the one of an axis is tried. */
    public void hold(int tried, List<AnalogNetwork> networks) {
        axis = tried;
        for (int n = 0; n < f.length; n++) {
            for (int j = 0; j < 3; j++) {
                rest[n][2 * j] = terms.get(n).cRe()[j];
                rest[n][2 * j + 1] = terms.get(n).cIm()[j];
            }
        }
        for (int i = 0; i < 3; i++) {
            others[i] = new double[f.length];
            for (int n = 0; n < f.length && i != axis; n++) {
                networks.get(i).write(2 * Math.PI * f[n], out);
                others[i][n] = out[0] * out[0] + out[1] * out[1];
                for (int j = 0; j < 3; j++) {
                    take(rest[n], j, terms.get(n), 3 * i + j);
                }
            }
        }
    }

    /** y_j less a F with F in {@code out}. */
    private void take(double[] y, int j, ResidualTerms.At at, int e) {
        y[2 * j] -= at.aRe()[e] * out[0] - at.aIm()[e] * out[1];
        y[2 * j + 1] -= at.aRe()[e] * out[1] + at.aIm()[e] * out[0];
    }

    /** What the search makes small, with a network on the axis that is tried; anything above {@code best} may come back as infinite. */
    public double value(AnalogNetwork network, double best) {
        return combined(network, best, EACH);
    }

    /** The goal itself. */
    public double goal(AnalogNetwork network) {
        return combined(network, Double.POSITIVE_INFINITY, 0);
    }

    private double combined(AnalogNetwork network, double best, double each) {
        double[] y = new double[6];
        double[] ratio = new double[demand.rows()];
        double[] square = new double[3];
        double sum = 0;
        if (noise != null) {
            noise.start();
        }
        for (int n = 0; n < f.length; n++) {
            network.write(2 * Math.PI * f[n], out);
            System.arraycopy(rest[n], 0, y, 0, 6);
            for (int j = 0; j < 3; j++) {
                take(y, j, terms.get(n), 3 * axis + j);
                square[j] = y[2 * j] * y[2 * j] + y[2 * j + 1] * y[2 * j + 1];
                sum += square[j];
            }
            for (int row = 0; row < ratio.length; row++) {
                ratio[row] = Math.max(ratio[row], demand.perG(row, square) / limit[n][row]);
            }
            if (goal == FilterGoal.FLAT && sum > best * best || goal == FilterGoal.LIMIT && worst(ratio, each) > best) {
                return Double.POSITIVE_INFINITY;
            }
            if (noise != null) {
                others[axis][n] = out[0] * out[0] + out[1] * out[1];
                noise.add(n, square, new double[] {others[0][n], others[1][n], others[2][n]});
            }
        }
        return noise != null ? noise.value(each) : goal == FilterGoal.FLAT ? Math.sqrt(sum) : worst(ratio, each);
    }

    private static double worst(double[] of, double each) {
        double most = 0;
        double all = 0;
        for (double v : of) {
            most = Math.max(most, v);
            all += v;
        }
        return most + each * all;
    }

    /** Integrated phase noise of the worst row. */
    private static final class Noise {

        private final NoiseGrid grid;
        private final double[] sum;
        private double over;

        Noise(NoiseGrid grid) {
            this.grid = grid;
            sum = new double[grid.rows()];
        }

        void start() {
            java.util.Arrays.fill(sum, 0);
            over = 0;
        }

        void add(int n, double[] residual, double[] filter) {
            for (int k = 0; k < sum.length; k++) {
                double total = grid.total(n, k, residual, filter);
                sum[k] += grid.width(n) * total;
                if (grid.asked(n)) {
                    over = Math.max(over, Decibels.ofPower(total / grid.without(n, k)) - NoiseGoal.MOST_DB);
                }
            }
        }

        double value(double each) {
            double[] rms = java.util.Arrays.stream(sum).map(Sidebands::jitterRad).toArray();
            return worst(rms, each) * (1 + PRICE_PER_DB * Math.max(0, over));
        }
    }
}

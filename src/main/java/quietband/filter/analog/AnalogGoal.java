package quietband.filter.analog;

import java.util.List;
import java.util.Optional;
import quietband.demand.Decibels;
import quietband.demand.PhaseNoise;
import quietband.demand.ResidualDemand;
import quietband.filter.AnalogNetwork;
import quietband.filter.FilterGoal;
import quietband.filter.FilterTask;
import quietband.filter.NoiseTerms;
import quietband.filter.PathResponse;
import quietband.filter.ResidualTerms;
import quietband.filter.goal.NoiseGoal;
import quietband.model.Axis;
import quietband.model.Requirement;
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
    private final double[][] c;
    private final double[][] a;
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
        Requirement r = design.requirement();
        double[] ends = {r.fromHz(), r.toHz()};
        Optional<Requirement.Jitter> jitter = goal == FilterGoal.NOISE ? r.jitter() : Optional.empty();
        jitter.ifPresent(j -> {
            ends[0] = Math.min(ends[0], j.fromHz());
            ends[1] = Math.max(ends[1], j.toHz());
        });
        f = goal == FilterGoal.FLAT ? task.grid().clone() : DesignGrid.of(design, assembly, ends[0], ends[1]);
        PathResponse path = PathResponse.of(design);
        ResidualTerms terms = new ResidualTerms(design, assembly, path);
        demand = new ResidualDemand(design, Double.POSITIVE_INFINITY);
        c = new double[f.length][6];
        a = new double[f.length][18];
        rest = new double[f.length][6];
        limit = new double[f.length][3];
        noise = goal == FilterGoal.NOISE ? new Noise(new NoiseTerms(design, path, false), f.length) : null;
        for (int n = 0; n < f.length; n++) {
            terms.at(f[n]);
            for (int j = 0; j < 3; j++) {
                c[n][2 * j] = terms.cRe[j];
                c[n][2 * j + 1] = terms.cIm[j];
                limit[n][j] = demand.limit(j, f[n]);
            }
            for (int e = 0; e < 9; e++) {
                a[n][2 * e] = terms.aRe[e];
                a[n][2 * e + 1] = terms.aIm[e];
            }
            if (noise != null) {
                noise.fill(n, f, c[n], new double[] {jitter.map(Requirement.Jitter::fromHz).orElse(r.fromHz()),
                    jitter.map(Requirement.Jitter::toHz).orElse(r.toHz()), r.fromHz(), r.toHz()});
            }
        }
    }

    /** Takes two networks as given while the one of an axis is tried. */
    public void hold(int tried, List<AnalogNetwork> networks) {
        axis = tried;
        for (int n = 0; n < f.length; n++) {
            System.arraycopy(c[n], 0, rest[n], 0, 6);
        }
        for (int i = 0; i < 3; i++) {
            others[i] = new double[f.length];
            for (int n = 0; n < f.length && i != axis; n++) {
                networks.get(i).write(2 * Math.PI * f[n], out);
                others[i][n] = out[0] * out[0] + out[1] * out[1];
                for (int j = 0; j < 3; j++) {
                    take(rest[n], j, a[n], 3 * i + j);
                }
            }
        }
    }

    /** y_j less a F with F in {@code out}. */
    private void take(double[] y, int j, double[] at, int e) {
        y[2 * j] -= at[2 * e] * out[0] - at[2 * e + 1] * out[1];
        y[2 * j + 1] -= at[2 * e] * out[1] + at[2 * e + 1] * out[0];
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
                take(y, j, a[n], 3 * axis + j);
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
                noise.add(n, y, others);
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

        private final NoiseTerms terms;
        private final List<PhaseNoise.Row> rows;
        private final double[][] vibration;
        private final double[][] sensor;
        private final double[] fixed;
        private final double[] width;
        private final boolean[] asked;
        private final double[][] without;
        private final double[] sum;
        private double over;

        Noise(NoiseTerms terms, int n) {
            this.terms = terms;
            rows = terms.rows();
            vibration = new double[n][3];
            sensor = new double[n][3];
            fixed = new double[n];
            width = new double[n];
            asked = new boolean[n];
            without = new double[n][rows.size()];
            sum = new double[rows.size()];
        }

        /** @param ends of the integral, then of the band */
        void fill(int n, double[] f, double[] plain, double[] ends) {
            double[] squared = new double[3];
            for (int i = 0; i < 3; i++) {
                vibration[n][i] = terms.vibration(Axis.ALL.get(i), f[n]);
                sensor[n][i] = terms.sensor(i, f[n]);
                squared[i] = plain[2 * i] * plain[2 * i] + plain[2 * i + 1] * plain[2 * i + 1];
            }
            fixed[n] = terms.fixed(f[n]);
            double left = Math.max(ends[0], n == 0 ? ends[0] : (f[n - 1] + f[n]) / 2);
            double right = Math.min(ends[1], n == f.length - 1 ? ends[1] : (f[n + 1] + f[n]) / 2);
            width[n] = Math.max(0, right - left);
            asked[n] = f[n] >= ends[2] * (1 - 1e-12) && f[n] <= ends[3] * (1 + 1e-12);
            for (int k = 0; k < rows.size(); k++) {
                without[n][k] = terms.without(rows.get(k), f[n], squared);
            }
        }

        void start() {
            java.util.Arrays.fill(sum, 0);
            over = 0;
        }

        void add(int n, double[] y, double[][] squaredFilter) {
            double floor = fixed[n];
            for (int i = 0; i < 3; i++) {
                floor += squaredFilter[i][n] * sensor[n][i];
            }
            for (int k = 0; k < sum.length; k++) {
                double total = floor;
                for (Axis drive : rows.get(k).axes()) {
                    int j = drive.ordinal();
                    total += (y[2 * j] * y[2 * j] + y[2 * j + 1] * y[2 * j + 1]) * vibration[n][j];
                }
                sum[k] += width[n] * total;
                if (asked[n]) {
                    over = Math.max(over, Decibels.ofPower(total / without[n][k]) - NoiseGoal.MOST_DB);
                }
            }
        }

        double value(double each) {
            double[] rms = java.util.Arrays.stream(sum).map(Sidebands::jitterRad).toArray();
            return worst(rms, each) * (1 + PRICE_PER_DB * Math.max(0, over));
        }
    }
}

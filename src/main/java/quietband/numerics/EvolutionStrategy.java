package quietband.numerics;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import org.apache.commons.rng.sampling.distribution.ZigguratSampler;
import org.apache.commons.rng.simple.RandomSource;
import org.hipparchus.linear.Array2DRowRealMatrix;
import org.hipparchus.linear.EigenDecompositionSymmetric;
import org.hipparchus.stat.StatUtils;

/**
 * One run of an evolution strategy with covariance matrix adaptation: points are drawn around a mean, the better half
 * moves mean, step and covariance. N. Hansen, A. Ostermeier, Evolutionary Computation 9(2) 159-195 (2001); constants
 * as in Hansen's tutorial (from memory).
 */
final class EvolutionStrategy {

    private static final double SMALL = 2e-4;

    private final int n;
    private final int lambda;
    private final double[] weights;
    private final double massive;
    private final double[] mean;
    private final double[] pathStep;
    private final double[] pathShape;
    private final double[][] shape;
    private final double[][] axes;
    private final double[] lengths;
    private final ZigguratSampler.NormalizedGaussian normal;
    private double step;
    private int generation;

    EvolutionStrategy(double[] from, double step, long seed, int run) {
        this.n = from.length;
        this.lambda = 2 * (int) Math.ceil((4 + 3 * Math.log(n)) / 2);
        this.mean = from.clone();
        this.step = step;
        int half = lambda / 2;
        weights = new double[half];
        double sum = 0;
        for (int i = 0; i < half; i++) {
            weights[i] = Math.log(half + 0.5) - Math.log(i + 1);
            sum += weights[i];
        }
        double squares = 0;
        for (int i = 0; i < half; i++) {
            weights[i] /= sum;
            squares += weights[i] * weights[i];
        }
        massive = 1 / squares;
        pathStep = new double[n];
        pathShape = new double[n];
        shape = new double[n][n];
        axes = new double[n][n];
        lengths = new double[n];
        for (int i = 0; i < n; i++) {
            shape[i][i] = 1;
            axes[i][i] = 1;
            lengths[i] = 1;
        }
        normal = ZigguratSampler.NormalizedGaussian.of(RandomSource.PHILOX_4X64.create(new long[] {seed, run, 0, 0, 0,
            0}));
    }

    /** Whether further points would differ by next to nothing. */
    boolean settled() {
        return step * StatUtils.max(lengths) < SMALL;
    }

    /** Points to be judged. */
    List<double[]> ask() {
        List<double[]> points = new ArrayList<>();
        for (int p = 0; p < lambda; p++) {
            double[] z = new double[n];
            for (int i = 0; i < n; i++) {
                z[i] = lengths[i] * normal.sample();
            }
            double[] x = mean.clone();
            for (int i = 0; i < n; i++) {
                for (int k = 0; k < n; k++) {
                    x[i] += step * axes[i][k] * z[k];
                }
            }
            points.add(x);
        }
        return points;
    }

    /** What the points cost, in their order. */
    void tell(List<double[]> points, double[] cost) {
        generation++;
        Integer[] order = new Integer[cost.length];
        Arrays.setAll(order, i -> i);
        Arrays.sort(order, (a, b) -> Double.compare(cost[a], cost[b]));
        double[] old = mean.clone();
        Arrays.fill(mean, 0);
        for (int r = 0; r < weights.length; r++) {
            for (int i = 0; i < n; i++) {
                mean[i] += weights[r] * points.get(order[r])[i];
            }
        }
        double[] move = new double[n];
        for (int i = 0; i < n; i++) {
            move[i] = (mean[i] - old[i]) / step;
        }
        double learnStep = (massive + 2) / (n + massive + 5);
        double damp = 1 + 2 * Math.max(0, Math.sqrt((massive - 1) / (n + 1)) - 1) + learnStep;
        double[] white = whitened(move);
        for (int i = 0; i < n; i++) {
            pathStep[i] = (1 - learnStep) * pathStep[i] + Math.sqrt(learnStep * (2 - learnStep) * massive) * white[i];
        }
        double length = Math.sqrt(StatUtils.sumSq(pathStep));
        double expected = Math.sqrt(n) * (1 - 1.0 / (4 * n) + 1.0 / (21.0 * n * n));
        boolean steady = length / Math.sqrt(1 - Math.pow(1 - learnStep, 2.0 * generation)) / expected < 1.4 + 2.0 / (n
            + 1);
        adapt(points, order, old, move, steady);
        step *= Math.exp(Math.min(1, learnStep / damp * (length / expected - 1)));
        step = Math.min(step, 0.6);
        decompose();
    }

    private void adapt(List<double[]> points, Integer[] order, double[] old, double[] move, boolean steady) {
        double learnPath = (4 + massive / n) / (n + 4 + 2 * massive / n);
        double rankOne = 2 / ((n + 1.3) * (n + 1.3) + massive);
        double rankMu = Math.min(1 - rankOne, 2 * (massive - 2 + 1 / massive) / ((n + 2.0) * (n + 2.0) + massive));
        for (int i = 0; i < n; i++) {
            pathShape[i] = (1 - learnPath) * pathShape[i]
                + (steady ? Math.sqrt(learnPath * (2 - learnPath) * massive) * move[i] : 0);
        }
        double kept = 1 - rankOne - rankMu + (steady ? 0 : rankOne * learnPath * (2 - learnPath));
        for (int i = 0; i < n; i++) {
            for (int k = 0; k <= i; k++) {
                double ranks = 0;
                for (int r = 0; r < weights.length; r++) {
                    double[] x = points.get(order[r]);
                    ranks += weights[r] * (x[i] - old[i]) * (x[k] - old[k]) / (step * step);
                }
                shape[i][k] = kept * shape[i][k] + rankOne * pathShape[i] * pathShape[k] + rankMu * ranks;
                shape[k][i] = shape[i][k];
            }
        }
    }

    /** C^(-1/2) v. */
    private double[] whitened(double[] v) {
        double[] white = new double[n];
        for (int k = 0; k < n; k++) {
            double along = 0;
            for (int i = 0; i < n; i++) {
                along += axes[i][k] * v[i];
            }
            for (int i = 0; i < n; i++) {
                white[i] += axes[i][k] * along / lengths[k];
            }
        }
        return white;
    }

    private void decompose() {
        EigenDecompositionSymmetric eigen = new EigenDecompositionSymmetric(new Array2DRowRealMatrix(shape, true));
        for (int k = 0; k < n; k++) {
            lengths[k] = Math.sqrt(Math.max(1e-20, eigen.getEigenvalue(k)));
            double[] v = eigen.getEigenvector(k).toArray();
            for (int i = 0; i < n; i++) {
                axes[i][k] = v[i];
            }
        }
    }
}

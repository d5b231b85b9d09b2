package quietband.identification.trim;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.stream.IntStream;
import org.hipparchus.complex.Complex;
import org.hipparchus.linear.Array2DRowRealMatrix;
import org.hipparchus.linear.ArrayRealVector;
import org.hipparchus.linear.DecompositionSolver;
import org.hipparchus.linear.QRDecomposition;
import org.hipparchus.linear.RealMatrix;
import org.hipparchus.linear.RealVector;
import org.hipparchus.stat.StatUtils;
import quietband.identification.FitException;
import quietband.model.Axis;

/**
 * Least squares for the three numbers of every sensor's path, ln(1 + gain), phase and delay, from the difference of the runs; all
 * three sensors together, because each drive reaches every sensor. The start takes for each sensor the delay at which its
 * own axis' readings line up best, then Gauss-Newton with shortened steps.
 */
final class TrimFit {

    private static final int ROUNDS = 60;
    // steps of the first look: an eighth of a turn of the highest frequency
    private static final double STEPS = 8;
    private static final double LONGEST_DELAY = 1e-3;
    private static final double SMALL = 1e-11;

    private final TrimTerms terms;
    private final double[] weight;
    private final double[] sigma;
    private final List<int[]> unknowns = new ArrayList<>();
    private final double unit;
    private double[] values;
    private double cost;

    /**
     * @param weight in the run, 1/g (length 3); a sensor without one has no unknowns
     * @param sigma  one standard uncertainty of the real and of the imaginary part of each difference, 1/g, or only in proportion
     */
    TrimFit(TrimTerms terms, double[] weight, double[] sigma) {
        this.terms = terms;
        this.weight = weight;
        this.sigma = sigma;
        // delays in the time in which the highest frequency turns by one radian: numbers of one size
        unit = 1 / (2 * Math.PI * terms.points().stream().mapToDouble(TrimTerms.Point::frequencyHz).max().orElse(1));
        for (Axis axis : Axis.ALL) {
            int i = axis.ordinal();
            if (weight[i] != 0) {
                unknowns.add(new int[] {i, 0});
                unknowns.add(new int[] {i, 1});
                if (terms.frequencies(axis) > 1) {
                    unknowns.add(new int[] {i, 2});
                }
            }
        }
    }

    /** Finds the values. */
    TrimFit run() {
        double[][] start = {start(0), start(1), start(2)};
        values = unknowns.stream().mapToDouble(u -> start[u[0]][u[1]]).toArray();
        cost = cost(values);
        for (int round = 0; round < ROUNDS; round++) {
            double[] step = solve(slopes(weight), new ArrayRealVector(left(values), false));
            if (!improve(step)) {
                break;
            }
        }
        return this;
    }

    private boolean improve(double[] step) {
        for (double share = 1; share > 1e-4; share /= 2) {
            double[] next = values.clone();
            double most = 0;
            for (int k = 0; k < next.length; k++) {
                next[k] += share * step[k];
                most = Math.max(most, Math.abs(share * step[k]));
            }
            double c = cost(next);
            if (c <= cost) {
                boolean more = most > SMALL;
                values = next;
                cost = c;
                return more;
            }
        }
        return false;
    }

    /** ln gain, phase, delay of a sensor from its own axis alone. */
    private double[] start(int i) {
        if (weight[i] == 0) {
            return new double[3];
        }
        List<TrimTerms.Point> own = terms.points().stream().filter(p -> p.axis().ordinal() == i).toList();
        double best = -1;
        double[] found = new double[3];
        int delays = own.size() > 1 ? (int) Math.ceil(LONGEST_DELAY * STEPS / (2 * Math.PI * unit)) : 0;
        for (int n = -delays; n <= delays; n++) {
            double delay = delays == 0 ? 0 : LONGEST_DELAY * n / delays;
            Complex sum = Complex.ZERO;
            double norm = 0;
            for (TrimTerms.Point p : own) {
                Complex a = p.path()[i].multiply(weight[i]);
                sum = sum.add(p.difference().multiply(a.conjugate()).multiply(turn(2 * Math.PI * p.frequencyHz() * delay)));
                norm += a.norm() * a.norm();
            }
            if (sum.norm() > best) {
                best = sum.norm();
                found = new double[] {Math.log(Math.max(1e-6, sum.norm() / norm)), sum.getArgument(), delay / unit};
            }
        }
        return found;
    }

    static Complex turn(double phase) {
        return new Complex(Math.cos(phase), Math.sin(phase));
    }

    private double at(double[] x, int sensor, int what) {
        int k = index(sensor, what);
        return k < 0 ? 0 : x[k];
    }

    private Complex factor(double[] x, int sensor, double f) {
        return turn(at(x, sensor, 1) - 2 * Math.PI * f * unit * at(x, sensor, 2)).multiply(Math.exp(at(x, sensor, 0)));
    }

    /** Differences less what the values predict, over sigma; real and imaginary part in turn. */
    private double[] left(double[] x) {
        double[] rows = new double[2 * sigma.length];
        for (int n = 0; n < sigma.length; n++) {
            TrimTerms.Point p = terms.points().get(n);
            Complex rest = p.difference();
            for (int i = 0; i < 3; i++) {
                rest = rest.subtract(p.path()[i].multiply(factor(x, i, p.frequencyHz())).multiply(weight[i]));
            }
            rows[2 * n] = rest.getReal() / sigma[n];
            rows[2 * n + 1] = rest.getImaginary() / sigma[n];
        }
        return rows;
    }

    private double cost(double[] x) {
        return StatUtils.sumSq(left(x));
    }

    /** How the cancellation with other weights moves with the values, over sigma. */
    RealMatrix slopes(double[] weights) {
        RealMatrix rows = new Array2DRowRealMatrix(2 * sigma.length, unknowns.size());
        for (int n = 0; n < sigma.length; n++) {
            TrimTerms.Point p = terms.points().get(n);
            for (int k = 0; k < unknowns.size(); k++) {
                int[] u = unknowns.get(k);
                Complex v = p.path()[u[0]].multiply(factor(values, u[0], p.frequencyHz())).multiply(weights[u[0]]);
                double turned = u[1] == 2 ? -2 * Math.PI * p.frequencyHz() * unit : 1;
                Complex s = u[1] == 0 ? v : v.multiply(Complex.I).multiply(turned);
                rows.setEntry(2 * n, k, s.getReal() / sigma[n]);
                rows.setEntry(2 * n + 1, k, s.getImaginary() / sigma[n]);
            }
        }
        return rows;
    }

    /** Sum of the squared differences over sigma^2. */
    double cost() {
        return cost;
    }

    /** Real numbers measured beyond those found. */
    int freedom() {
        return 2 * sigma.length - unknowns.size();
    }

    /** Covariance of the values for sigma as given. */
    RealMatrix covariance() {
        RealMatrix j = slopes(weight);
        return new QRDecomposition(j.transpose().multiply(j)).getSolver().getInverse();
    }

    /** Number of an unknown; -1 where it is none. */
    int index(int sensor, int what) {
        int[] wanted = {sensor, what};
        return IntStream.range(0, unknowns.size()).filter(k -> Arrays.equals(unknowns.get(k), wanted)).findFirst().orElse(-1);
    }

    /** 1 + gain of a sensor. */
    double gain(int sensor) {
        return Math.exp(at(values, sensor, 0));
    }

    /** Phase error in rad within +-pi. */
    double phase(int sensor) {
        return Math.IEEEremainder(at(values, sensor, 1), 2 * Math.PI);
    }

    /** Delay error in s. */
    double delay(int sensor) {
        return unit * at(values, sensor, 2);
    }

    /** What one number of the delay's unknown is in s. */
    double delayUnit() {
        return unit;
    }

    /** u_i at f in Hz. */
    Complex factor(int sensor, double f) {
        return factor(values, sensor, f);
    }

    /** What each of the unknowns changes by per change of the differences over sigma: unknowns by rows. */
    RealMatrix response() {
        return covariance().multiply(slopes(weight).transpose());
    }

    /** (J'J)^-1 of plain rows. */
    static RealMatrix inverse(RealMatrix rows) {
        return solver(rows.transpose().multiply(rows)).getInverse();
    }

    /** Solves least squares of plain rows. */
    static double[] solve(RealMatrix rows, RealVector right) {
        return solver(rows).solve(right).toArray();
    }

    /** Solves least squares, or equations, that have one answer. */
    static DecompositionSolver solver(RealMatrix rows) {
        DecompositionSolver solver = new QRDecomposition(rows).getSolver();
        if (!solver.isNonSingular()) {
            throw new FitException("the readings cannot tell the three sensors and axes apart: some of them move nothing, or two move the "
                + "same; drive each axis, at more frequencies, with the weights that the model has");
        }
        return solver;
    }
}

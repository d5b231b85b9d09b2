package quietband.identification.search;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.stream.IntStream;
import org.hipparchus.distribution.continuous.ChiSquaredDistribution;
import org.hipparchus.linear.Array2DRowRealMatrix;
import org.hipparchus.linear.RealMatrix;
import org.hipparchus.linear.SingularValueDecomposition;
import org.hipparchus.stat.StatUtils;
import quietband.identification.FitException;
import quietband.units.Amounts;
import quietband.units.Dimension;

/**
 * One weighted nonlinear least-squares fit: start, robust approach on logarithms, then plain differences weighted by the noise, which is
 * stated or estimated from what is left, until nothing moves; then the covariance.
 */
public final class RobustFit {

    private static final int ROUNDS = 12;
    private static final double BLIND = 1e-7;
    private static final double ALIKE = 1e-6;

    private final ResponseEvaluator evaluator;
    private final FreeValues free;
    private final MeasuredPoints seen;
    private final boolean[] held;
    private final List<String> notes = new ArrayList<>();
    private double[] near;

    public RobustFit(ResponseEvaluator evaluator) {
        this.evaluator = evaluator;
        this.free = evaluator.free();
        this.seen = evaluator.seen();
        this.held = new boolean[free.size()];
    }

    /** Starts from numbers that are near the end already, without a search. */
    public RobustFit from(double[] u) {
        near = u.clone();
        return this;
    }

    /**
     * Fits.
     *
     * @param searches how many starts are tried at most
     * @param outliers points that another fit left out; null to look for them
     * @param robust   whether to look for them
     */
    public FitEstimate run(int searches, boolean[] outliers, boolean robust) {
        holdBlind();
        for (int round = 0; ; round++) {
            enough();
            double[] from = near != null && round == 0 ? near : new StartSearch(evaluator, held).best(searches);
            double[] u = approach(from, outliers);
            FitEstimate e = settle(u, outliers, robust);
            int alike = round > free.size() ? -1 : indistinct(e);
            if (alike < 0) {
                mirrors(e);
                return e;
            }
            held[alike] = true;
        }
    }

    private void enough() {
        long p = IntStream.range(0, held.length).filter(i -> !held[i]).count();
        if (p == 0) {
            throw new FitException("the measurement does not depend on any of the numbers to be found ("
                + String.join(", ", free.all().stream().map(FreeValue::of).toList())
                + "); free others, or measure another axis or quantity");
        }
        if (seen.numbers() < p + 1) {
            throw new FitException("too few points: " + seen.numbers() + (seen.numbers() == 1 ? " number was" : " numbers were")
                + " measured and " + p + " are to be found; measure at more frequencies or free fewer");
        }
    }

    /** Holds what has no effect on any point, wherever one looks. */
    private void holdBlind() {
        double[] one = Arrays.stream(seen.magnitude()).map(m -> 1 / m).toArray();
        WeightedMisfit misfit = new WeightedMisfit(evaluator, one, false);
        double[] start = free.start();
        double[] aside = start.clone();
        for (int i = 0; i < aside.length; i++) {
            aside[i] += free.get(i).log() ? 0.1 : 1 + 0.1 * i;
        }
        for (int i = 0; i < start.length; i++) {
            double size = 0;
            for (double[] u : List.of(start, free.clipped(aside))) {
                size = Math.max(size, StatUtils.sumSq(misfit.slopes(u, new int[] {i})[0]));
            }
            if (size < BLIND * BLIND) {
                held[i] = true;
                notes.add("the measurement says nothing about " + free.get(i).of() + ": it stays as the model has it");
            }
        }
    }

    /** Robust descent on logarithms over all points: far-off points count less in each round. */
    private double[] approach(double[] start, boolean[] outliers) {
        double[] re = new double[seen.size()];
        double[] im = new double[seen.size()];
        double[] weight = new double[seen.size()];
        double[] u = start;
        for (int round = 0; round < 3; round++) {
            evaluator.predict(u, re, im);
            double[] off = new double[weight.length];
            for (int i = 0; i < off.length; i++) {
                double e = Double.isNaN(seen.stated()[i]) ? 1 : seen.stated()[i];
                off[i] = Math.sqrt(ResidualScatter.square(seen, i, re[i], im[i])) / (e * Math.max(Math.hypot(re[i], im[i]),
                    1e-3 * seen.magnitude()[i]));
            }
            double[] sorted = off.clone();
            Arrays.sort(sorted);
            double middle = Math.max(sorted[sorted.length / 2], 1e-12);
            for (int i = 0; i < off.length; i++) {
                double e = Double.isNaN(seen.stated()[i]) ? 1 : seen.stated()[i];
                double far = off[i] / (4 * middle);
                weight[i] = outliers != null && outliers[i] ? 0 : 1 / (e * middle * (1 + far * far));
            }
            u = new BoundedLeastSquares(new WeightedMisfit(evaluator, weight, true), free).run(u, held).u();
        }
        return u;
    }

    private FitEstimate settle(double[] start, boolean[] outliers, boolean robust) {
        double[] re = new double[seen.size()];
        double[] im = new double[seen.size()];
        double[] u = start;
        boolean[] bound = new boolean[u.length];
        ResidualScatter scatter = null;
        for (int round = 0; round < ROUNDS; round++) {
            evaluator.predict(u, re, im);
            scatter = new ResidualScatter(seen, re, im, outliers, robust);
            BoundedLeastSquares.End end = new BoundedLeastSquares(misfit(scatter.outlier(), scatter.sigma()), free).run(u, held);
            double moved = 0;
            for (int i = 0; i < u.length; i++) {
                moved = Math.max(moved, Math.abs(end.u()[i] - u[i]));
            }
            u = end.u();
            bound = end.atBound();
            if (moved < 1e-9) {
                break;
            }
        }
        evaluator.predict(u, re, im);
        return estimate(u, bound, re, im, scatter);
    }

    /** Plain differences over their uncertainties; outliers do not count. */
    private WeightedMisfit misfit(boolean[] outlier, double[] sigma) {
        return new WeightedMisfit(evaluator, IntStream.range(0, sigma.length).mapToDouble(i -> outlier[i] ? 0 : 1 / sigma[i]).toArray(),
            false);
    }

    private FitEstimate estimate(double[] u, boolean[] bound, double[] re, double[] im, ResidualScatter s) {
        int[] which = IntStream.range(0, u.length).filter(i -> !held[i] && !bound[i]).toArray();
        int rows = 0;
        int known = 0;
        double chi = 0;
        for (int i = 0; i < seen.size(); i++) {
            int count = s.outlier()[i] ? 0 : seen.phased(i) ? 2 : 1;
            rows += count;
            if (s.stated(i) && count > 0) {
                known += count;
                chi += ResidualScatter.square(seen, i, re[i], im[i]) / (s.sigma()[i] * s.sigma()[i]);
            }
        }
        List<String> told = new ArrayList<>(notes);
        told.addAll(s.notes());
        double freedom = (double) Math.max(1, rows - which.length) / rows;
        double statedScale = 1;
        if (known > 0) {
            double reduced = chi / (known * freedom);
            if (reduced > new ChiSquaredDistribution(known * freedom).inverseCumulativeProbability(0.999) / (known * freedom)) {
                statedScale = Math.sqrt(reduced);
                told.add(String.format(Locale.ROOT, "what is left is %.2f times the stated uncertainty: either that is too small or the "
                    + "model lacks something; standard errors are widened by as much", statedScale));
            }
        }
        double ownScale = 1 / Math.sqrt(freedom);
        double[] sigma = s.sigma().clone();
        for (int i = 0; i < sigma.length; i++) {
            sigma[i] *= s.stated(i) ? statedScale : ownScale;
        }
        double[][] covariance = new double[u.length][u.length];
        double[][] slopes = misfit(s.outlier(), sigma).slopes(u, which);
        double[][] inverse = which.length == 0 ? new double[0][] : inverse(slopes);
        for (int a = 0; a < which.length; a++) {
            for (int b = 0; b < which.length; b++) {
                covariance[which[a]][which[b]] = inverse[a][b];
            }
        }
        return new FitEstimate(free, u, held.clone(), bound, re, im, sigma, s.outlier(), covariance, rows, s.likelihood(),
            which.length + s.numbers(), s.noise(), told);
    }

    /** (J^T J)^-1 through the singular values of J with columns of length 1. */
    private static double[][] inverse(double[][] columns) {
        int n = columns.length;
        double[] length = new double[n];
        RealMatrix gram = new Array2DRowRealMatrix(n, n);
        for (int i = 0; i < n; i++) {
            length[i] = Math.sqrt(Math.max(StatUtils.sumSq(columns[i]), 1e-300));
        }
        for (int i = 0; i < n; i++) {
            for (int j = 0; j < n; j++) {
                double sum = 0;
                for (int k = 0; k < columns[i].length; k++) {
                    sum += columns[i][k] * columns[j][k];
                }
                gram.setEntry(i, j, sum / (length[i] * length[j]));
            }
        }
        double[][] inverse = new SingularValueDecomposition(gram).getSolver().getInverse().getData();
        for (int i = 0; i < n; i++) {
            for (int j = 0; j < n; j++) {
                inverse[i][j] /= length[i] * length[j];
            }
        }
        return inverse;
    }

    /** Tells of a place whose mirror image fits as well. */
    private void mirrors(FitEstimate e) {
        WeightedMisfit misfit = misfit(e.outlier(), e.sigma());
        double cost = StatUtils.sumSq(misfit.at(e.u()));
        for (int i = 0; i < e.u().length; i++) {
            boolean place = free.get(i).detail().dimension() == Dimension.LENGTH;
            double far = 3 * Math.sqrt(e.covariance()[i][i]);
            if (place && e.determined(i) && Math.abs(e.u()[i]) > far) {
                double[] turned = e.u().clone();
                turned[i] = -turned[i];
                BoundedLeastSquares.End end = new BoundedLeastSquares(misfit, free).run(turned, held);
                if (end.cost() < cost + 1 && Math.abs(end.u()[i] - e.u()[i]) > far) {
                    e.notes().add(String.format(Locale.ROOT, "%s: %s fits these data as well as %s; set the sign you know in the model",
                        free.get(i).of(), Amounts.print(rounded(free.get(i).toValue(end.u()[i])), Dimension.LENGTH),
                        Amounts.print(rounded(e.value(i)), Dimension.LENGTH)));
                }
            }
        }
    }

    private static double rounded(double v) {
        return Double.parseDouble(String.format(Locale.ROOT, "%.3e", v));
    }

    /** A number that the others can make up for to the last digit, the one named last; -1 when there is none. */
    private int indistinct(FitEstimate e) {
        int[] which = IntStream.range(0, e.u().length).filter(e::determined).toArray();
        if (which.length < 2) {
            return -1;
        }
        double[][] columns = misfit(e.outlier(), e.sigma()).slopes(e.u(), which);
        RealMatrix j = new Array2DRowRealMatrix(columns[0].length, which.length);
        for (int k = 0; k < which.length; k++) {
            double length = Math.sqrt(Math.max(StatUtils.sumSq(columns[k]), 1e-300));
            for (int r = 0; r < columns[k].length; r++) {
                j.setEntry(r, k, columns[k][r] / length);
            }
        }
        SingularValueDecomposition svd = new SingularValueDecomposition(j);
        double[] values = svd.getSingularValues();
        if (values[values.length - 1] > ALIKE * values[0]) {
            return -1;
        }
        double[] direction = svd.getV().getColumn(values.length - 1);
        List<String> names = new ArrayList<>();
        int last = -1;
        for (int k = 0; k < which.length; k++) {
            if (Math.abs(direction[k]) > 1e-3) {
                names.add(free.get(which[k]).of());
                last = which[k];
            }
        }
        notes.add((names.size() == 1 ? "here the measurement says nothing about " + names.get(0) + ": it"
            : "the data cannot tell " + String.join(" and ", names) + " apart: only what they do together is found; "
            + free.get(last).of()) + " stays as the model has it");
        return last;
    }
}

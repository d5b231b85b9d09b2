package quietband.identification.trim;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.stream.DoubleStream;
import org.hipparchus.complex.Complex;
import org.hipparchus.distribution.continuous.ChiSquaredDistribution;
import org.hipparchus.distribution.continuous.TDistribution;
import org.hipparchus.exception.MathRuntimeException;
import org.hipparchus.linear.Array2DRowRealMatrix;
import org.hipparchus.linear.ArrayRealVector;
import org.hipparchus.linear.RealMatrix;
import quietband.identification.FitException;
import quietband.identification.trim.TrimmedUnit.Found;
import quietband.model.Axis;
import quietband.model.Design;
import quietband.model.Vec;

/** Trims one unit. */
final class TrimSolver {

    private static final double NORMAL_95 = 1.959963984540054;
    private static final double SUSPICIOUS = 0.999;
    private static final double ALIKE = 0.99;

    private static final String NO_ANSWER = "no weights follow from these readings: their ppb_per_g are beyond any number of use, or the "
        + "model's cancellation passes nothing at their frequencies; look at both";

    private final TrimTerms terms;
    private final double[] weight;
    private final boolean stated;
    private final List<String> notes = new ArrayList<>();
    private final double[] newWeight = new double[3];
    private final double[] newError = new double[3];
    private final double[] own = new double[3];
    private final double[] ownError = new double[3];

    private TrimSolver(TrimTerms terms, double[] weight) {
        this.terms = terms;
        this.weight = weight;
        this.stated = terms.stated();
    }

    static TrimmedUnit of(Design design, boolean bolted, String serial, Map<Axis, List<TrimRun.Reading>> off,
                          Map<Axis, List<TrimRun.Reading>> on) {
        double[] weight = design.weightsPerG().toArray();
        on.forEach((axis, rows) -> {
            for (TrimRun.Reading r : rows) {
                if (Double.compare(r.weightPerG(), rows.get(0).weightPerG()) != 0) {
                    throw new FitException("line " + r.line() + ": the weight of axis " + axis.letter() + " changes within the run; "
                        + "one run has one weight");
                }
            }
            if (!Double.isNaN(rows.get(0).weightPerG())) {
                weight[axis.ordinal()] = rows.get(0).weightPerG();
            }
        });
        TrimSolver solver = new TrimSolver(TrimTerms.of(design, bolted, off, on), weight);
        try {
            TrimmedUnit unit = solver.solve(serial);
            if (!DoubleStream.concat(DoubleStream.of(solver.newWeight), DoubleStream.of(solver.own)).allMatch(Double::isFinite)) {
                throw new FitException(NO_ANSWER);
            }
            return unit;
        } catch (MathRuntimeException e) {
            throw new FitException(NO_ANSWER);
        }
    }

    private TrimmedUnit solve(String serial) {
        int n = terms.points().size();
        double[] sigma = new double[n];
        for (int k = 0; k < n; k++) {
            TrimTerms.Point p = terms.points().get(k);
            // without a statement every reading is taken to have the same relative noise
            sigma[k] = stated ? Math.hypot(p.offError(), p.onError()) : Math.hypot(p.off().norm(), p.on().norm());
            if (!(sigma[k] > 0)) {
                throw new FitException("axis " + p.axis().letter() + " at " + p.frequencyHz() + " Hz reads 0 with the cancellation off and "
                    + "on; leave it out of both files");
            }
        }
        TrimFit fit = new TrimFit(terms, weight, sigma).run();
        if (!stated && fit.freedom() < 1) {
            throw new FitException("too few readings to tell how sure the result is; measure at more frequencies, or state "
                + "relative_error in both files");
        }
        double chi = fit.freedom() < 1 ? Double.NaN : fit.cost() / fit.freedom();
        double noise = stated ? Double.NaN : Math.sqrt(chi);
        double scale = stated ? inflation(chi, fit.freedom()) : noise;
        if (stated && scale > 1) {
            notes.add(String.format(Locale.ROOT, "the cancellation does not act as the model says whatever its gain, phase and delay: "
                + "chi-square is %.3g per degree of freedom, and the standard errors are raised by its root; look at the model's "
                + "platform, sensor and filter, or at relative_error", chi));
        }
        double factor = stated ? NORMAL_95 : new TDistribution(fit.freedom()).inverseCumulativeProbability(0.975);
        double offChi = sensitivity();
        weigh(fit, sigma, scale);
        return new TrimmedUnit(serial, sensors(fit, scale, factor), points(fit), Vec.of(own), Vec.of(ownError),
            new TrimmedUnit.Quality(stated ? chi : Double.NaN, offChi, noise), notes);
    }

    /** By how much stated uncertainties are too small; 1 where chi-square could be chance. */
    private static double inflation(double chi, int freedom) {
        boolean chance = freedom < 1 || chi * freedom < new ChiSquaredDistribution(freedom).inverseCumulativeProbability(SUSPICIOUS);
        return chance ? 1 : Math.sqrt(chi);
    }

    private List<TrimmedUnit.Sensor> sensors(TrimFit fit, double scale, double factor) {
        RealMatrix c = fit.covariance();
        List<TrimmedUnit.Sensor> sensors = new ArrayList<>();
        for (Axis axis : Axis.ALL) {
            int i = axis.ordinal();
            double[] error = new double[3];
            for (int what = 0; what < 3; what++) {
                int k = fit.index(i, what);
                error[what] = k < 0 ? Double.NaN : scale * Math.sqrt(c.getEntry(k, k));
            }
            int p = fit.index(i, 1);
            int d = fit.index(i, 2);
            double correlation = d < 0 ? Double.NaN : c.getEntry(p, d) / Math.sqrt(c.getEntry(p, p) * c.getEntry(d, d));
            boolean none = p < 0;
            double gain = none ? Double.NaN : fit.gain(i) - 1;
            double phase = none ? Double.NaN : fit.phase(i);
            doubts(axis, none, d < 0, correlation, gain, phase);
            sensors.add(new TrimmedUnit.Sensor(axis, new Found(gain, (1 + gain) * error[0], factor), new Found(phase, error[1], factor),
                new Found(d < 0 ? Double.NaN : fit.delay(i), error[2] * fit.delayUnit(), factor), weight[i],
                new Found(newWeight[i], newError[i], factor), correlation));
        }
        return sensors;
    }

    private void doubts(Axis axis, boolean none, boolean single, double correlation, double gain, double phase) {
        String name = "sensor " + axis.letter();
        if (none) {
            notes.add(name + " had no weight in the run: its errors cannot be found");
        } else if (single) {
            notes.add(name + ": one frequency cannot tell phase from delay, and all of the angle is given as phase; measure at two "
                + "frequencies or more");
        } else if (Math.abs(correlation) > ALIKE) {
            notes.add(String.format(Locale.ROOT, "%s: phase and delay are hardly told apart (correlation of their errors %.3f); "
                + "together they are known well, each alone is not; measure over a wider span of frequencies", name, correlation));
        }
        if (gain < -0.9) {
            notes.add(String.format(Locale.ROOT, "%s: the cancellation hardly acts (gain %.1f %%); was it on?", name, 100 * gain));
        } else if (Math.abs(phase) > Math.PI / 2) {
            notes.add(String.format(Locale.ROOT, "%s: the cancellation turns by %.0f deg, so it adds where it should take away; "
                + "check its polarity, and whether the two files are exchanged", name, Math.toDegrees(phase)));
        }
    }

    /** G of the unit from the run with the cancellation off; returns chi-square per degree of freedom. */
    private double sensitivity() {
        int n = terms.points().size();
        RealMatrix rows = new Array2DRowRealMatrix(2 * n, 3);
        double[] right = new double[2 * n];
        for (int k = 0; k < n; k++) {
            TrimTerms.Point p = terms.points().get(k);
            double s = stated ? p.offError() : Math.max(p.off().norm(), 1e-30);
            s = s > 0 ? s : 1e-30;
            for (int i = 0; i < 3; i++) {
                rows.setEntry(2 * k, i, p.crystal()[i].getReal() / s);
                rows.setEntry(2 * k + 1, i, p.crystal()[i].getImaginary() / s);
            }
            right[2 * k] = p.off().getReal() / s;
            right[2 * k + 1] = p.off().getImaginary() / s;
        }
        ArrayRealVector b = new ArrayRealVector(right, false);
        double[] g = TrimFit.solve(rows, b);
        double norm = b.subtract(rows.operate(new ArrayRealVector(g, false))).getNorm();
        int freedom = 2 * n - 3;
        double chi = norm * norm / freedom;
        double scale = stated ? inflation(chi, freedom) : Math.sqrt(chi);
        if (stated && scale > 1 || !stated && scale > 0.1) {
            notes.add(String.format(Locale.ROOT, "with the cancellation off the unit does not move as the model says, whatever its "
                + "sensitivity (%s): find the platform's values with fit first, or say --bolted when it stood without its platform",
                stated ? String.format(Locale.ROOT, "chi-square %.3g per degree of freedom", chi)
                    : String.format(Locale.ROOT, "%.0f %% of the readings", 100 * scale)));
        }
        RealMatrix c = TrimFit.inverse(rows);
        for (int i = 0; i < 3; i++) {
            own[i] = g[i];
            ownError[i] = scale * Math.sqrt(c.getEntry(i, i));
        }
        return stated ? chi : Double.NaN;
    }

    /**
     * The weights w that leave least of the run with the cancellation off, as least squares over the limit:
     * off = sum_i w_i M_i u_i. Their errors follow from those of both runs, to first order, through u as well.
     */
    private void weigh(TrimFit fit, double[] sigma, double scale) {
        int n = terms.points().size();
        boolean limited = terms.points().stream().allMatch(p -> Double.isFinite(p.limit()) && p.limit() > 0);
        RealMatrix rows = new Array2DRowRealMatrix(2 * n, 3);
        double[] right = new double[2 * n];
        double[] over = new double[n];
        for (int k = 0; k < n; k++) {
            TrimTerms.Point p = terms.points().get(k);
            over[k] = limited ? p.limit() : 1;
            for (int i = 0; i < 3; i++) {
                Complex m = p.path()[i].multiply(fit.factor(i, p.frequencyHz()));
                rows.setEntry(2 * k, i, m.getReal() / over[k]);
                rows.setEntry(2 * k + 1, i, m.getImaginary() / over[k]);
            }
            right[2 * k] = p.off().getReal() / over[k];
            right[2 * k + 1] = p.off().getImaginary() / over[k];
        }
        double[] w = TrimFit.solve(rows, new ArrayRealVector(right, false));
        System.arraycopy(w, 0, newWeight, 0, 3);
        // what w changes by per change of off over the limit, and of the difference of the runs over sigma
        RealMatrix byOff = TrimFit.inverse(rows).multiply(rows.transpose());
        RealMatrix moved = fit.slopes(w);
        for (int k = 0; k < 2 * n; k++) {
            for (int u = 0; u < moved.getColumnDimension(); u++) {
                moved.multiplyEntry(k, u, sigma[k / 2] / over[k / 2]);
            }
        }
        RealMatrix byDifference = byOff.multiply(moved).multiply(fit.response());
        for (int i = 0; i < 3; i++) {
            double sum = 0;
            for (int k = 0; k < 2 * n; k++) {
                TrimTerms.Point p = terms.points().get(k / 2);
                double offError = stated ? p.offError() : p.off().norm();
                double onError = stated ? p.onError() : p.on().norm();
                double through = byDifference.getEntry(i, k) / sigma[k / 2];
                sum += Math.pow((byOff.getEntry(i, k) / over[k / 2] - through) * offError, 2) + Math.pow(through * onError, 2);
            }
            newError[i] = scale * Math.sqrt(sum);
        }
    }

    private List<TrimmedUnit.Point> points(TrimFit fit) {
        List<TrimmedUnit.Point> points = new ArrayList<>();
        for (TrimTerms.Point p : terms.points()) {
            Complex after = p.off();
            for (int i = 0; i < 3; i++) {
                after = after.subtract(p.path()[i].multiply(fit.factor(i, p.frequencyHz())).multiply(newWeight[i]));
            }
            points.add(new TrimmedUnit.Point(p.axis(), p.frequencyHz(), p.off(), p.on(), after, p.limit()));
        }
        return points;
    }
}

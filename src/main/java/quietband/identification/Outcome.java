package quietband.identification;

import java.util.ArrayList;
import java.util.List;
import org.hipparchus.distribution.continuous.TDistribution;
import quietband.model.Design;
import quietband.model.ModelFile;
import quietband.model.Quantities;
import quietband.response.ModeLine;
import quietband.platform.Assembly;

/** Makes the result of a fit from its estimate: values with intervals, the changed model, curves, modes. */
final class Outcome {

    private static final double STEP = 1e-4;

    private final ModelFile before;
    private final ModelFile fittedTo;
    private final Observations seen;
    private final Estimate estimate;
    private final FreeValues free;

    /** @param fittedTo the model the estimate varies: the one before, or it with another kind of damping */
    Outcome(ModelFile before, ModelFile fittedTo, Observations seen, Estimate estimate) {
        this.before = before;
        this.fittedTo = fittedTo;
        this.seen = seen;
        this.estimate = estimate;
        this.free = estimate.free();
    }

    @SuppressWarnings("ReferenceEquality") // the very estimate, not one like it
    Fitted fitted(List<Fit.Tried> tried, List<String> advice) {
        ModelFile plain = fittedTo.withQuantities(free.at(place()));
        List<Fitted.Value> values = values(plain);
        double[][] correlation = correlation();
        List<String> notes = new ArrayList<>(advice);
        notes.addAll(estimate.notes());
        notes.addAll(Doubts.of(estimate, correlation, seen));
        List<Fitted.KindOfDamping> kinds = tried.stream().map(t -> {
            Outcome other = new Outcome(before, t.variant().model(), seen, t.estimate());
            ModelFile model = t.variant().model().withQuantities(t.estimate().free().at(other.place()));
            return new Fitted.KindOfDamping(t.variant().kind(), t.variant().free(), other.values(model), t.estimate().aicc(),
                t.estimate().bic(), t.estimate() == estimate);
        }).toList();
        List<Fitted.Curve> curves = curves();
        return new Fitted(before, Offered.tolerances(plain, values, correlation), values, correlation, curves, modes(),
            kinds, quality(curves), notes);
    }

    /** Where the numbers ended; those held stay exactly where they were. */
    private double[] place() {
        double[] u = estimate.u().clone();
        double[] start = free.start();
        for (int i = 0; i < u.length; i++) {
            u[i] = estimate.held()[i] ? start[i] : u[i];
        }
        return u;
    }

    private List<Fitted.Value> values(ModelFile after) {
        Quantities now = after.design().quantities();
        Quantities then = fittedTo.design().quantities();
        double t = estimate.rows() > estimate.active()
            ? new TDistribution(estimate.rows() - estimate.active()).inverseCumulativeProbability(0.975) : Double.NaN;
        List<Fitted.Value> values = new ArrayList<>();
        for (int i = 0; i < free.size(); i++) {
            FreeValue v = free.get(i);
            double value = now.valueOf(v.of());
            double raw = estimate.value(i);
            double error = estimate.standardError(i) * (raw == 0 ? 1 : Math.abs(value / raw));
            Fitted.State state = estimate.held()[i] ? Fitted.State.HELD
                : estimate.atBound()[i] ? Fitted.State.AT_BOUND : Fitted.State.FOUND;
            double low = v.floored() ? Math.max(0, value - t * error) : value - t * error;
            values.add(new Fitted.Value(v.of(), v.detail().dimension(), then.valueOf(v.of()), value, error, low,
                value + t * error, state));
        }
        return values;
    }

    private double[][] correlation() {
        double[][] c = new double[free.size()][free.size()];
        for (int i = 0; i < c.length; i++) {
            for (int j = 0; j < c.length; j++) {
                c[i][j] = i == j && estimate.determined(i) ? 1 : estimate.correlation(i, j);
            }
        }
        return c;
    }

    private List<Fitted.Curve> curves() {
        double[] re = new double[seen.size()];
        double[] im = new double[seen.size()];
        FreeValues none = FreeValues.of(before.design().quantities(), List.of());
        new Evaluator(before.design(), none, seen).predict(new double[0], re, im);
        List<List<Fitted.Point>> points = new ArrayList<>();
        seen.series().forEach(s -> points.add(new ArrayList<>()));
        for (int i = 0; i < seen.size(); i++) {
            points.get(seen.of()[i]).add(point(i, re[i], im[i]));
        }
        List<Fitted.Curve> curves = new ArrayList<>();
        for (int s = 0; s < points.size(); s++) {
            Observations.Series series = seen.series().get(s);
            curves.add(new Fitted.Curve(series.source().file(), series.source().response().kind(), series.axis(),
                estimate.noise().get(s), points.get(s)));
        }
        return curves;
    }

    private Fitted.Point point(int i, double re, double im) {
        double m = seen.magnitude()[i];
        double after = Math.hypot(estimate.re()[i], estimate.im()[i]);
        double angle = Math.atan2(estimate.im()[i], estimate.re()[i]);
        double phase = seen.phased(i) ? Math.IEEEremainder(seen.phase()[i] - angle, 2 * Math.PI) : Double.NaN;
        double error = estimate.sigma()[i];
        return new Fitted.Point(seen.frequency()[i], new Fitted.Phasor(m, seen.phase()[i]),
            new Fitted.Phasor(Math.hypot(re, im), Math.atan2(im, re)), new Fitted.Phasor(after, angle), error, (m - after) / error,
            phase * after / error, estimate.outlier()[i]);
    }

    private static Fitted.Quality sums(List<Fitted.Curve> curves, Estimate e) {
        double then = 0;
        double now = 0;
        double chi = 0;
        int used = 0;
        int outliers = 0;
        for (Fitted.Curve curve : curves) {
            for (Fitted.Point p : curve.points()) {
                if (p.outlier()) {
                    outliers++;
                    continue;
                }
                used++;
                then += square(p.measured(), p.before()) / (p.before().magnitude() * p.before().magnitude());
                now += square(p.measured(), p.after()) / (p.after().magnitude() * p.after().magnitude());
                chi += square(p.measured(), p.after()) / (p.error() * p.error());
            }
        }
        return new Fitted.Quality(e.rows(), outliers, chi / Math.max(1, e.rows() - e.active()), Math.sqrt(then / used),
            Math.sqrt(now / used), e.aicc(), e.bic());
    }

    private Fitted.Quality quality(List<Fitted.Curve> curves) {
        return sums(curves, estimate);
    }

    private static double square(Fitted.Phasor a, Fitted.Phasor b) {
        if (Double.isNaN(a.phase())) {
            return (a.magnitude() - b.magnitude()) * (a.magnitude() - b.magnitude());
        }
        return a.magnitude() * a.magnitude() + b.magnitude() * b.magnitude()
            - 2 * a.magnitude() * b.magnitude() * Math.cos(a.phase() - b.phase());
    }

    /** Modes with standard errors by the derivatives of each with respect to each number. */
    private List<Fitted.Mode> modes() {
        if (before.design().platform().isEmpty()) {
            return List.of();
        }
        double[] u = place();
        List<ModeLine> then = lines(before.design());
        List<ModeLine> now = lines(with(u));
        double[][] slopes = new double[u.length][12];
        for (int i = 0; i < u.length; i++) {
            if (estimate.determined(i)) {
                double[] up = u.clone();
                up[i] += STEP;
                List<ModeLine> moved = lines(with(up));
                for (int n = 0; n < 6; n++) {
                    slopes[i][n] = (moved.get(n).frequencyHz() - now.get(n).frequencyHz()) / STEP;
                    slopes[i][6 + n] = (moved.get(n).dampingRatio() - now.get(n).dampingRatio()) / STEP;
                }
            }
        }
        List<Fitted.Mode> modes = new ArrayList<>();
        for (int n = 0; n < 6; n++) {
            modes.add(new Fitted.Mode(now.get(n).shape(), then.get(n).frequencyHz(), now.get(n).frequencyHz(), error(slopes, n),
                then.get(n).dampingRatio(), now.get(n).dampingRatio(), error(slopes, 6 + n)));
        }
        return modes;
    }

    private Design with(double[] u) {
        return fittedTo.design().with(free.at(u));
    }

    private static List<ModeLine> lines(Design design) {
        return ModeLine.of(new Assembly(design.platform().orElseThrow()));
    }

    private double error(double[][] slopes, int n) {
        double sum = 0;
        for (int i = 0; i < slopes.length; i++) {
            for (int j = 0; j < slopes.length; j++) {
                sum += slopes[i][n] * estimate.covariance()[i][j] * slopes[j][n];
            }
        }
        return Math.sqrt(Math.max(0, sum));
    }
}

package quietband.identification.fit;

import java.util.ArrayList;
import java.util.List;
import org.hipparchus.distribution.continuous.TDistribution;
import quietband.identification.doubt.FitDoubts;
import quietband.identification.search.FitEstimate;
import quietband.identification.search.FreeValue;
import quietband.identification.search.FreeValues;
import quietband.identification.search.MeasuredPoints;
import quietband.identification.search.ResponseEvaluator;
import quietband.model.Design;
import quietband.model.edit.ModelFile;
import quietband.model.quantity.Quantities;
import quietband.platform.Assembly;
import quietband.response.ModeProperties;

/** Makes the result of a fit from its estimate: values with intervals, the changed model, curves, modes. */
final class FitResultBuilder {

    private static final double STEP = 1e-4;

    private final ModelFile before;
    private final ModelFile fittedTo;
    private final MeasuredPoints seen;
    private final FitEstimate estimate;
    private final FreeValues free;

    /** @param fittedTo the model the estimate varies: the one before, or it with another kind of damping */
    FitResultBuilder(ModelFile before, ModelFile fittedTo, MeasuredPoints seen, FitEstimate estimate) {
        this.before = before;
        this.fittedTo = fittedTo;
        this.seen = seen;
        this.estimate = estimate;
        this.free = estimate.free();
    }

    @SuppressWarnings("ReferenceEquality") // the very estimate, not one like it
    FitResult fitted(List<ModelFit.Tried> tried, List<String> advice) {
        ModelFile plain = fittedTo.withQuantities(free.at(place()));
        List<FitResult.Value> values = values(plain);
        double[][] correlation = correlation();
        List<String> notes = new ArrayList<>(advice);
        notes.addAll(estimate.notes());
        notes.addAll(FitDoubts.of(estimate, correlation, seen));
        List<FitResult.KindOfDamping> kinds = tried.stream().map(t -> {
            FitResultBuilder other = new FitResultBuilder(before, t.variant().model(), seen, t.estimate());
            ModelFile model = t.variant().model().withQuantities(t.estimate().free().at(other.place()));
            return new FitResult.KindOfDamping(t.variant().kind(), t.variant().free(), other.values(model), t.estimate().aicc(),
                t.estimate().bic(), t.estimate() == estimate);
        }).toList();
        List<FitResult.Curve> curves = curves();
        return new FitResult(before, FittedTolerances.tolerances(plain, values, correlation), values, correlation, curves, modes(),
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

    private List<FitResult.Value> values(ModelFile after) {
        Quantities now = after.design().quantities();
        Quantities then = fittedTo.design().quantities();
        double t = estimate.rows() > estimate.active()
            ? new TDistribution(estimate.rows() - estimate.active()).inverseCumulativeProbability(0.975) : Double.NaN;
        List<FitResult.Value> values = new ArrayList<>();
        for (int i = 0; i < free.size(); i++) {
            FreeValue v = free.get(i);
            double value = now.valueOf(v.of());
            double raw = estimate.value(i);
            double error = estimate.standardError(i) * (raw == 0 ? 1 : Math.abs(value / raw));
            FitResult.State state = estimate.held()[i] ? FitResult.State.HELD
                : estimate.atBound()[i] ? FitResult.State.AT_BOUND : FitResult.State.FOUND;
            double low = v.floored() ? Math.max(0, value - t * error) : value - t * error;
            values.add(new FitResult.Value(v.of(), v.detail().dimension(), then.valueOf(v.of()), value, error, low,
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

    private List<FitResult.Curve> curves() {
        double[] re = new double[seen.size()];
        double[] im = new double[seen.size()];
        FreeValues none = FreeValues.of(before.design().quantities(), List.of());
        new ResponseEvaluator(before.design(), none, seen).predict(new double[0], re, im);
        List<List<FitResult.Point>> points = new ArrayList<>();
        seen.series().forEach(s -> points.add(new ArrayList<>()));
        for (int i = 0; i < seen.size(); i++) {
            points.get(seen.of()[i]).add(point(i, re[i], im[i]));
        }
        List<FitResult.Curve> curves = new ArrayList<>();
        for (int s = 0; s < points.size(); s++) {
            MeasuredPoints.Series series = seen.series().get(s);
            curves.add(new FitResult.Curve(series.source().file(), series.source().response().kind(), series.axis(),
                estimate.noise().get(s), points.get(s)));
        }
        return curves;
    }

    private FitResult.Point point(int i, double re, double im) {
        double m = seen.magnitude()[i];
        double after = Math.hypot(estimate.re()[i], estimate.im()[i]);
        double angle = Math.atan2(estimate.im()[i], estimate.re()[i]);
        double phase = seen.phased(i) ? Math.IEEEremainder(seen.phase()[i] - angle, 2 * Math.PI) : Double.NaN;
        double error = estimate.sigma()[i];
        return new FitResult.Point(seen.frequency()[i], new FitResult.Phasor(m, seen.phase()[i]),
            new FitResult.Phasor(Math.hypot(re, im), Math.atan2(im, re)), new FitResult.Phasor(after, angle), error, (m - after) / error,
            phase * after / error, estimate.outlier()[i]);
    }

    private FitResult.Quality quality(List<FitResult.Curve> curves) {
        double then = 0;
        double now = 0;
        double chi = 0;
        int used = 0;
        int outliers = 0;
        for (FitResult.Curve curve : curves) {
            for (FitResult.Point p : curve.points()) {
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
        return new FitResult.Quality(estimate.rows(), outliers, chi / Math.max(1, estimate.rows() - estimate.active()),
            Math.sqrt(then / used), Math.sqrt(now / used), estimate.aicc(), estimate.bic());
    }

    private static double square(FitResult.Phasor a, FitResult.Phasor b) {
        if (Double.isNaN(a.phase())) {
            return (a.magnitude() - b.magnitude()) * (a.magnitude() - b.magnitude());
        }
        return a.magnitude() * a.magnitude() + b.magnitude() * b.magnitude()
            - 2 * a.magnitude() * b.magnitude() * Math.cos(a.phase() - b.phase());
    }

    /** Modes with standard errors by the derivatives of each with respect to each number. */
    private List<FitResult.Mode> modes() {
        if (before.design().platform().isEmpty()) {
            return List.of();
        }
        double[] u = place();
        List<ModeProperties> then = lines(before.design());
        List<ModeProperties> now = lines(fittedTo.design().with(free.at(u)));
        double[][] slopes = new double[u.length][12];
        for (int i = 0; i < u.length; i++) {
            if (estimate.determined(i)) {
                double[] up = u.clone();
                up[i] += STEP;
                List<ModeProperties> moved = lines(fittedTo.design().with(free.at(up)));
                for (int n = 0; n < 6; n++) {
                    slopes[i][n] = (moved.get(n).frequencyHz() - now.get(n).frequencyHz()) / STEP;
                    slopes[i][6 + n] = (moved.get(n).dampingRatio() - now.get(n).dampingRatio()) / STEP;
                }
            }
        }
        List<FitResult.Mode> modes = new ArrayList<>();
        for (int n = 0; n < 6; n++) {
            modes.add(new FitResult.Mode(now.get(n).shape(), then.get(n).frequencyHz(), now.get(n).frequencyHz(), error(slopes, n),
                then.get(n).dampingRatio(), now.get(n).dampingRatio(), error(slopes, 6 + n)));
        }
        return modes;
    }

    private static List<ModeProperties> lines(Design design) {
        return ModeProperties.of(new Assembly(design.platform().orElseThrow()));
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

package quietband.identification;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import quietband.model.Axis;
import quietband.model.Design;
import quietband.model.Stack;

/** Where a measured response and a prediction agree within the measurement's uncertainty, and where not. */
public final class MeasurementAgreement {

    private MeasurementAgreement() { }

    /**
     * One measured value beside the predicted one.
     *
     * @param frequencyHz   where
     * @param axis          which
     * @param measured      magnitude, 1/g or a ratio
     * @param predicted     magnitude, the same unit
     * @param deviationDb   20 log10(measured/predicted)
     * @param phase         measured less predicted phase within +-pi, rad; NaN when not measured
     * @param relativeError uncertainty as a share of the measured magnitude; NaN when not stated
     * @param off           whether the two differ by more than the uncertainty: in magnitude, or in phase by more than
     *                      the angle whose sine it is
     */
    public record Point(double frequencyHz, Axis axis, double measured, double predicted, double deviationDb, double phase,
                        double relativeError, boolean off) { }

    /** A run of neighbouring measured frequencies that are all off on an axis, Hz. */
    public record Stretch(Axis axis, double fromHz, double toHz, double worstDb) { }

    /** Every measured value beside the prediction of a stack, axis by axis. */
    public static List<Point> points(Design design, Stack stack, MeasuredResponse measured) {
        PredictedResponse prediction = new PredictedResponse(design, measured.kind(), stack);
        List<Point> points = new ArrayList<>();
        for (Map.Entry<Axis, MeasuredResponse.Curve> e : measured.axes().entrySet()) {
            for (int i = 0; i < measured.frequencyHz().length; i++) {
                double f = measured.frequencyHz()[i];
                prediction.at(f);
                int axis = e.getKey().ordinal();
                points.add(point(f, e.getKey(), e.getValue(), i, new double[] {prediction.re(axis), prediction.im(axis)}));
            }
        }
        return points;
    }

    private static Point point(double f, Axis axis, MeasuredResponse.Curve curve, int i, double[] y) {
        double measured = curve.magnitude()[i];
        double predicted = StrictMath.hypot(y[0], y[1]);
        double error = curve.relativeError().map(e -> e[i]).orElse(Double.NaN);
        double phase = curve.phase().map(p -> StrictMath.IEEEremainder(p[i] - StrictMath.atan2(y[1], y[0]), 2 * Math.PI))
            .orElse(Double.NaN);
        // a value on the edge of its uncertainty is within it; rounding must not decide
        double room = error * measured * (1 + 1e-9);
        boolean off = Math.abs(measured - predicted) > room
            || error < 1 && Math.abs(phase) > StrictMath.asin(error) * (1 + 1e-9);
        return new Point(f, axis, measured, predicted, 20 * StrictMath.log10(measured / predicted), phase, error, off);
    }

    /** The stretches that are off, axis by axis. */
    public static List<Stretch> stretches(List<Point> points) {
        List<Stretch> stretches = new ArrayList<>();
        Point first = null;
        Point last = null;
        double worst = 0;
        for (Point p : points) {
            boolean goesOn = first != null && p.off() && p.axis() == first.axis();
            if (first != null && !goesOn) {
                stretches.add(new Stretch(first.axis(), first.frequencyHz(), last.frequencyHz(), worst));
                first = null;
            }
            if (p.off()) {
                worst = first == null || Math.abs(p.deviationDb()) > Math.abs(worst) ? p.deviationDb() : worst;
                first = first == null ? p : first;
                last = p;
            }
        }
        if (first != null) {
            stretches.add(new Stretch(first.axis(), first.frequencyHz(), last.frequencyHz(), worst));
        }
        return stretches;
    }
}

package quietband.study.compare;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import quietband.identification.MeasuredResponse;
import quietband.identification.MeasurementAgreement;
import quietband.model.Axis;
import quietband.model.Design;
import quietband.model.Stack;

/**
 * A measured response beside the prediction of a stack.
 *
 * @param stack    which prediction; of no meaning for a transmissibility
 * @param file     name of the measured file
 * @param points   every measured value beside the predicted one
 * @param off      stretches that differ by more than the uncertainty stated
 * @param rmsDb    deviation on each measured axis, root mean square, dB
 * @param within   magnitudes within the stated uncertainty; with one standard uncertainty a good model has two thirds
 * @param withinTwice the same of twice it; a good model has 95 %
 */
public record MeasurementComparison(Design design, Stack stack, String file, MeasuredResponse measured,
                                    List<MeasurementAgreement.Point> points, List<MeasurementAgreement.Stretch> off,
                                    Map<Axis, Double> rmsDb, long within, long withinTwice) {

    public MeasurementComparison {
        points = List.copyOf(points);
        off = List.copyOf(off);
    }

    /** Compares. */
    public static MeasurementComparison of(Design design, Stack stack, String file, MeasuredResponse measured) {
        List<MeasurementAgreement.Point> points = MeasurementAgreement.points(design, stack, measured);
        Map<Axis, Double> rms = new LinkedHashMap<>();
        measured.axes().keySet().forEach(a -> rms.put(a, Math.sqrt(points.stream().filter(p -> p.axis() == a)
            .mapToDouble(p -> p.deviationDb() * p.deviationDb()).average().orElse(0))));
        return new MeasurementComparison(design, stack, file, measured, points, MeasurementAgreement.stretches(points), rms,
            count(points, 1), count(points, 2));
    }

    private static long count(List<MeasurementAgreement.Point> points, double times) {
        return points.stream().filter(p -> Math.abs(p.measured() - p.predicted())
            <= times * p.relativeError() * p.measured() * (1 + 1e-9)).count();
    }

    /** Whether a sensitivity in 1/g was measured; else a transmissibility. */
    public boolean sensitivity() {
        return measured.kind() == MeasuredResponse.Kind.SENSITIVITY;
    }

    /** Whether the measurement states an uncertainty, without which nothing is judged. */
    public boolean judged() {
        return points.stream().anyMatch(p -> !Double.isNaN(p.relativeError()));
    }
}

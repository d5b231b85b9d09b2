package quietband.identification.doubt;

import java.util.List;
import java.util.Locale;
import java.util.Map;
import quietband.identification.FitException;
import quietband.identification.MeasuredFile;
import quietband.identification.MeasuredResponse;
import quietband.identification.MeasuredResponse.Kind;
import quietband.model.Axis;
import quietband.model.Design;
import quietband.model.Stack;

/** Whether a measurement can be what it is said to be, on a design. */
public final class MeasurementChecks {

    private MeasurementChecks() { }

    /**
     * Refuses files that cannot hold what they are said to hold.
     *
     * @throws FitException with what was found and what to do
     */
    public static void sources(Design design, List<MeasuredFile> sources) {
        for (MeasuredFile source : sources) {
            Kind kind = source.response().kind();
            if (kind == Kind.TRANSMISSIBILITY && design.platform().isEmpty()) {
                throw new FitException(source.file() + ": a transmissibility was measured, but the model has no platform; "
                    + "describe one in the model");
            }
            if ((kind == Kind.PATH || kind == Kind.WEIGHTED_PATH) && design.cancellation().isEmpty()) {
                throw new FitException(source.file() + ": a path was measured, but the model has no cancellation; "
                    + "describe one in the model");
            }
            if (kind == Kind.SENSITIVITY && !Stack.of(design).contains(source.stack())) {
                throw new FitException("--stack " + source.stack().key() + ": this model has no such stack; it has "
                    + String.join(", ", Stack.of(design).stream().map(Stack::key).toList()));
            }
            for (Map.Entry<Axis, MeasuredResponse.Curve> e : source.response().axes().entrySet()) {
                curve(source, e.getKey(), e.getValue());
            }
        }
    }

    private static void curve(MeasuredFile source, Axis axis, MeasuredResponse.Curve curve) {
        double[] m = curve.magnitude();
        double least = Double.POSITIVE_INFINITY;
        double most = 0;
        for (int i = 0; i < m.length; i++) {
            if (m[i] == 0) {
                throw new FitException(String.format(Locale.ROOT, "%s: axis %s: 0 at %.6g Hz is no response; leave the row out",
                    source.file(), axis.letter(), source.response().frequencyHz()[i]));
            }
            least = Math.min(least, m[i]);
            most = Math.max(most, m[i]);
        }
        if (source.response().kind() == Kind.TRANSMISSIBILITY && m.length > 2 && most - least <= 1e-12 * most) {
            throw new FitException(String.format(Locale.ROOT, "%s: axis %s: every value is %.6g; a platform's response changes with "
                + "frequency: was the sensor connected?", source.file(), axis.letter(), most));
        }
    }
}

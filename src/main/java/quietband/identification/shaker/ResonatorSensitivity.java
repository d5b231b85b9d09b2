package quietband.identification.shaker;

import java.util.List;
import java.util.Map;
import java.util.function.ToDoubleFunction;
import quietband.model.Axis;

/**
 * One resonator as measured.
 *
 * @param serial    its name; empty when the run is of one alone
 * @param axes      the measured axes, in order
 * @param notes     what is odd about it as a whole
 */
public record ResonatorSensitivity(String serial, Map<Axis, AxisSensitivity> axes, List<String> notes) {

    public ResonatorSensitivity {
        notes = List.copyOf(notes);
    }

    /** Whether all three axes have a value. */
    public boolean whole() {
        return axes.size() == 3 && axes.values().stream().allMatch(AxisSensitivity::usable);
    }

    /** Length of the vector over the axes that have a value, 1/g; NaN when none has. */
    public double vectorPerG() {
        double sum = axes.values().stream().filter(AxisSensitivity::usable).mapToDouble(a -> a.meanPerG() * a.meanPerG()).sum();
        return axes.values().stream().anyMatch(AxisSensitivity::usable) ? Math.sqrt(sum) : Double.NaN;
    }

    /** Standard uncertainty of the length, 1/g: sqrt(sum (G_i u_i)^2)/|G|; NaN where an axis has none. */
    public double vectorSigmaPerG() {
        return along(a -> a.sigmaPerG());
    }

    /** Half of the length's 95 % interval, 1/g, from those of the axes in the same way. */
    public double vectorHalfPerG() {
        return along(a -> a.halfPerG());
    }

    private double along(ToDoubleFunction<AxisSensitivity> width) {
        double sum = 0;
        for (AxisSensitivity a : axes.values()) {
            if (a.usable()) {
                double g = a.meanPerG() * width.applyAsDouble(a);
                sum += g * g;
            }
        }
        return Math.sqrt(sum) / vectorPerG();
    }
}

package quietband.identification.trim;

import java.util.List;
import java.util.Optional;
import org.hipparchus.complex.Complex;
import quietband.model.Axis;
import quietband.model.Vec;

/**
 * What two shaker runs say about one unit's cancellation.
 *
 * @param serial           empty where the files have none
 * @param axes             per sensor, x, y, z
 * @param points           readings, and what the new weights would leave
 * @param sensitivityPerG  the unit's own G as mounted, from the run with the cancellation off, 1/g
 * @param sensitivityError standard error of it, 1/g
 * @param quality          how well the model fits the readings
 * @param notes            notes, sentences without a full stop
 */
public record TrimmedUnit(String serial, List<Sensor> axes, List<Point> points, Vec sensitivityPerG, Vec sensitivityError,
                          Quality quality, List<String> notes) {

    public TrimmedUnit {
        axes = List.copyOf(axes);
        points = List.copyOf(points);
        notes = List.copyOf(notes);
    }

    /**
     * A number with its standard error; NaN where it could not be found.
     *
     * @param factor of the standard error for half the 95 % interval
     */
    public record Found(double value, double error, double factor) {

        /** Half the 95 % interval. */
        public double half() {
            return factor * error;
        }
    }

    /**
     * One sensor and its path.
     *
     * @param gain        relative gain error
     * @param phase       phase error, rad, a lead positive
     * @param delay       delay error, s
     * @param weightPerG  in the run, 1/g
     * @param newWeight   that leaves least, 1/g
     * @param correlation between the errors of phase and delay
     */
    public record Sensor(Axis axis, Found gain, Found phase, Found delay, double weightPerG, Found newWeight, double correlation) { }

    /**
     * One reading.
     *
     * @param after what the new weights would leave of {@code off}, 1/g
     * @param limit 1/g; infinite without one
     */
    public record Point(Axis axis, double frequencyHz, Complex off, Complex on, Complex after, double limit) { }

    /**
     * How well the model fits.
     *
     * @param chiSquare    of the cancellation, per degree of freedom; NaN where no uncertainty was stated
     * @param offChiSquare of the run with the cancellation off
     * @param noise        relative noise of a reading, from the scatter; NaN where stated
     */
    public record Quality(double chiSquare, double offChiSquare, double noise) { }

    /** What is largest over its limit (over all without one); empty when there is no reading. */
    public Optional<Point> worst(boolean trimmed) {
        return points.stream().max(java.util.Comparator.comparingDouble(p -> (trimmed ? p.after() : p.on()).norm()
            / (Double.isFinite(p.limit()) ? p.limit() : 1)));
    }

    /** Root mean square of the readings, 1/g. */
    public double rms(boolean trimmed) {
        double sum = points.stream().mapToDouble(p -> Math.pow((trimmed ? p.after() : p.on()).norm(), 2)).sum();
        return Math.sqrt(sum / points.size());
    }
}

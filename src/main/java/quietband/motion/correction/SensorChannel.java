package quietband.motion.correction;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import quietband.model.Cancellation;
import quietband.model.Design;
import quietband.model.DigitalFilter;
import quietband.model.Resonance;
import quietband.model.Vec;
import quietband.motion.signal.BlockSignal;
import quietband.motion.signal.GridSinusoid;

/**
 * A signal path that has to be followed: a combination of the three accelerations at the sensors, and the path of an axis
 * that it takes. Without nonlinear parts axes with the same path are one channel, their weights taken in at the front.
 *
 * @param row   share of the acceleration along x, y and z in what is sensed
 * @param axis  whose path it takes
 * @param gain  at the end of the path, 1/g
 * @param phase constant phase, rad
 * @param delay of the axis and latency, s
 */
public record SensorChannel(double[] row, int axis, double gain, double phase, double delay) {

    /** The channels of a design; none where every weight is zero. */
    public static List<SensorChannel> of(Design design, boolean linear) {
        Cancellation c = design.cancellation().orElseThrow();
        List<SensorChannel> list = new ArrayList<>();
        for (int i = 0; i < 3; i++) {
            double gain = design.weightsPerG().get(i) * (1 + c.error().gain().get(i));
            if (gain != 0) {
                double[] row = new double[3];
                for (int k = 0; k < 3; k++) {
                    row[k] = c.sensor().crossAxis().get(3 * i + k);
                }
                list.add(new SensorChannel(row, i, gain, c.error().phase().get(i), c.path().latency() + c.error().delay().get(i)));
            }
        }
        return linear && list.size() > 1 && list.stream().allMatch(x -> same(c, x, list.get(0))) ? List.of(merged(list)) : list;
    }

    private static SensorChannel merged(List<SensorChannel> list) {
        double[] row = new double[3];
        for (SensorChannel x : list) {
            for (int k = 0; k < 3; k++) {
                row[k] += x.gain * x.row[k];
            }
        }
        SensorChannel first = list.get(0);
        return new SensorChannel(row, first.axis, 1, first.phase, first.delay);
    }

    private static boolean same(Cancellation c, SensorChannel a, SensorChannel b) {
        Vec bandwidth = c.sensor().bandwidthHz();
        return a.phase == b.phase && a.delay == b.delay && bandwidth.get(a.axis) == bandwidth.get(b.axis)
            && same(c.sensor().resonance(), a.axis, b.axis) && same(c.path().filters().get(a.axis), c.path().filters().get(b.axis));
    }

    /** Whether two axes have the same resonance, or none. */
    static boolean same(Resonance r, int a, int b) {
        return r.on(a) == r.on(b) && (!r.on(a)
            || (r.frequencyHz().get(a) == r.frequencyHz().get(b) && r.q().get(a) == r.q().get(b)));
    }

    private static boolean same(DigitalFilter a, DigitalFilter b) {
        return Arrays.equals(a.tapIndex(), b.tapIndex()) && Arrays.equals(a.taps(), b.taps())
            && Arrays.deepEquals(a.sections(), b.sections());
    }

    /** A row of three over a 3 x 6 matrix: the combination of a point's accelerations in the body's coordinates (length 6). */
    public static double[] through(double[] row, double[] lever) {
        double[] six = new double[6];
        for (int c = 0; c < 6; c++) {
            six[c] = row[0] * lever[c] + row[1] * lever[6 + c] + row[2] * lever[12 + c];
        }
        return six;
    }

    /** Combines three signals. */
    public static void mix(double[] row, BlockSignal[] a, BlockSignal out, int n) {
        for (int k = 0; k <= n; k++) {
            out.value[k] = row[0] * a[0].value[k] + row[1] * a[1].value[k] + row[2] * a[2].value[k];
            out.slope[k] = row[0] * a[0].slope[k] + row[1] * a[1].slope[k] + row[2] * a[2].slope[k];
        }
    }

    /** Combines three phasors. */
    public static GridSinusoid mix(double[] row, GridSinusoid[] a) {
        return a[0].times(row[0]).plus(a[1].times(row[1])).plus(a[2].times(row[2]));
    }
}

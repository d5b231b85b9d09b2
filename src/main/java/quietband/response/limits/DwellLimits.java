package quietband.response.limits;

import java.util.List;
import java.util.Optional;
import quietband.model.Axis;
import quietband.model.Cancellation;
import quietband.model.Design;
import quietband.model.Platform;
import quietband.model.Platform.Spring;
import quietband.model.Stack;
import quietband.model.Vec;
import quietband.platform.Assembly;
import quietband.platform.BodyExtent;
import quietband.platform.PlatformMotion;
import quietband.platform.PointMotion;
import quietband.response.ResidualResponse;
import quietband.response.SwingTransfer;
import quietband.units.StandardGravity;

/**
 * How hard a design may be shaken by a sine along one axis until the fullest stack runs out of something: travel to the clearance
 * (over the points that count for travel), preload of compression-only springs, sensor range, tuning range. Linear figures.
 */
public final class DwellLimits {

    private final Design design;
    private final Assembly assembly;
    private final PlatformMotion motion;
    private final ResidualResponse response;
    private final SwingTransfer swing;
    private final List<Vec> points;

    /** For one design and one thread. */
    public DwellLimits(Design design) {
        this.design = design;
        this.assembly = design.platform().map(Assembly::new).orElse(null);
        this.motion = assembly == null ? null : new PlatformMotion(assembly);
        this.response = new ResidualResponse(design, assembly);
        this.swing = new SwingTransfer(response, Stack.fullest(design).sprung());
        this.points = design.platform().map(BodyExtent::points).orElse(List.of());
    }

    /**
     * Peak accelerations of the housing, g, at which something is just used up; infinite where it is not limited.
     *
     * @param travel to the clearance
     * @param slack  of a compression-only spring
     * @param sensor its range
     * @param tuning range of the port
     */
    public record Limit(double travel, double slack, double sensor, double tuning) {

        /** The least of them. */
        public double least() {
            return Math.min(Math.min(travel, slack), Math.min(sensor, tuning));
        }

        /** What the least of them is: travel, slack spring, sensor range or tuning range; empty when nothing limits. */
        public String cause() {
            double least = least();
            return Double.isInfinite(least) ? "" : least == travel ? "travel" : least == slack ? "slack spring"
                : least == sensor ? "sensor range" : "tuning range";
        }
    }

    /** The limits at a frequency in Hz, shaken along an axis. */
    public Limit at(double f, Axis axis) {
        double travel = Double.POSITIVE_INFINITY;
        double slack = Double.POSITIVE_INFINITY;
        if (motion != null) {
            motion.at(f);
            travel = travel(axis.ordinal());
            slack = slack(axis.ordinal());
        }
        Optional<Cancellation> c = design.cancellation();
        return c.isEmpty() ? new Limit(travel, slack, Double.POSITIVE_INFINITY, Double.POSITIVE_INFINITY)
            : ranges(c.get(), f, axis.ordinal(), travel, slack);
    }

    private double travel(int j) {
        Platform platform = design.platform().orElseThrow();
        double least = Double.POSITIVE_INFINITY;
        double[] re = new double[9];
        double[] im = new double[9];
        for (Vec p : points) {
            motion.displacementOf(p, re, im);
            for (int i = 0; i < 3 && platform.clearance().isPresent(); i++) {
                double perG = StrictMath.hypot(re[3 * i + j], im[3 * i + j]) * StandardGravity.M_PER_S2;
                least = Math.min(least, platform.clearance().get().get(i) / perG);
            }
        }
        return least;
    }

    private double slack(int j) {
        double least = Double.POSITIVE_INFINITY;
        for (Spring s : design.platform().orElseThrow().springs()) {
            if (!s.compressionOnly() || !(s.stiffness().z() > 0)) {
                continue;
            }
            double[] rows = PointMotion.turned(assembly.fromCentre(s.at()), s.orientation());
            double re = 0;
            double im = 0;
            for (int c = 0; c < 6; c++) {
                re += rows[12 + c] * motion.relativeRe(c, j);
                im += rows[12 + c] * motion.relativeIm(c, j);
            }
            least = Math.min(least, s.preload() / s.stiffness().z() / (StrictMath.hypot(re, im) * StandardGravity.M_PER_S2));
        }
        return least;
    }

    private Limit ranges(Cancellation c, double f, int j, double travel, double slack) {
        double[] power = swing.squared(f);
        double sensor = Double.POSITIVE_INFINITY;
        for (int i = 0; i < 3; i++) {
            sensor = Math.min(sensor, c.sensor().rangeG().get(i) / Math.sqrt(power[3 * i + j]));
        }
        double slope = Math.abs(c.tuning().slopePerV());
        double tuning = slope > 0 ? c.tuning().rangeV() * slope / Math.sqrt(power[9 + j]) : Double.POSITIVE_INFINITY;
        return new Limit(travel, slack, sensor, tuning);
    }
}

package quietband.motion.platform;

import java.util.List;
import quietband.model.Platform;
import quietband.model.Vec;
import quietband.motion.signal.BlockSignal;
import quietband.platform.Assembly;
import quietband.platform.BodyExtent;
import quietband.platform.PointMotion;

/**
 * Largest displacement relative to the housing along each axis, m: over the centre of gravity, the spring places and, with
 * a size, the corners of the block.
 */
public final class PeakDisplacement {

    private static final double LOOKS_PER_PERIOD = 64;

    private final double[][] levers;
    private final int stride;
    private final double reach;
    private final double[] most = new double[3];
    private final double[] centre = new double[3];

    PeakDisplacement(Platform platform, Assembly assembly, double step) {
        List<Vec> points = BodyExtent.points(platform);
        reach = points.stream().mapToDouble(p -> assembly.fromCentre(p).length()).max().orElse(0);
        levers = points.stream().map(p -> PointMotion.of(assembly.fromCentre(p))).toArray(double[][]::new);
        stride = (int) Math.max(1, Math.min(BlockSignal.BLOCK / 2, 1 / (LOOKS_PER_PERIOD * assembly.modes().frequencyHz(5) * step)));
    }

    void note(double[][] seen, int n) {
        for (int i = 0; i < 3; i++) {
            for (int k = 0; k <= n; k++) {
                centre[i] = Math.max(centre[i], Math.abs(seen[i][k]));
            }
            most[i] = Math.max(most[i], centre[i]);
        }
        for (int k = 0; k <= n; k += stride) {
            double turn = reach * (Math.abs(seen[3][k]) + Math.abs(seen[4][k]) + Math.abs(seen[5][k]));
            boolean could = false;
            for (int i = 0; i < 3; i++) {
                could |= Math.abs(seen[i][k]) + turn > most[i];
            }
            if (could) {
                look(seen, k);
            }
        }
    }

    private void look(double[][] seen, int k) {
        for (double[] b : levers) {
            for (int i = 0; i < 3; i++) {
                double u = 0;
                for (int c = 0; c < 6; c++) {
                    u += b[6 * i + c] * seen[c][k];
                }
                most[i] = Math.max(most[i], Math.abs(u));
            }
        }
    }

    /** Peak over all points, m. */
    public Vec peak() {
        return Vec.of(most);
    }

    /** Peak of the centre of gravity, m: what meets the stops. */
    public Vec centre() {
        return Vec.of(centre);
    }
}

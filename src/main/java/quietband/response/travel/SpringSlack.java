package quietband.response.travel;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import quietband.model.Axis;
import quietband.model.Design;
import quietband.model.Platform.Spring;
import quietband.model.Vec;
import quietband.platform.Assembly;
import quietband.platform.PointMotion;

/**
 * How near a compression-only spring comes to going slack in the linear figures: its extension along its z (the platform moving to
 * +z after the turn) under the sustained acceleration and three standard deviations of the random one, over
 * preload/rate. At rest under gravity the preload stands.
 *
 * @param spring    which
 * @param extension in m
 * @param free      preload/rate, m
 */
public record SpringSlack(Spring spring, double extension, double free) {

    /** One entry per compression-only spring. */
    public static List<SpringSlack> of(Design design, Assembly assembly, RandomMotion random) {
        List<Spring> pressed = design.platform().orElseThrow().springs().stream().filter(Spring::compressionOnly).toList();
        List<SpringSlack> slack = new ArrayList<>();
        for (Spring spring : pressed) {
            double[] rows = PointMotion.turned(assembly.fromCentre(spring.at()), spring.orientation());
            double steady = 0;
            for (Axis axis : design.vibration().axes()) {
                double[] q = Travel.steadyMotion(assembly, Vec.ZERO.with(axis, design.vibration().sustainedG()));
                double u = 0;
                for (int c = 0; c < 6; c++) {
                    u += rows[12 + c] * q[c];
                }
                steady = Math.max(steady, Math.abs(u));
            }
            double free = spring.stiffness().z() > 0 ? spring.preload() / spring.stiffness().z() : Double.POSITIVE_INFINITY;
            slack.add(new SpringSlack(spring, steady + random.peak(rows, 12), free));
        }
        return slack;
    }

    /** The warning with the level at which the spring goes slack; empty text when it does not. */
    public String warning() {
        if (extension <= free) {
            return "";
        }
        return String.format(Locale.ROOT, "compression-only spring %s goes slack at %.3g of the stated vibration (extension %.3g mm, "
            + "preload/rate %.3g mm): the linear figures do not show it", spring.label(), free / extension,
            extension * 1e3, free * 1e3);
    }
}

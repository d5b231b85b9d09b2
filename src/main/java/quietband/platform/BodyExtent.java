package quietband.platform;

import java.util.ArrayList;
import java.util.DoubleSummaryStatistics;
import java.util.List;
import quietband.model.Platform;
import quietband.model.Vec;

/** How much room the platform takes: its outermost points, from the origin, in m. */
public final class BodyExtent {

    private BodyExtent() { }

    /** The points whose travel counts: the centre of gravity, the spring places and, with a size, the corners. */
    public static List<Vec> points(Platform platform) {
        List<Vec> points = new ArrayList<>();
        points.add(platform.centreOfGravity());
        platform.springs().forEach(s -> points.add(s.at()));
        points.addAll(corners(platform));
        return points;
    }

    /** The corners of the block; none without a size. */
    public static List<Vec> corners(Platform platform) {
        List<Vec> corners = new ArrayList<>();
        platform.size().ifPresent(size -> {
            for (int corner = 0; corner < 8; corner++) {
                corners.add(platform.centreOfGravity().plus(new Vec(
                    (corner & 1) == 0 ? size.x() / 2 : -size.x() / 2,
                    (corner & 2) == 0 ? size.y() / 2 : -size.y() / 2,
                    (corner & 4) == 0 ? size.z() / 2 : -size.z() / 2)));
            }
        });
        return corners;
    }

    /** Size that the box must have inside: the body or the outermost springs, and the clearance on both sides; m. */
    public static Vec box(Platform platform, Vec clear) {
        List<Vec> points = points(platform);
        return Vec.perAxis(a -> {
            DoubleSummaryStatistics along = points.stream().mapToDouble(p -> p.get(a)).summaryStatistics();
            return along.getMax() - along.getMin() + 2 * clear.get(a);
        });
    }
}

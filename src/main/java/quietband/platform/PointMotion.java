package quietband.platform;

import quietband.model.Rotation;
import quietband.model.Vec;

/** The 3 x 6 matrices that take the platform's six coordinates to the motion of a point, stored row by row (length 18). */
public final class PointMotion {

    private PointMotion() { }

    /**
     * B(p) = [I, -[p]x] with p counted from the centre of gravity: u(p) = u + theta x p.
     *
     * @param fromCentre offset of the point from the centre of gravity, m
     */
    public static double[] of(Vec fromCentre) {
        double x = fromCentre.x();
        double y = fromCentre.y();
        double z = fromCentre.z();
        return new double[] {
            1, 0, 0, 0, z, -y,
            0, 1, 0, -z, 0, x,
            0, 0, 1, y, -x, 0};
    }

    /** Q^T B(p): the motion of the point along the principal axes of a turned spring. */
    public static double[] turned(Vec fromCentre, Rotation turn) {
        double[] b = of(fromCentre);
        if (turn.isNone()) {
            return b;
        }
        double[] q = turn.matrix();
        double[] turned = new double[18];
        for (int i = 0; i < 3; i++) {
            for (int j = 0; j < 6; j++) {
                turned[6 * i + j] = q[i] * b[j] + q[3 + i] * b[6 + j] + q[6 + i] * b[12 + j];
            }
        }
        return turned;
    }
}

package quietband.model;

/**
 * A right-handed rotation by an angle about an axis through the origin (90 deg about z takes x to y).
 *
 * @param axis  direction of the axis; any length above zero
 * @param angle in rad
 */
public record Rotation(Vec axis, double angle) {

    /** No rotation. */
    public static final Rotation NONE = new Rotation(new Vec(0, 0, 1), 0);

    /**
     * The rotation matrix, row by row (length 9), by Rodrigues' formula R = I + sin(a) [u]x + (1 - cos a) [u]x^2.
     * Quarter turns are exact, so that a turned diagonal matrix stays diagonal.
     */
    public double[] matrix() {
        double quarter = angle / (Math.PI / 2);
        boolean exact = Math.abs(quarter - Math.rint(quarter)) < 1e-14;
        int turns = exact ? (int) Math.floorMod((long) Math.rint(quarter), 4L) : 0;
        double s = exact ? new double[] {0, 1, 0, -1}[turns] : StrictMath.sin(angle);
        double c = exact ? new double[] {1, 0, -1, 0}[turns] : StrictMath.cos(angle);
        double length = axis.length();
        double x = axis.x() / length;
        double y = axis.y() / length;
        double z = axis.z() / length;
        double v = 1 - c;
        return new double[] {
            c + v * x * x, v * x * y - s * z, v * x * z + s * y,
            v * y * x + s * z, c + v * y * y, v * y * z - s * x,
            v * z * x - s * y, v * z * y + s * x, c + v * z * z};
    }

    /** The turned vector. */
    public Vec apply(Vec p) {
        double[] r = matrix();
        return new Vec(
            r[0] * p.x() + r[1] * p.y() + r[2] * p.z(),
            r[3] * p.x() + r[4] * p.y() + r[5] * p.z(),
            r[6] * p.x() + r[7] * p.y() + r[8] * p.z());
    }

    /** Whether it turns anything. */
    public boolean isNone() {
        return angle == 0;
    }
}

package quietband.demand;

import quietband.model.Axis;
import quietband.model.Design;

/**
 * What a design is asked of its residual sensitivity y: a limit over frequency, kept by each axis for itself (the worst of three
 * rows counts) or by the root of the sum of squares of all three (one row, the vector). Residuals come in as |y_j|^2 along x, y
 * and z, 1/g^2. In hot loops: {@link #squared(int, double, double, double)} against {@link #limit}, or
 * {@link #joined} of squares already over their squared limits.
 */
public final class ResidualDemand {

    /** Index of the vector beside those of the axes, 0 to 2. */
    public static final int VECTOR = 3;

    private static final double UNASKED = 1e-9;

    private final ResidualLimit limit;
    private final boolean vector;
    private final double unasked;

    /** Of a design; 1 ppb/g stands for the limit where none is stated. */
    public ResidualDemand(Design design) {
        this(design, UNASKED);
    }

    /** The same with another sensitivity, 1/g, for the limit where none is stated. */
    public ResidualDemand(Design design, double unaskedPerG) {
        limit = new ResidualLimit(design);
        vector = design.requirement().byVector();
        unasked = unaskedPerG;
    }

    /** Whether there is a limit at all. */
    public boolean asked() {
        return limit.asked();
    }

    /** How many rows are judged: 3 axes, or 1 vector. */
    public int rows() {
        return vector ? 1 : 3;
    }

    /** The row that judges an axis (0 to 2). */
    public int row(int axis) {
        return vector ? 0 : axis;
    }

    /** The axes whose squares add up in a row. */
    public int[] axes(int row) {
        return vector ? new int[] {0, 1, 2} : new int[] {row};
    }

    /** Index of what a row judges among x, y, z and vector, 0 to 3. */
    public int judged(int row) {
        return vector ? VECTOR : row;
    }

    /** Whether there is a limit that an axis (0 to 2) is held to by itself, or the vector (3). */
    public boolean judges(int index) {
        return asked() && (index == VECTOR) == vector;
    }

    /** The name of a row: x, y, z or vector. */
    public String name(int row) {
        return vector ? "vector" : Axis.ALL.get(row).letter();
    }

    /**
     * The limit that a row, or an axis by itself or within the vector, is judged by, 1/g; infinite where nothing limits it.
     *
     * @param axis 0 to 2, or {@link #VECTOR} for the least over the axes
     * @param f    in Hz
     */
    public double limit(int axis, double f) {
        if (!limit.asked()) {
            return unasked;
        }
        return vector || axis == VECTOR ? limit.vector(f) : limit.at(Axis.ALL.get(axis), f);
    }

    /** The limits of all rows, 1/g. */
    public double[] limits(double f) {
        return vector ? new double[] {limit(0, f)} : new double[] {limit(0, f), limit(1, f), limit(2, f)};
    }

    /** The square that a row judges, from those along x, y and z. */
    public double squared(int row, double x, double y, double z) {
        return vector ? x + y + z : row == 0 ? x : row == 1 ? y : z;
    }

    /** What is judged of three squares (each may be over its squared limit already): the largest, or the sum. */
    public double joined(double x, double y, double z) {
        return vector ? x + y + z : Math.max(x, Math.max(y, z));
    }

    /** The residual that a row judges, 1/g. */
    public double perG(int row, double[] squared) {
        return Math.sqrt(squared(row, squared[0], squared[1], squared[2]));
    }

    /** The residual that is judged, 1/g: of the largest axis, or of the vector. */
    public double perG(double[] squared) {
        return Math.sqrt(joined(squared[0], squared[1], squared[2]));
    }

    /** |y|/limit of the worst row at f in Hz; NaN when a square is. */
    public double ratio(double f, double[] squared) {
        double most = 0;
        for (int row = 0; row < rows(); row++) {
            most = Math.max(most, ratio(row, f, squared));
        }
        return most;
    }

    private double ratio(int row, double f, double[] squared) {
        return Decibels.ratio(perG(row, squared), limit(row, f));
    }

    /** 20 log10(|y|/limit) of the worst row, within +-300 dB, positive beyond the limit. */
    public double overDb(double f, double[] squared) {
        return Decibels.ofRatio(ratio(f, squared));
    }

    /** A row at f in Hz. */
    public ResidualPoint point(int row, double f, double[] squared) {
        double y = perG(row, squared);
        double line = asked() ? limit(row, f) : Double.POSITIVE_INFINITY;
        return new ResidualPoint(f, name(row), y, line, asked() ? Decibels.margin(y, line) : Double.NaN);
    }

    /** The worst row at f in Hz; the first of equal ones. */
    public ResidualPoint worst(double f, double[] squared) {
        int worst = 0;
        for (int row = 1; row < rows(); row++) {
            worst = ratio(row, f, squared) > ratio(worst, f, squared) ? row : worst;
        }
        return point(worst, f, squared);
    }

    /** Squares of magnitudes along x, y and z; 0 for NaN, an axis that was not looked at. */
    public static double[] squares(double[] perG) {
        double[] squared = new double[3];
        for (int j = 0; j < 3; j++) {
            squared[j] = Double.isNaN(perG[j]) ? 0 : perG[j] * perG[j];
        }
        return squared;
    }
}

package quietband.model;

import java.util.function.DoubleUnaryOperator;
import java.util.function.ToDoubleFunction;

/**
 * Three numbers, one per axis; the unit is that of the quantity that holds it.
 *
 * @param x along x
 * @param y along y
 * @param z along z
 */
public record Vec(double x, double y, double z) {

    /** Zero on every axis. */
    public static final Vec ZERO = new Vec(0, 0, 0);

    /** The same value on every axis. */
    public static Vec all(double value) {
        return new Vec(value, value, value);
    }

    /** The first three elements of an array, copied. */
    public static Vec of(double[] values) {
        return new Vec(values[0], values[1], values[2]);
    }

    /** The component of an axis. */
    public double get(Axis axis) {
        return get(axis.ordinal());
    }

    /** The component by number, 0 to 2. */
    public double get(int axis) {
        return switch (axis) {
            case 0 -> x;
            case 1 -> y;
            case 2 -> z;
            default -> throw new IllegalArgumentException("axis " + axis);
        };
    }

    /** This with one component replaced. */
    public Vec with(Axis axis, double value) {
        return new Vec(axis == Axis.X ? value : x, axis == Axis.Y ? value : y, axis == Axis.Z ? value : z);
    }

    /** A fresh array of length 3. */
    public double[] toArray() {
        return new double[] {x, y, z};
    }

    /** Component by component. */
    public Vec map(DoubleUnaryOperator f) {
        return new Vec(f.applyAsDouble(x), f.applyAsDouble(y), f.applyAsDouble(z));
    }

    /** Sum. */
    public Vec plus(Vec other) {
        return new Vec(x + other.x, y + other.y, z + other.z);
    }

    /** Difference. */
    public Vec minus(Vec other) {
        return new Vec(x - other.x, y - other.y, z - other.z);
    }

    /** Product with a number. */
    public Vec times(double factor) {
        return new Vec(x * factor, y * factor, z * factor);
    }

    /** Euclidean length. */
    public double length() {
        return Math.sqrt(x * x + y * y + z * z);
    }

    /** What a function gives for each axis. */
    public static Vec perAxis(ToDoubleFunction<Axis> component) {
        return new Vec(component.applyAsDouble(Axis.X), component.applyAsDouble(Axis.Y), component.applyAsDouble(Axis.Z));
    }

    /** The same with components of another where this one has NaN. */
    public Vec orElse(Vec other) {
        return perAxis(a -> Double.isNaN(get(a)) ? other.get(a) : get(a));
    }

    /** The largest component. */
    public double largest() {
        return Math.max(x, Math.max(y, z));
    }
}

package quietband.model.compile;

import java.util.Arrays;
import java.util.Optional;
import quietband.model.Resonance;
import quietband.model.Rotation;
import quietband.model.Vec;
import quietband.model.format.FormatNode;
import quietband.model.format.WrittenValue;
import quietband.spectrum.LogCurve;

/**
 * A part of a design as a function of the numbers in its slots. Slots are looked up once, when it is compiled from
 * the value tree; making the part is array reads and allocation only.
 */
public interface CompiledPart<T> {

    /** The part for these numbers, which are not modified and not kept. */
    T from(double[] v);

    /**
     * The same, but that of the file's own numbers is made once: units seldom differ in it.
     *
     * @param extent  first slot that it depends on and the one after the last
     * @param nominal the numbers as written
     */
    static <T> CompiledPart<T> onceFor(int[] extent, double[] nominal, CompiledPart<T> made) {
        T first = made.from(nominal);
        return v -> Arrays.equals(v, extent[0], extent[1], nominal, extent[0], extent[1]) ? first : made.from(v);
    }

    /** Three numbers in a row. */
    static Vec vec(double[] v, int first) {
        return new Vec(v[first], v[first + 1], v[first + 2]);
    }

    /** Three numbers, when the key is in the file. */
    static CompiledPart<Optional<Vec>> optionalVec(WrittenValue written) {
        int slot = written.slot();
        return written.given() ? v -> Optional.of(vec(v, slot)) : v -> Optional.empty();
    }

    /** An orientation: its axis is fixed, its angle a number. */
    static CompiledPart<Rotation> orientation(WrittenValue written) {
        Vec axis = written.get("axis").value() instanceof Vec vec ? vec : Rotation.NONE.axis();
        int angle = written.get("angle").slot();
        Rotation still = new Rotation(axis, 0);
        return v -> v[angle] == 0 ? still : new Rotation(axis, v[angle]);
    }

    /** One resonance per axis; frequencies and q each stand in a row. */
    static CompiledPart<Resonance> resonance(WrittenValue written) {
        int frequency = written.get("x").get("frequency").slot();
        int q = written.get("x").get("q").slot();
        boolean none = true;
        for (String axis : FormatNode.Spread.XYZ) {
            none &= !written.get(axis).get("frequency").given();
        }
        return none ? v -> Resonance.NONE : v -> new Resonance(vec(v, frequency), finite(v, q));
    }

    private static Vec finite(double[] v, int first) {
        return vec(v, first).map(q -> Double.isNaN(q) ? 1 : q);
    }

    /** How a line is drawn through points. */
    interface Drawn {
        LogCurve line(double[] over, double[] level);
    }

    /**
     * A line through the points of a list, empty when there are none. The line of the file's own numbers is made once.
     *
     * @param nominal the numbers as written
     */
    static CompiledPart<Optional<LogCurve>> curve(WrittenValue list, String over, String level, Drawn drawn, double[] nominal) {
        int count = list.items().size();
        int[] x = list.items().stream().mapToInt(i -> i.get(over).slot()).toArray();
        int[] y = list.items().stream().mapToInt(i -> i.get(level).slot()).toArray();
        if (count == 0) {
            return v -> Optional.empty();
        }
        double[] x0 = pick(nominal, x);
        double[] y0 = pick(nominal, y);
        Optional<LogCurve> first = Optional.of(drawn.line(x0, y0));
        return v -> {
            double[] xs = pick(v, x);
            double[] ys = pick(v, y);
            return Arrays.equals(xs, x0) && Arrays.equals(ys, y0) ? first : Optional.of(drawn.line(xs, ys));
        };
    }

    private static double[] pick(double[] v, int[] slots) {
        double[] picked = new double[slots.length];
        for (int i = 0; i < slots.length; i++) {
            picked[i] = v[slots[i]];
        }
        return picked;
    }
}

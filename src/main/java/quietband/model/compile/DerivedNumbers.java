package quietband.model.compile;

import java.util.Arrays;
import quietband.model.Design;
import quietband.model.Platform;
import quietband.model.Rotation;
import quietband.model.Vec;
import quietband.model.format.WrittenValue;
import quietband.model.quantity.Quantities;

/**
 * Numbers that follow others while the file does not write them: the output the carrier, the inertia mass and size,
 * the weights the turned sensitivity. They have slots with the followed values of the design as written, so that they
 * can be varied: what a slot differs by then acts on the followed value, as a ratio, or as a sum where that was 0.
 */
public final class DerivedNumbers {

    /** Value of a place in the tree whose number follows others. */
    static final Object MARK = "follows";

    private DerivedNumbers() { }

    /** Gives them their values in a value tree, where what they follow could be read. */
    public static void fill(WrittenValue root) {
        WrittenValue oscillator = root.get("oscillator");
        if (!oscillator.get("output").given() && oscillator.get("carrier").good()) {
            stand(oscillator.get("output"), oscillator.get("carrier").number());
        }
        WrittenValue resonator = oscillator.get("resonator");
        WrittenValue weights = root.get("cancellation").get("weights");
        if (root.get("cancellation").given() && !weights.given() && resonator.get("sensitivity").good()
            && !resonator.get("orientation").bad()) {
            Vec axis = resonator.get("orientation").get("axis").value() instanceof Vec vec ? vec : Rotation.NONE.axis();
            Rotation turn = new Rotation(axis, resonator.get("orientation").get("angle").number());
            Vec own = CompiledPart.vec(resonator.get("sensitivity").numbers(), 0);
            stand(weights, (turn.isNone() ? own : turn.apply(own)).toArray());
        }
        WrittenValue platform = root.get("platform");
        WrittenValue inertia = platform.get("inertia");
        if (!inertia.given() && platform.get("mass").good() && platform.get("size").good()) {
            Platform.Inertia block = Platform.Inertia.ofBlock(platform.get("mass").number(),
                CompiledPart.vec(platform.get("size").numbers(), 0));
            stand(inertia.get("xx"), block.xx());
            stand(inertia.get("yy"), block.yy());
            stand(inertia.get("zz"), block.zz());
            for (String product : new String[] {"xy", "xz", "yz"}) {
                stand(inertia.get(product), 0);
            }
        }
    }

    /**
     * The numbers of a changed design with those that follow others as they come out there, where any of them was
     * changed itself: what a file must say to give the same design.
     *
     * @param own of the design as written
     */
    public static Quantities effective(Design changed, Quantities own) {
        double[] v = changed.quantities().values();
        replace(v, own, "oscillator.output", changed.oscillator().outputHz());
        changed.platform().map(Platform::inertia).ifPresent(j -> replace(v, own, "platform.inertia.xx", j.xx(),
            j.yy(), j.zz(), j.xy(), j.xz(), j.yz()));
        changed.cancellation().ifPresent(c -> replace(v, own, "cancellation.weights",
            changed.weightsPerG().toArray()));
        return own.with(v);
    }

    /** Replaces numbers in a row of slots when any of them differs from the design's as written. */
    private static void replace(double[] v, Quantities own, String path, double... numbers) {
        int first = own.slotOf(path);
        boolean changed = false;
        for (int i = 0; i < numbers.length; i++) {
            changed |= v[first + i] != own.value(first + i);
        }
        if (changed) {
            System.arraycopy(numbers, 0, v, first, numbers.length);
        }
    }

    private static void stand(WrittenValue written, double... numbers) {
        boolean[] absent = new boolean[numbers.length];
        Arrays.fill(absent, true);
        written.numbers(numbers, absent).value(MARK);
    }

    /**
     * A followed number of a design with other numbers.
     *
     * @param followed what it is while its own slot is as in the design as written
     * @param own      number in its slot
     * @param nominal  number in its slot in the design as written
     */
    static double value(double followed, double own, double nominal) {
        if (own == nominal) {
            return followed;
        }
        return nominal == 0 ? followed + own : followed * (own / nominal);
    }
}

package quietband.model.compile;

import java.util.Optional;
import quietband.model.DesignParts;
import quietband.model.format.WrittenValue;

/** Compiles a checked value tree whose numbers have their slots into the blocks of a design as functions of them. */
public final class DesignMaker {

    private DesignMaker() { }

    /** Compiles a checked value tree; {@code nominal} are the numbers as written. */
    public static DesignParts compile(WrittenValue root, QuantityLayout layout, double[] nominal) {
        return new DesignParts(OscillatorMaker.compile(root.get("oscillator"), nominal)::from,
            optional(root.get("platform"), PlatformMaker.compile(root.get("platform"), nominal))::from,
            optional(root.get("cancellation"), CancellationMaker.compile(root.get("cancellation"),
                OscillatorMaker.resonator(root.get("oscillator").get("resonator")), nominal))::from,
            CompiledPart.onceFor(layout.extent("vibration"), nominal, VibrationMaker.compile(root.get("vibration"), nominal))::from,
            CompiledPart.onceFor(layout.extent("requirement"), nominal, RequirementMaker.compile(root.get("requirement"), nominal))::from,
            v -> CompiledPart.vec(v, root.get("cancellation").get("weights").slot()));
    }

    private static <T> CompiledPart<Optional<T>> optional(WrittenValue block, CompiledPart<T> made) {
        return block.given() ? v -> Optional.of(made.from(v)) : v -> Optional.empty();
    }
}

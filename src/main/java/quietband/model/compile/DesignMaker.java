package quietband.model.compile;

import java.util.Optional;
import quietband.model.Cancellation;
import quietband.model.DesignParts;
import quietband.model.Oscillator;
import quietband.model.Platform;
import quietband.model.Requirement;
import quietband.model.Vec;
import quietband.model.Vibration;
import quietband.model.format.WrittenValue;

/** Compiles a checked value tree whose numbers have their slots into the blocks of a design as functions of them. */
public record DesignMaker(CompiledPart<Oscillator> oscillators, CompiledPart<Optional<Platform>> platforms,
                          CompiledPart<Optional<Cancellation>> cancellations, CompiledPart<Vibration> vibrations,
                          CompiledPart<Requirement> requirements, CompiledPart<Vec> weights) implements DesignParts {

    /** Compiles a checked value tree; {@code nominal} are the numbers as written. */
    public static DesignMaker compile(WrittenValue root, QuantityLayout layout, double[] nominal) {
        return new DesignMaker(OscillatorMaker.compile(root.get("oscillator"), nominal),
            optional(root.get("platform"), PlatformMaker.compile(root.get("platform"), nominal)),
            optional(root.get("cancellation"), CancellationMaker.compile(root.get("cancellation"),
                OscillatorMaker.resonator(root.get("oscillator").get("resonator")), nominal)),
            CompiledPart.onceFor(layout.extent("vibration"), nominal, VibrationMaker.compile(root.get("vibration"), nominal)),
            CompiledPart.onceFor(layout.extent("requirement"), nominal, RequirementMaker.compile(root.get("requirement"), nominal)),
            v -> CompiledPart.vec(v, root.get("cancellation").get("weights").slot()));
    }

    private static <T> CompiledPart<Optional<T>> optional(WrittenValue block, CompiledPart<T> made) {
        return block.given() ? v -> Optional.of(made.from(v)) : v -> Optional.empty();
    }

    @Override
    public Oscillator oscillator(double[] numbers) {
        return oscillators.from(numbers);
    }

    @Override
    public Optional<Platform> platform(double[] numbers) {
        return platforms.from(numbers);
    }

    @Override
    public Optional<Cancellation> cancellation(double[] numbers) {
        return cancellations.from(numbers);
    }

    @Override
    public Vibration vibration(double[] numbers) {
        return vibrations.from(numbers);
    }

    @Override
    public Requirement requirement(double[] numbers) {
        return requirements.from(numbers);
    }

    @Override
    public Vec weightsPerG(double[] numbers) {
        return weights.from(numbers);
    }
}

package quietband.model;

import java.util.Optional;

/**
 * The five physical blocks of a design as functions of its numbers, and the weights that stand in their slots: as
 * written, or those of the design as written.
 */
record DesignMaker(Made<Oscillator> oscillator, Made<Optional<Platform>> platform,
                   Made<Optional<Cancellation>> cancellation, Made<Vibration> vibration,
                   Made<Requirement> requirement, Made<Vec> weightsPerG) {

    /** Compiles a checked value tree whose numbers have their slots. */
    static DesignMaker compile(Written root, Layout layout, double[] nominal) {
        return new DesignMaker(OscillatorMaker.compile(root.get("oscillator"), nominal),
            optional(root.get("platform"), PlatformMaker.compile(root.get("platform"), nominal)),
            optional(root.get("cancellation"), CancellationMaker.compile(root.get("cancellation"),
                OscillatorMaker.resonator(root.get("oscillator").get("resonator")), nominal)),
            Made.onceFor(layout.extent("vibration"), nominal, VibrationMaker.compile(root.get("vibration"), nominal)),
            Made.onceFor(layout.extent("requirement"), nominal, RequirementMaker.compile(root.get("requirement"), nominal)),
            v -> Made.vec(v, root.get("cancellation").get("weights").slot()));
    }

    private static <T> Made<Optional<T>> optional(Written block, Made<T> made) {
        return block.given() ? v -> Optional.of(made.from(v)) : v -> Optional.empty();
    }
}

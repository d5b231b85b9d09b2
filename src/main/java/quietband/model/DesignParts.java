package quietband.model;

import java.util.Optional;
import java.util.function.Function;

/**
 * The blocks of a design as functions of its numbers, one per slot; arrays are not modified and not kept.
 *
 * @param weightsPerG the numbers in the slots of the weights, 1/g: as written, or those of the design as written
 */
public record DesignParts(Function<double[], Oscillator> oscillator, Function<double[], Optional<Platform>> platform,
                          Function<double[], Optional<Cancellation>> cancellation, Function<double[], Vibration> vibration,
                          Function<double[], Requirement> requirement, Function<double[], Vec> weightsPerG) { }

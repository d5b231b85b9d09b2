package quietband.model;

import java.util.Optional;

/** The blocks of a design as functions of its numbers, one per slot; arrays are not modified and not kept. */
public interface DesignParts {

    Oscillator oscillator(double[] numbers);

    Optional<Platform> platform(double[] numbers);

    Optional<Cancellation> cancellation(double[] numbers);

    Vibration vibration(double[] numbers);

    Requirement requirement(double[] numbers);

    /** The numbers in the slots of the weights, 1/g: as written, or those of the design as written. */
    Vec weightsPerG(double[] numbers);
}

package quietband.filter;

import org.hipparchus.complex.Complex;
import quietband.cancellation.CancellationPath;
import quietband.model.Cancellation;
import quietband.model.Design;
import quietband.model.Vec;

/** From what a sensor feels to fractional frequency, without the digital filter: weight_i P_i, in 1/g. */
public interface PathResponse {

    /** The response of an axis (0 to 2) at f in Hz. */
    Complex weighted(int axis, double f);

    /** As the model has it, errors included. */
    static PathResponse of(Design design) {
        Cancellation c = design.cancellation().orElseThrow().withoutFilter();
        CancellationPath path = new CancellationPath(c);
        Vec weights = design.weightsPerG();
        return (axis, f) -> path.at(axis, f).multiply(weights.get(axis));
    }
}

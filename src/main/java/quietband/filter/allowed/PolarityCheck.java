package quietband.filter.allowed;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import quietband.model.Axis;
import quietband.model.Cancellation;
import quietband.model.Cancellation.PathError;
import quietband.model.Design;
import quietband.model.Stack;
import quietband.response.ResidualResponse;

/**
 * What the bench shows when a sensor's path has the right sign or the wrong one: shaken along its axis, at the one of some frequencies
 * where the two differ most.
 *
 * @param frequencyHz of the shaker
 * @param offPerG     residual with the cancellation off, 1/g
 * @param onPerG      with the cancellation on
 * @param wrongPerG   with this sensor's sign reversed
 */
public record PolarityCheck(Axis axis, double frequencyHz, double offPerG, double onPerG, double wrongPerG) {

    /**
     * For each sensor that has a weight.
     *
     * @param hz frequencies to choose from, Hz
     */
    public static List<PolarityCheck> of(Design design, double[] hz) {
        List<PolarityCheck> all = new ArrayList<>();
        for (Axis axis : Axis.ALL) {
            if (design.weightsPerG().get(axis.ordinal()) != 0) {
                all.add(of(design, axis, hz));
            }
        }
        return all;
    }

    private static PolarityCheck of(Design design, Axis axis, double[] hz) {
        Cancellation c = design.cancellation().orElseThrow();
        PathError e = c.error();
        PathError reversed = new PathError(e.gain().with(axis, -2 - e.gain().get(axis.ordinal())), e.phase(), e.delay());
        ResidualResponse right = new ResidualResponse(design);
        ResidualResponse wrong = new ResidualResponse(design.withCancellation(Optional.of(c.withError(reversed))));
        Stack full = Stack.fullest(design);
        Stack off = full.sprung() ? Stack.ISOLATED : Stack.BARE;
        PolarityCheck best = null;
        for (double f : hz) {
            PolarityCheck p = new PolarityCheck(axis, f, right.magnitude(off, axis, f), right.magnitude(full, axis, f),
                wrong.magnitude(full, axis, f));
            if (best == null || p.wrongPerG() - p.onPerG() > best.wrongPerG() - best.onPerG()) {
                best = p;
            }
        }
        return best;
    }
}

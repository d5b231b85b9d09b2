package quietband.response;

import java.util.EnumSet;
import java.util.Set;
import quietband.model.Stack;

/**
 * What one cause makes of the fullest stack's residual at a frequency, |y_j| in 1/g per axis (length 3).
 *
 * @param alone   with only this cause real, all others ideal
 * @param without with every cause real but this
 */
public record Contribution(Cause cause, double[] alone, double[] without) {

    /**
     * The contribution of a cause at the frequency the response is at.
     *
     * @param stack one with the cancellation on: without one nothing is cancelled and the causes have no meaning
     */
    public static Contribution of(ResidualResponse response, Stack stack, Cause cause) {
        Set<Cause> others = EnumSet.complementOf(EnumSet.of(cause));
        return new Contribution(cause, response.magnitudes(stack, EnumSet.of(cause)), response.magnitudes(stack, others));
    }
}

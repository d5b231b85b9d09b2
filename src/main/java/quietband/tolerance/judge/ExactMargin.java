package quietband.tolerance.judge;

import quietband.demand.ResidualLimit;
import quietband.model.Axis;
import quietband.model.Design;
import quietband.model.Stack;
import quietband.response.ResidualResponse;
import quietband.spectrum.AdaptiveCurves;

/** The margin of one unit near a frequency by the physics that {@code assess} uses, for units that sit on the limit. */
final class ExactMargin {

    private ExactMargin() { }

    /**
     * Least margin between two frequencies, dB.
     *
     * @param curve 0 to 2 for an axis; ignored when the vector is judged
     */
    static double marginDb(Design unit, int curve, double fromHz, double atHz, double toHz) {
        ResidualResponse response = new ResidualResponse(unit);
        ResidualLimit limit = new ResidualLimit(unit);
        Stack stack = Stack.fullest(unit);
        boolean vector = unit.requirement().byVector();
        double[] re = new double[3];
        double[] im = new double[3];
        AdaptiveCurves.Curves over = f -> {
            response.at(f);
            response.residual(stack, re, im);
            double power = 0;
            for (int j = 0; j < 3; j++) {
                power += vector || j == curve ? re[j] * re[j] + im[j] * im[j] : 0;
            }
            double line = vector ? limit.vector(f) : limit.at(Axis.ALL.get(curve), f);
            return new double[] {power > 0 && !Double.isInfinite(line) ? 10 * StrictMath.log10(power / (line * line)) : -300};
        };
        double[] grid = atHz > fromHz && atHz < toHz ? new double[] {fromHz, atHz, toHz} : new double[] {fromHz, toHz};
        return -AdaptiveCurves.refined(grid, over, 0.1).maximum(0).value();
    }
}

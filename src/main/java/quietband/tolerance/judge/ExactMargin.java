package quietband.tolerance.judge;

import quietband.demand.Decibels;
import quietband.demand.ResidualDemand;
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
        ResidualDemand demand = new ResidualDemand(unit);
        Stack stack = Stack.fullest(unit);
        AdaptiveCurves.Curves over = f -> {
            response.at(f);
            return new double[] {-Decibels.margin(demand.perG(curve, response.squares(stack)), demand.limit(curve, f))};
        };
        double[] grid = atHz > fromHz && atHz < toHz ? new double[] {fromHz, atHz, toHz} : new double[] {fromHz, toHz};
        return -AdaptiveCurves.refined(grid, over, 0.1).maximum(0).value();
    }
}

package quietband.study.assess;

import quietband.demand.ResidualDemand;
import quietband.model.Design;
import quietband.model.Stack;
import quietband.response.FrequencyTable;

/**
 * What each measure must give beside the other and what it gives, in dB of the worst axis over its limit (or of the vector):
 * with r(stack) = max_j |y_j|/limit_j the cancellation must give 20 log10 r(isolated) and gives
 * 20 log10 (r(isolated)/r(combined)); the springs must give 20 log10 r(cancelled) and give
 * 20 log10 (r(cancelled)/r(combined)). What is given less what must be given is the margin, for both the same.
 */
public final class NeededAttenuation {

    private final ResidualDemand demand;
    private final int isolated;
    private final int cancelled;
    private final int combined;

    /** For a design with both measures and a limit. */
    public NeededAttenuation(Design design, FrequencyTable table) {
        demand = new ResidualDemand(design);
        isolated = table.stacks().indexOf(Stack.ISOLATED);
        cancelled = table.stacks().indexOf(Stack.CANCELLED);
        combined = table.stacks().indexOf(Stack.COMBINED);
    }

    /** What the cancellation must give, dB. */
    public double correctionMust(FrequencyTable.Row r) {
        return db(over(r, isolated));
    }

    /** What the cancellation gives, dB. */
    public double correctionGives(FrequencyTable.Row r) {
        return db(over(r, isolated) / over(r, combined));
    }

    /** What the springs must give, dB. */
    public double springsMust(FrequencyTable.Row r) {
        return db(over(r, cancelled));
    }

    /** What the springs give, dB. */
    public double springsGive(FrequencyTable.Row r) {
        return db(over(r, cancelled) / over(r, combined));
    }

    /** Worst axis, or the vector, over its limit. */
    private double over(FrequencyTable.Row r, int stack) {
        return demand.ratio(r.frequencyHz(), ResidualDemand.squares(r.residualPerG()[stack]));
    }

    private static double db(double ratio) {
        return Double.isNaN(ratio) ? Double.NaN : 20 * StrictMath.log10(ratio);
    }
}

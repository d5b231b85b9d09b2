package quietband.tuning.cures;

import java.util.List;
import quietband.demand.RequirementResult;

/**
 * A change of some values with which a gap just closes.
 *
 * @param key      what is changed, as files name it; with + between two
 * @param words    the same for people
 * @param settings each value as it is and with the smallest change that meets the limit
 * @param marginDb least margin in the gap and around it with the change, dB: 0 within what a search can do
 * @param missed   what is asked of the design and not met with the change; empty for a stack that nothing but the residual
 *                 is asked of
 */
public record Cure(String key, String words, List<ValueChange> settings, double marginDb, List<RequirementResult> missed) {

    public Cure {
        settings = List.copyOf(settings);
        missed = List.copyOf(missed);
    }
}

package quietband.tuning.cures;

import java.util.List;
import java.util.Optional;
import quietband.demand.ResidualPoint;
import quietband.model.Stack;

/**
 * A stretch of the band in which a stack exceeds the residual limit, what causes it and what would close it.
 *
 * @param stack         which
 * @param fromHz        lower edge
 * @param toHz          upper edge
 * @param worst         where it exceeds most
 * @param amplification isolated over bolted down at the worst point on its axis; 1 without springs
 * @param cause         leading cause, as files name it: the one that, made ideal, lowers the residual there most
 * @param words         the same for people
 * @param withoutPerG   what is left at the worst point with the leading cause ideal, 1/g; NaN without a cancellation
 * @param single        the value of the leading cause that would just meet the limit; empty when none does
 * @param together      with what else it would, when it alone does not; empty when no pair with it does
 * @param others        other changes that close the gap without the leading cause, the most telling first
 */
public record CoverageGap(Stack stack, double fromHz, double toHz, ResidualPoint worst, double amplification, String cause, String words,
                  double withoutPerG, Optional<Cure> single, Optional<Cure> together, List<Cure> others) {

    public CoverageGap {
        others = List.copyOf(others);
    }

    /** The change to make first: of the leading cause alone, else together with another, else something else. */
    public Optional<Cure> cure() {
        return single.or(() -> together).or(() -> others.stream().findFirst());
    }
}

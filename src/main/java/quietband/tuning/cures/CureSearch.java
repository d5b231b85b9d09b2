package quietband.tuning.cures;

import java.util.List;
import java.util.Optional;
import org.hipparchus.analysis.solvers.AllowedSolution;
import org.hipparchus.analysis.solvers.BracketingNthOrderBrentSolver;
import quietband.demand.RequirementResult;
import quietband.model.Design;
import quietband.response.verdict.Assessment;
import quietband.response.verdict.Assessor;

/** Searches how far a remedy must go. */
final class CureSearch {

    private static final int SCAN = 40;
    private static final double SHARE_ACCURACY = 1e-9;
    private static final int MOST_LOOKS = 24;
    private static final double CLOSED_DB = 0.002;
    private static final double EDGE_DB = 0.01;

    private final GapMargin margin;
    private final boolean judged;

    /**
     * For one gap.
     *
     * @param judged whether a changed design is held against every requirement
     */
    CureSearch(GapMargin margin, boolean judged) {
        this.margin = margin;
        this.judged = judged;
    }

    /** The least share of the way at which the gap is closed, as a change; empty when none closes it. */
    Optional<Cure> cure(Remedy remedy) {
        double fails = 0;
        int looks = 0;
        for (int i = 1; i <= SCAN; i++) {
            double share = (double) i / SCAN;
            if (margin.excessRemembered(remedy.at(share)) <= 0) {
                double edge = edge(remedy, fails, share);
                double excess = margin.excess(remedy.at(edge));
                if (excess <= CLOSED_DB) {
                    // far below the limit all at once: no value meets it just so
                    return excess < -EDGE_DB ? Optional.empty() : Optional.of(change(remedy, edge));
                }
                // worse elsewhere, which is remembered now: the same share once more
                i--;
                fails = edge;
                if (++looks > MOST_LOOKS) {
                    return Optional.empty();
                }
            } else {
                fails = share;
            }
        }
        return Optional.empty();
    }

    /** The root between a share that fails and one that holds, at the remembered frequencies; the holding side. */
    private double edge(Remedy remedy, double fails, double holds) {
        double before = margin.excessRemembered(remedy.at(fails));
        if (before <= 0) {
            return fails;
        }
        return new BracketingNthOrderBrentSolver(0, SHARE_ACCURACY, 0, 3).solve(100,
            share -> share == fails ? before : margin.excessRemembered(remedy.at(share)), fails, holds,
            AllowedSolution.BELOW_SIDE);
    }

    private Cure change(Remedy remedy, double share) {
        Design changed = remedy.at(share);
        return new Cure(remedy.key(), remedy.words(), remedy.settings(share), -margin.excess(changed),
            judged ? missed(Assessor.assess(changed)) : List.of());
    }

    /** What a design does not meet; the residual, which is brought to its limit, may be over it by what a search can do. */
    private static List<RequirementResult> missed(Assessment after) {
        return after.requirements().stream()
            .filter(r -> !r.met() && !(r.name().equals("residual") && r.marginDb() > -EDGE_DB)).toList();
    }
}

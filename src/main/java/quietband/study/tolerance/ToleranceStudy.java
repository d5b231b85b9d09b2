package quietband.study.tolerance;

import java.util.List;
import java.util.Optional;
import java.util.function.BooleanSupplier;
import quietband.model.edit.ModelBundle;
import quietband.model.edit.ModelFile;
import quietband.tolerance.campaign.MonteCarloResult;
import quietband.tolerance.campaign.UnitReplay;
import quietband.tolerance.influence.LikeliestFailure;
import quietband.tolerance.influence.ToleranceInfluence;
import quietband.tolerance.judge.MonteCarloPlan;
import quietband.work.StoppablePart;

/**
 * A finished Monte Carlo with its questions.
 *
 * @param result      everything it found
 * @param likeliest   model of the likeliest failing unit; empty when none was found or it was stopped before
 * @param frequencyHz of the percentiles, Hz (not copied, do not modify)
 * @param levelPerG   residual of the worst axis in the nominal condition, 1/g, that a share of the units stays below, by stack, share
 *                    and frequency (not copied, do not modify)
 */
public record ToleranceStudy(ToleranceResult result, Optional<ModelBundle> likeliest, double[] frequencyHz, double[][][] levelPerG) {

    /** Shares of the units, 0 to 1. */
    public static final List<Double> SHARES = List.of(0.05, 0.5, 0.95, 0.99);

    /** What became of the units, and how long they took in s. */
    public record Drawn(MonteCarloResult outcome, double seconds) { }

    /** The likeliest failing unit, and its model. */
    private record Failing(LikeliestFailure failure, ModelBundle model) { }

    /**
     * Asks what is to be known of units that were drawn; of those of a Monte Carlo that was stopped only what they are.
     *
     * @param stopped    asked now and then: what is not known by then is given up
     * @param confidence of every interval, 0 to 1
     * @param threads    how many share the work; changes no figure
     */
    public static ToleranceStudy of(ModelFile file, MonteCarloPlan plan, Drawn drawn, double confidence, int threads,
                                    BooleanSupplier stopped) {
        MonteCarloResult outcome = drawn.outcome();
        BooleanSupplier enough = () -> outcome.partial() || stopped.getAsBoolean();
        // what is asked of the units is independent of each other
        StoppablePart<ToleranceInfluence> influence = new StoppablePart<>("influence",
            () -> ToleranceInfluence.of(plan, outcome, confidence, threads), enough);
        if (threads == 1) {
            influence.finish();
        }
        StoppablePart<Optional<Failing>> failing = new StoppablePart<>("likeliest", () -> LikeliestFailure.of(plan, outcome)
            .map(l -> new Failing(l, UnitReplay.model(file, plan, l.unit()).bundle())), enough);
        double[] f = outcome.frequencies();
        double[][][] levels = new double[outcome.stacks().size()][SHARES.size()][f.length];
        for (int s = 0; s < levels.length; s++) {
            for (int k = 0; k < SHARES.size(); k++) {
                for (int i = 0; i < f.length; i++) {
                    levels[s][k][i] = outcome.percentile(s, i, SHARES.get(k));
                }
            }
        }
        Optional<ToleranceInfluence> known = influence.finish();
        Optional<Failing> likeliest = known.isEmpty() ? Optional.empty() : failing.finish().orElse(Optional.empty());
        return new ToleranceStudy(new ToleranceResult(plan, outcome, known, likeliest.map(Failing::failure), confidence,
            drawn.seconds()), likeliest.map(Failing::model), f, levels);
    }

    /**
     * The model of one unit.
     *
     * @param index of the unit, from 0
     */
    public static ModelBundle replayed(ModelFile file, long seed, long index) {
        MonteCarloPlan plan = new MonteCarloPlan(file.design(), seed);
        return UnitReplay.model(file, plan, UnitReplay.unit(plan, index)).bundle();
    }
}

package quietband.tolerance.judge;

import java.util.ArrayList;
import java.util.List;
import quietband.model.Design;
import quietband.model.Tolerance;
import quietband.model.quantity.Quantities;
import quietband.tolerance.draw.ToleranceDraws;
import quietband.tolerance.draw.ToleranceException;
import quietband.tolerance.draw.VariedParts;

/** What every thread of a Monte Carlo needs and none changes: the design, its scatter, its conditions and what can decide in them. */
public final class MonteCarloPlan {

    private final Design nominal;
    private final ToleranceDraws scatter;
    private final long seed;
    private final List<JudgedCondition> conditions = new ArrayList<>();
    private final List<DecidingRequirements> screens = new ArrayList<>();
    private final int[] ranged;

    /**
     * Prepares.
     *
     * @throws ToleranceException when there is nothing to draw, or it cannot be drawn as written
     */
    public MonteCarloPlan(Design nominal, long seed) {
        this.nominal = nominal;
        this.seed = seed;
        if (nominal.tolerances().isEmpty()) {
            throw new ToleranceException("the model has no tolerances: there is nothing to draw; add a block 'tolerances'");
        }
        scatter = ToleranceDraws.of(nominal);
        VariedParts varied = VariedParts.of(nominal.quantities(), scatter.entries());
        List<Tolerance.Condition> all = new ArrayList<>(List.of(new Tolerance.Condition(JudgedCondition.NOMINAL, List.of())));
        all.addAll(nominal.conditions());
        // one condition a thread; each depends on nothing but the model and the seed
        conditions.addAll(all.parallelStream().map(c -> JudgedCondition.of(c.name(), nominal, c.changes(), varied, scatter,
            seed)).toList());
        screens.addAll(conditions.parallelStream().map(c -> DecidingRequirements.of(c, nominal, scatter, seed)).toList());
        ranged = scatter.touched();
    }

    /** The design as written. */
    public Design nominal() {
        return nominal;
    }

    /** Its tolerances. */
    public ToleranceDraws scatter() {
        return scatter;
    }

    /** Of all draws. */
    public long seed() {
        return seed;
    }

    /** Names of the conditions, the nominal first. */
    public List<String> conditionNames() {
        return conditions.stream().map(c -> c.name).toList();
    }

    /** What was settled for all units at once, in words. */
    public List<String> notes() {
        return screens.stream().flatMap(s -> s.notes().stream()).toList();
    }

    public List<JudgedCondition> conditions() {
        return conditions;
    }

    /** Judges for one thread, one per condition. */
    public List<UnitJudge> judges() {
        List<UnitJudge> judges = new ArrayList<>();
        for (int c = 0; c < conditions.size(); c++) {
            judges.add(new UnitJudge(conditions.get(c), screens.get(c)));
        }
        return judges;
    }

    /** A judge of the nominal condition for one thread, with every requirement or the residual alone. */
    public UnitJudge nominalJudge(boolean everything) {
        return new UnitJudge(conditions.get(0), everything ? screens.get(0) : DecidingRequirements.RESIDUAL_ONLY);
    }

    /** The numbers of a possible unit and the attempt that drew it, or null when this attempt is impossible by its ranges alone. */
    public Quantities draw(ToleranceDraws from, long index, int attempt) {
        Quantities drawn = from.at(scatter.normals(seed, index, attempt));
        if (!drawn.within(ranged)) {
            return null;
        }
        for (JudgedCondition c : conditions) {
            if (!c.changes.isEmpty() && !c.changed(drawn).within(ranged)) {
                return null;
            }
        }
        return drawn;
    }

    /** The drawn unit under a condition. */
    public Design unit(int condition, Quantities drawn) {
        return conditions.get(condition).unit(nominal, drawn);
    }
}

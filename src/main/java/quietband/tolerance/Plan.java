package quietband.tolerance;

import java.util.ArrayList;
import java.util.List;
import quietband.model.Design;
import quietband.model.Quantities;
import quietband.model.Tolerance;

/** What every thread of a Monte Carlo needs and none changes: the design, its scatter, its conditions and what can decide in them. */
public final class Plan {

    private final Design nominal;
    private final Scatter scatter;
    private final long seed;
    private final List<Condition> conditions = new ArrayList<>();
    private final List<Screen> screens = new ArrayList<>();
    private final int[] ranged;

    /**
     * Prepares.
     *
     * @throws ScatterException when there is nothing to draw, or it cannot be drawn as written
     */
    public Plan(Design nominal, long seed) {
        this.nominal = nominal;
        this.seed = seed;
        if (nominal.tolerances().isEmpty()) {
            throw new ScatterException("the model has no tolerances: there is nothing to draw; add a block 'tolerances'");
        }
        scatter = Scatter.of(nominal);
        Varied varied = Varied.of(nominal.quantities(), scatter.entries());
        List<Tolerance.Condition> all = new ArrayList<>(List.of(new Tolerance.Condition(Condition.NOMINAL, List.of())));
        all.addAll(nominal.conditions());
        // one condition a thread; each depends on nothing but the model and the seed
        conditions.addAll(all.parallelStream().map(c -> Condition.of(c.name(), nominal, c.changes(), varied, scatter, seed)).toList());
        screens.addAll(conditions.parallelStream().map(c -> Screen.of(c, nominal, scatter, seed)).toList());
        ranged = scatter.touched();
    }

    /** The design as written. */
    public Design nominal() {
        return nominal;
    }

    /** Its tolerances. */
    public Scatter scatter() {
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

    List<Condition> conditions() {
        return conditions;
    }

    /** Judges for one thread, one per condition. */
    List<UnitJudge> judges() {
        List<UnitJudge> judges = new ArrayList<>();
        for (int c = 0; c < conditions.size(); c++) {
            judges.add(new UnitJudge(conditions.get(c), screens.get(c)));
        }
        return judges;
    }

    /** A judge of the nominal condition for one thread, with everything that is asked or the residual alone. */
    UnitJudge nominalJudge(boolean everything) {
        return new UnitJudge(conditions.get(0), everything ? screens.get(0) : Screen.RESIDUAL_ONLY);
    }

    /** The numbers of a possible unit and the attempt that drew it, or null when this attempt is impossible by its ranges alone. */
    Quantities draw(Scatter from, long index, int attempt) {
        Quantities drawn = from.at(scatter.normals(seed, index, attempt));
        if (!drawn.within(ranged)) {
            return null;
        }
        for (Condition c : conditions) {
            if (!c.changes.isEmpty() && !c.changed(drawn).within(ranged)) {
                return null;
            }
        }
        return drawn;
    }

    /** The drawn unit under a condition. */
    Design unit(int condition, Quantities drawn) {
        return conditions.get(condition).unit(nominal, drawn);
    }
}

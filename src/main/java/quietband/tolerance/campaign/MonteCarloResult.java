package quietband.tolerance.campaign;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import quietband.model.Stack;
import quietband.tolerance.judge.MonteCarloPlan;
import quietband.tolerance.judge.RequirementKind;
import quietband.tolerance.judge.UnitVerdict;

/** What a Monte Carlo found, in whole counts and the few worst units. */
public final class MonteCarloResult {

    private static final int WORST = 10;

    private final List<String> conditions;
    private final List<Stack> stacks;
    private final double[] table;
    private final List<LevelCounts> levels = new ArrayList<>();
    private final long[] met;
    private final List<Map<RequirementKind, Long>> failures = new ArrayList<>();
    private final MarginCounts margins = new MarginCounts();
    private final List<UnitRow> worst = new ArrayList<>();
    private final FirstUnits first = new FirstUnits();
    private long units;
    private long redrawn;
    private long metInAll;
    private long evenlyMet;
    private long evenlyDiffers;
    private boolean partial;

    MonteCarloResult(MonteCarloPlan plan, double[] table) {
        this.conditions = plan.conditionNames();
        this.stacks = Stack.of(plan.nominal());
        this.table = table;
        this.met = new long[conditions.size()];
        conditions.forEach(c -> failures.add(new EnumMap<>(RequirementKind.class)));
        stacks.forEach(s -> levels.add(new LevelCounts(table.length)));
    }

    void add(UnitRow row) {
        units++;
        redrawn += row.attempts();
        metInAll += row.metInAll() ? 1 : 0;
        for (int c = 0; c < met.length; c++) {
            UnitVerdict v = row.verdicts().get(c);
            met[c] += v.met() ? 1 : 0;
            for (RequirementKind a : v.failures()) {
                failures.get(c).merge(a, 1L, Long::sum);
            }
        }
        UnitVerdict nominal = row.verdicts().get(0);
        margins.add(nominal.marginDb());
        first.add(nominal);
        boolean missed = nominal.failures().contains(RequirementKind.RESIDUAL);
        boolean missedEvenly = row.evenlyDb() < 0;
        evenlyMet += missedEvenly ? 0 : 1;
        evenlyDiffers += missed == missedEvenly ? 0 : 1;
        if (worst.size() < WORST || nominal.marginDb() < worst.get(worst.size() - 1).verdicts().get(0).marginDb()) {
            worst.add(row);
            worst.sort(Comparator.comparingDouble((UnitRow r) -> r.verdicts().get(0).marginDb())
                .thenComparingLong(UnitRow::index));
            if (worst.size() > WORST) {
                worst.remove(WORST);
            }
        }
    }

    void add(List<LevelCounts> more) {
        for (int s = 0; s < levels.size(); s++) {
            levels.get(s).add(more.get(s));
        }
    }

    void finish(boolean stopped) {
        partial = stopped;
    }

    public FirstUnits first() {
        return first;
    }

    /** How many units were judged. */
    public long units() {
        return units;
    }

    /** Whether it was stopped before all units were judged. */
    public boolean partial() {
        return partial;
    }

    /** How many impossible draws were drawn again. */
    public long redrawn() {
        return redrawn;
    }

    /** Names of the conditions, the nominal first. */
    public List<String> conditions() {
        return conditions;
    }

    /** How many units meet every requirement in a condition. */
    public long met(int condition) {
        return met[condition];
    }

    /** How many meet it in every condition. */
    public long metInAll() {
        return metInAll;
    }

    /** How many units fail a requirement in a condition. */
    public long failed(int condition, RequirementKind asked) {
        return failures.get(condition).getOrDefault(asked, 0L);
    }

    /** How many would meet the residual limit if only the table's points were looked at. */
    public long evenlyMet() {
        return evenlyMet;
    }

    /** For how many the table's points alone would decide otherwise. */
    public long evenlyDiffers() {
        return evenlyDiffers;
    }

    /** Margins of the nominal condition. */
    public MarginCounts margins() {
        return margins;
    }

    /** The units with the least margin in the nominal condition, worst first. */
    public List<UnitRow> worst() {
        return List.copyOf(worst);
    }

    /** The stacks of the percentiles. */
    public List<Stack> stacks() {
        return stacks;
    }

    /** Frequencies of the percentiles, Hz; a copy. */
    public double[] frequencies() {
        return table.clone();
    }

    /** The residual of the worst axis below which a share of units stays in the nominal condition, 1/g. */
    public double percentile(int stack, int frequency, double share) {
        return levels.get(stack).percentile(frequency, share);
    }
}

package quietband.filter.design;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import quietband.demand.Decibels;
import quietband.demand.PhaseNoise;
import quietband.demand.RequirementResult;
import quietband.filter.FilterGoal;
import quietband.filter.allowed.AllowedErrors;
import quietband.filter.allowed.Crossover;
import quietband.filter.fixedpoint.FixedDesign;
import quietband.filter.fixedpoint.FoundFilters;
import quietband.filter.goal.NoiseGoal;
import quietband.model.Axis;
import quietband.model.Design;
import quietband.model.Stack;
import quietband.response.DesignGrid;
import quietband.response.ResidualResponse;

/**
 * What is to be known of a design with its new filter beside the residual.
 *
 * @param allowed  how much error each path may have
 * @param least    the least of it over the band; empty without a limit
 * @param handOffs where the platform takes over, by additional delay
 * @param quiet    noise added to a unit at rest
 * @param bits     least word length at which rounding of coefficients costs no more than 0.5 dB
 * @param fixed    the filter in words of the length asked; empty when none was
 * @param binding  conditions the filter runs against
 */
public record FilterFacts(AllowedErrors allowed, List<AllowedErrors.Least> least, List<Crossover> handOffs, AddedNoise quiet, int bits,
                          Optional<FixedDesign> fixed, List<Binding> binding) {

    private static final double NEAR = 2e-3;
    private static final double NEAR_RANGE = 5e-3;
    private static final double NEAR_DB = 0.007;

    public FilterFacts {
        least = List.copyOf(least);
        handOffs = List.copyOf(handOffs);
        binding = List.copyOf(binding);
    }

    /**
     * An active constraint.
     *
     * @param condition   {@code max_gain}, {@code above_no_cancellation} or {@code tuning_range}
     * @param of          sensor axis, or row of the phase noise; empty for the tuning range
     * @param frequencyHz where; NaN for the tuning range
     * @param used        share of what is allowed
     */
    public record Binding(String condition, String of, double frequencyHz, double used) { }

    /**
     * Works them out.
     *
     * @param bits the free filters' least word length
     */
    public static FilterFacts of(FilterResult result, int bits, Optional<FixedDesign> fixed) {
        Design design = result.changed();
        AllowedErrors allowed = new AllowedErrors(design);
        return new FilterFacts(allowed, allowed.asked() ? allowed.least() : List.of(), Crossover.of(design), AddedNoise.of(design), bits,
            fixed, binding(result));
    }

    private static List<Binding> binding(FilterResult result) {
        List<Binding> binding = new ArrayList<>();
        for (Axis axis : Axis.ALL) {
            FoundFilters.Peak peak = result.found().peaks().get(axis.ordinal());
            double used = peak.gain() / result.task().maxGain();
            if (used >= 1 - NEAR) {
                binding.add(new Binding("max_gain", axis.letter(), peak.frequencyHz(), used));
            }
        }
        if (result.task().goal() == FilterGoal.NOISE) {
            binding.addAll(above(result.changed()));
        }
        for (RequirementResult r : result.after().requirements()) {
            if (r.name().equals("tuning_swing") && r.usedShare() >= 1 - NEAR_RANGE) {
                binding.add(new Binding("tuning_range", "", Double.NaN, r.usedShare()));
            }
        }
        return binding;
    }

    private static List<Binding> above(Design design) {
        List<Binding> binding = new ArrayList<>();
        ResidualResponse response = new ResidualResponse(design);
        PhaseNoise noise = new PhaseNoise(design);
        Stack full = Stack.fullest(design);
        Stack plain = full.sprung() ? Stack.ISOLATED : Stack.BARE;
        for (PhaseNoise.Row row : noise.rows()) {
            double most = Double.NEGATIVE_INFINITY;
            double at = Double.NaN;
            for (double f : DesignGrid.of(design, design.requirement().fromHz(), design.requirement().toHz())) {
                response.at(f);
                double with = noise.vibration(row, f, response.squares(full)) + noise.floor(full, f);
                double without = noise.vibration(row, f, response.squares(plain)) + noise.floor(plain, f);
                double over = Decibels.ofPower(with / without);
                if (over > most) {
                    most = over;
                    at = f;
                }
            }
            if (most > NEAR_DB) {
                binding.add(new Binding("above_no_cancellation", row.label(), at, most / NoiseGoal.MOST_DB));
            }
        }
        return binding;
    }
}

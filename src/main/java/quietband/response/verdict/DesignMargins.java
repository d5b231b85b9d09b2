package quietband.response.verdict;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.SortedMap;
import java.util.TreeMap;
import java.util.stream.Stream;
import quietband.demand.Decibels;
import quietband.demand.RequirementResult;
import quietband.model.Axis;
import quietband.model.Design;
import quietband.model.Platform;
import quietband.model.Vec;
import quietband.platform.BodyExtent;
import quietband.platform.SingularPlatformException;
import quietband.response.Effort;

/**
 * How one design stands to everything that is asked of it, mass and size included, with the effort of a search; whatever a search finds
 * is assessed again in full.
 *
 * @param requirements each thing asked
 */
public record DesignMargins(List<RequirementResult> requirements) {

    private static final double TOUCHES_DB = 0.05;
    private static final String RESIDUAL = "residual";

    public DesignMargins {
        requirements = List.copyOf(requirements);
    }

    /** Of a design; an impossible one is over its limits by 300 dB. */
    public static DesignMargins of(Design design) {
        try {
            List<RequirementResult> all = new ArrayList<>(Assessor.assess(design, Effort.COARSE).requirements());
            design.platform().ifPresent(p -> size(p, all));
            return new DesignMargins(all);
        } catch (SingularPlatformException | ArithmeticException e) {
            return new DesignMargins(Stream.of(RESIDUAL, "travel").map(name -> RequirementResult.margin(name, -Decibels.LARGEST, Double.NaN,
                Double.NaN, "", Double.NaN, "")).toList());
        }
    }

    private static void size(Platform p, List<RequirementResult> all) {
        if (Double.isFinite(p.massLimit())) {
            all.add(RequirementResult.share("mass", p.mass(), p.massLimit(), "kg", ""));
        }
        Vec need = BodyExtent.box(p, p.clearance().orElse(Vec.ZERO));
        for (Axis axis : Axis.ALL) {
            if (Double.isFinite(p.boxLimit().get(axis))) {
                all.add(RequirementResult.share("box", need.get(axis), p.boxLimit().get(axis), "m", axis.letter()));
            }
        }
    }

    /** Distance of the fullest stack's residual to its limit at the worst point, dB; NaN without one. */
    public double marginDb() {
        Optional<RequirementResult> residual = requirements.stream().filter(r -> r.name().equals(RESIDUAL)).findFirst();
        return residual.map(RequirementResult::marginDb).orElse(Double.NaN);
    }

    private Stream<RequirementResult> others() {
        return requirements.stream().filter(r -> !r.name().equals(RESIDUAL));
    }

    /** The largest excess over any limit but the residual's, dB; at most 0 when all are met. */
    public double worstOver() {
        return others().mapToDouble(RequirementResult::overDb).max().orElse(Double.NEGATIVE_INFINITY);
    }

    /** What a search for the best worst margin looks at: the residual's margin, or the least of the others where none is asked. */
    public double goal() {
        return Double.isNaN(marginDb()) ? -worstOver() : marginDb();
    }

    /** The limits besides the residual's that are touched within 0.05 dB or passed, in words, and by how much, dB. */
    public SortedMap<String, Double> touched() {
        SortedMap<String, Double> touched = new TreeMap<>();
        others().filter(r -> r.overDb() > -TOUCHES_DB).forEach(r -> touched.merge(r.name().replace('_', ' '), r.overDb(), Math::max));
        return touched;
    }
}

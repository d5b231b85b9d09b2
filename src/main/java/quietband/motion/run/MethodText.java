package quietband.motion.run;

import java.util.List;
import java.util.Locale;
import quietband.model.Design;
import quietband.motion.signal.TimeStepping;

/** Says how a pass is stepped. */
final class MethodText {

    private MethodText() { }

    /** Adds sentences to a list. */
    static void describe(SimulationPass engine, Design design, TimeStepping plan, List<String> into) {
        into.add(String.format(Locale.ROOT, "Linear parts take exact steps (matrix exponential) on a grid of %.6g Hz, signals "
            + "between its points are cubics through values and slopes.", 1 / plan.step()));
        engine.platform().ifPresent(p -> {
            into.add(String.format(Locale.ROOT, "The platform has %d states, %s.", p.equations().states(),
                p.splits() ? "taken apart into single and paired ones" : "stepped together"));
            if (!design.platform().orElseThrow().springs().stream().allMatch(s -> s.mass() == 0)) {
                into.add(String.format(Locale.ROOT, "Waves of springs with mass are followed to %.2g relative up to %.4g Hz.",
                    p.equations().lineError(), plan.loss().topHz()));
            }
            p.equations().fits().forEach((eta, fit) -> into.add(String.format(Locale.ROOT, "A loss factor of %.4g, the same at "
                + "every frequency, has no exact form in time: what loses energy must also stiffen with frequency. Springs with "
                + "dampers stand for it, off by %.1f %% of the complex stiffness at most from %.4g to %.4g Hz.", eta,
                100 * fit.worst(2 * Math.PI * design.requirement().fromHz(),
                    2 * Math.PI * plan.loss().topHz()), design.requirement().fromHz(), plan.loss().topHz())));
            if (p.contact() != null) {
                into.add("Stops and compression-only springs act: where one is reached, the equations change at the crossing, found to "
                    + "1/4096 of a step, and are stepped exactly in between.");
            }
        });
        design.cancellation().ifPresent(c -> into.add(c.path().sampled()
            ? String.format(Locale.ROOT, "The digital path runs sample by sample at %.6g Hz.", c.path().sampleRateHz())
            : "The path is analog; delays are taken by interpolation between grid points."));
        into.add(plan.linear() ? "Clipping, quantising, slack, stops and curvature are switched off."
            : "Clipping, quantising, slack, stops and curvature act where the model has them.");
    }
}

package quietband.tolerance;

import java.util.ArrayList;
import java.util.List;
import java.util.TreeSet;
import quietband.model.Design;
import quietband.model.Quantities;
import quietband.model.Tolerance;
import quietband.model.Vibration;
import quietband.platform.Assembly;
import quietband.platform.Resonances;
import quietband.response.Seeds;

/**
 * One condition to judge units in, with everything that they share. The search grid has some nine points in the half-power width
 * of the design's narrowest resonance, between 45 and 160 in each decade, or fewer away from resonances ({@link Grading}); where a
 * resonance is too narrow for that, every unit's own modes seed a grid of its own besides.
 */
final class Condition {

    /** Name of the condition in which the model stands as written. */
    static final String NOMINAL = "nominal";

    private static final int IN_WIDTH = 9;
    /** As many where the truth of a trial is found. */
    private static final int IN_WIDTH_FINE = 24;
    private static final int SPARSEST = 45;
    private static final int DENSEST = 160;
    private static final int MOST_TONES = 16;

    final String name;
    final List<Tolerance.Change> changes;
    final Design base;
    final Varied varied;
    final LineTables lines;
    final Nodes nodes;
    final boolean seeded;
    final double spacing;
    final int swingPerDecade;
    /** Whether jitter can be summed up on the nodes of the search. */
    final boolean inBand;
    /** Whether the tones are worked out beside the nodes of the search. */
    final boolean tonesBeside;
    private final List<int[]> slots = new ArrayList<>();

    private final boolean sprung;

    private enum Grid { EVEN, GRADED, FINE }

    /** With an even grid. */
    Condition(String name, Design nominal, List<Tolerance.Change> changes, Varied varied) {
        this(name, nominal, changes, varied, Grid.EVEN);
    }

    private Condition(String name, Design nominal, List<Tolerance.Change> changes, Varied varied, Grid kind) {
        this.name = name;
        this.changes = changes;
        this.varied = varied;
        changes.forEach(c -> slots.add(nominal.quantities().find(c.of()).slots()));
        this.base = changes.isEmpty() ? nominal : nominal.unit(nominal.quantities().changed(changes));
        Assembly assembly = base.platform().map(Assembly::new).orElse(null);
        double from = base.requirement().fromHz();
        double to = base.requirement().toHz();
        sprung = assembly != null;
        List<Resonances.Peak> peaks = sprung ? Resonances.between(assembly, from / 2, to * 1.1) : List.of();
        double narrowest = 1;
        for (Resonances.Peak p : peaks) {
            narrowest = Math.min(narrowest, p.widthHz() / p.frequencyHz());
        }
        double wanted = IN_WIDTH * StrictMath.log(10) / narrowest;
        int perDecade = (int) Math.max(SPARSEST, Math.min(DENSEST, Math.ceil(wanted)));
        seeded = wanted > DENSEST;
        spacing = StrictMath.log(10) / perDecade;
        swingPerDecade = (int) Math.max(SPARSEST, Math.min(2000, Math.ceil(wanted)));
        TreeSet<Double> grid = new TreeSet<>();
        Seeds seeds = new Seeds(base, null);
        for (double f : kind == Grid.GRADED ? seeds.on(Grading.grid(peaks, from, to, changes.isEmpty())) : seeds.between(from, to,
            kind == Grid.FINE ? perDecade * IN_WIDTH_FINE / IN_WIDTH : perDecade)) {
            grid.add(f);
        }
        inBand = base.requirement().jitter().filter(j -> j.fromHz() >= from && j.toHz() <= to).isPresent() && !seeded;
        if (inBand) {
            base.requirement().jitter().ifPresent(j -> grid.addAll(List.of(j.fromHz(), j.toHz())));
        }
        // units with nodes of their own expand around their own springs
        lines = seeded || varied.shared() ? LineTables.NONE : LineTables.of(base, 2 * Math.PI * to);
        double[] tones = base.vibration().tones().stream().mapToDouble(Vibration.Tone::frequencyHz)
            .filter(f -> f >= from && f <= to).distinct().toArray();
        tonesBeside = base.requirement().tones().isPresent() && !varied.shared() && tones.length <= MOST_TONES
            && base.vibration().tones().stream().allMatch(t -> t.frequencyHz() >= from && t.frequencyHz() <= to);
        nodes = new Nodes(grid.stream().mapToDouble(Double::doubleValue).toArray(), tonesBeside ? tones : new double[0], base, lines);
    }

    /** The same condition with a graded grid where some units show that it is enough, else this one. */
    Condition graded(Design nominal, Scatter scatter, long seed) {
        if (seeded || varied.shared() || !sprung) {
            return this;
        }
        Condition graded = new Condition(name, nominal, changes, varied, Grid.GRADED);
        Condition fine = new Condition(name, nominal, changes, varied, Grid.FINE);
        return Grading.holds(graded, fine, nominal, scatter, seed) ? graded : this;
    }

    /** The numbers of a drawn unit under this condition. */
    Quantities changed(Quantities drawn) {
        if (changes.isEmpty()) {
            return drawn;
        }
        double[] values = drawn.values();
        for (int c = 0; c < changes.size(); c++) {
            double by = changes.get(c).value();
            for (int slot : slots.get(c)) {
                values[slot] = switch (changes.get(c).act()) {
                    case SET -> by;
                    case SCALE -> values[slot] * (1 + by);
                    case ADD -> values[slot] + by;
                };
            }
        }
        return drawn.with(values);
    }

    /** A drawn unit under this condition. */
    Design unit(Design nominal, Quantities drawn) {
        return nominal.unit(changed(drawn));
    }
}

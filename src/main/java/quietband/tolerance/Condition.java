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
 * of the design's narrowest resonance, between 45 and 160 in each decade; where a resonance is too narrow for that, every unit's own
 * modes seed a grid of its own besides.
 */
final class Condition {

    /** Name of the condition in which the model stands as written. */
    static final String NOMINAL = "nominal";

    private static final int IN_WIDTH = 9;
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

    Condition(String name, Design nominal, List<Tolerance.Change> changes, Varied varied) {
        this.name = name;
        this.changes = changes;
        this.varied = varied;
        changes.forEach(c -> slots.add(nominal.quantities().find(c.of()).slots()));
        this.base = changes.isEmpty() ? nominal : nominal.unit(nominal.quantities().changed(changes));
        Assembly assembly = base.platform().map(Assembly::new).orElse(null);
        double from = base.requirement().fromHz();
        double to = base.requirement().toHz();
        double narrowest = 1;
        if (assembly != null) {
            for (Resonances.Peak p : Resonances.between(assembly, from / 2, to * 1.1)) {
                narrowest = Math.min(narrowest, p.widthHz() / p.frequencyHz());
            }
        }
        double wanted = IN_WIDTH * StrictMath.log(10) / narrowest;
        int perDecade = (int) Math.max(SPARSEST, Math.min(DENSEST, Math.ceil(wanted)));
        seeded = wanted > DENSEST;
        spacing = StrictMath.log(10) / perDecade;
        swingPerDecade = (int) Math.max(SPARSEST, Math.min(2000, Math.ceil(wanted)));
        TreeSet<Double> grid = new TreeSet<>();
        for (double f : new Seeds(base, null).between(from, to, perDecade)) {
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

package quietband.tolerance.judge;

import java.util.ArrayList;
import java.util.List;
import java.util.TreeSet;
import quietband.model.Design;
import quietband.model.Vibration;
import quietband.model.quantity.NumberChange;
import quietband.model.quantity.Quantities;
import quietband.platform.Assembly;
import quietband.platform.Resonances;
import quietband.response.GridSeeds;
import quietband.tolerance.draw.ToleranceDraws;
import quietband.tolerance.draw.VariedParts;
import quietband.tolerance.kernel.BlockedGrid;

/**
 * One condition to judge units in, with everything that they share. The search grid has some nine points in the half-power width
 * of the design's narrowest resonance, between 45 and 160 in each decade, or fewer away from resonances ({@link GradedGrid}); where a
 * resonance is too narrow for that, every unit's own modes seed a grid of its own besides.
 */
public final class JudgedCondition {

    /** Name of the condition in which the model stands as written. */
    static final String NOMINAL = "nominal";

    private static final int IN_WIDTH = 9;
    /** As many where the truth of a trial is found. */
    private static final int IN_WIDTH_FINE = 24;
    private static final int SPARSEST = 45;
    private static final int DENSEST = 160;
    private static final int MOST_TONES = 16;

    final String name;
    final List<NumberChange> changes;
    final Design base;
    public final VariedParts varied;
    public final BlockedGrid nodes;
    final boolean seeded;
    final double spacing;
    final int swingPerDecade;
    /** Whether jitter can be summed up on the nodes of the search. */
    final boolean inBand;
    /** Whether the tones are worked out beside the nodes of the search. */
    final boolean tonesBeside;
    private final List<int[]> slots = new ArrayList<>();

    private enum Grid { EVEN, GRADED, FINE }

    /**
     * A condition before its grid is chosen.
     *
     * @param peaks  resonances of its platform; empty without one
     * @param wanted points of an even grid in each decade that are some in the narrowest resonance's width
     */
    private record Basis(String name, List<NumberChange> changes, Design base, VariedParts varied, List<Resonances.Peak> peaks,
                         double wanted) {

        boolean seeded() {
            return wanted > DENSEST;
        }

        static Basis of(String name, Design nominal, List<NumberChange> changes, VariedParts varied) {
            Design base = changes.isEmpty() ? nominal : nominal.unit(nominal.quantities().changed(changes));
            List<Resonances.Peak> peaks = base.platform().map(p -> Resonances.between(new Assembly(p),
                base.requirement().fromHz() / 2, base.requirement().toHz() * 1.1)).orElse(List.of());
            double narrowest = peaks.stream().mapToDouble(p -> p.widthHz() / p.frequencyHz()).min().orElse(1);
            return new Basis(name, changes, base, varied, peaks, IN_WIDTH * StrictMath.log(10) / Math.min(1, narrowest));
        }
    }

    private JudgedCondition(Basis basis, Quantities quantities, Grid kind) {
        name = basis.name;
        changes = basis.changes;
        varied = basis.varied;
        base = basis.base;
        changes.forEach(c -> slots.add(quantities.find(c.of()).slots()));
        double from = base.requirement().fromHz();
        double to = base.requirement().toHz();
        int perDecade = (int) Math.max(SPARSEST, Math.min(DENSEST, Math.ceil(basis.wanted)));
        seeded = basis.seeded();
        spacing = StrictMath.log(10) / perDecade;
        swingPerDecade = (int) Math.max(SPARSEST, Math.min(2000, Math.ceil(basis.wanted)));
        TreeSet<Double> grid = new TreeSet<>();
        GridSeeds seeds = new GridSeeds(base, null);
        for (double f : kind == Grid.GRADED ? seeds.on(GradedGrid.grid(basis.peaks, from, to, changes.isEmpty())) : seeds.between(from, to,
            kind == Grid.FINE ? perDecade * IN_WIDTH_FINE / IN_WIDTH : perDecade)) {
            grid.add(f);
        }
        inBand = base.requirement().jitter().filter(j -> j.fromHz() >= from && j.toHz() <= to).isPresent() && !seeded;
        if (inBand) {
            base.requirement().jitter().ifPresent(j -> grid.addAll(List.of(j.fromHz(), j.toHz())));
        }
        double[] tones = base.vibration().tones().stream().mapToDouble(Vibration.Tone::frequencyHz)
            .filter(f -> f >= from && f <= to).distinct().toArray();
        tonesBeside = base.requirement().tones().isPresent() && !varied.shared() && tones.length <= MOST_TONES
            && base.vibration().tones().stream().allMatch(t -> t.frequencyHz() >= from && t.frequencyHz() <= to);
        nodes = new BlockedGrid(grid.stream().mapToDouble(Double::doubleValue).toArray(), tonesBeside ? tones : new double[0], base);
    }

    /**
     * Prepares a condition: with a graded grid where some units show that it is enough, else with an even one.
     *
     * @param changes what it changes in the design
     */
    static JudgedCondition of(String name, Design nominal, List<NumberChange> changes, VariedParts varied,
        ToleranceDraws scatter, long seed) {
        Basis basis = Basis.of(name, nominal, changes, varied);
        if (!basis.seeded() && !varied.shared() && basis.base.platform().isPresent()) {
            JudgedCondition graded = new JudgedCondition(basis, nominal.quantities(), Grid.GRADED);
            JudgedCondition fine = new JudgedCondition(basis, nominal.quantities(), Grid.FINE);
            if (GradedGrid.holds(graded, fine, nominal, scatter, seed)) {
                return graded;
            }
        }
        return new JudgedCondition(basis, nominal.quantities(), Grid.EVEN);
    }

    /** The numbers of a drawn unit under this condition. */
    Quantities changed(Quantities drawn) {
        if (changes.isEmpty()) {
            return drawn;
        }
        return drawn.altered(values -> {
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
        });
    }

    /** A drawn unit under this condition. */
    Design unit(Design nominal, Quantities drawn) {
        return nominal.unit(changed(drawn));
    }
}

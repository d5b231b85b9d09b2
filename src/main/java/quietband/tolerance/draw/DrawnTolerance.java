package quietband.tolerance.draw;

import java.util.LinkedHashMap;
import java.util.Map;
import quietband.model.Tolerance;
import quietband.model.quantity.NumberSlot;
import quietband.model.quantity.Quantities;
import quietband.model.quantity.SelectedNumbers;
import quietband.numerics.NormalCurve;

/**
 * One tolerance, made ready for drawing.
 *
 * @param tolerance as written
 * @param law       of each drawn value; one per number drawn (they differ only for lognormal addends)
 * @param slots     of the quantities it acts on
 * @param number    which of its drawn numbers acts on each slot
 * @param first     place of its first number among all of the unit's normals
 * @param count     how many numbers it draws
 * @param narrowed  whether the rows of a lot are moved halfway to their mean
 */
public record DrawnTolerance(Tolerance tolerance, DrawDistribution[] law, int[] slots, int[] number, int first, int count,
    boolean narrowed) {

    /**
     * Makes one ready.
     *
     * @param first place of its first number
     * @throws ToleranceException when a lognormal addend has no nominal value to be the median of
     */
    static DrawnTolerance of(Tolerance t, Quantities nominal, int first) {
        SelectedNumbers of = nominal.find(t.of());
        int[] number = new int[of.size()];
        Map<String, Integer> springs = new LinkedHashMap<>();
        for (int i = 0; i < number.length; i++) {
            NumberSlot slot = of.detail(i);
            number[i] = t.kind() == Tolerance.Kind.LOT ? 0 : switch (t.draw()) {
                case COMPONENT -> i;
                case SPRING -> springs.computeIfAbsent(slot.group() + "[" + slot.place() + "]", k -> springs.size());
                case UNIT -> 0;
            };
        }
        int count = 0;
        for (int n : number) {
            count = Math.max(count, n + 1);
        }
        DrawDistribution[] law = new DrawDistribution[number.length];
        for (int i = 0; i < law.length; i++) {
            law[i] = law(t, of.detail(i), nominal.value(of.slot(i)));
        }
        return new DrawnTolerance(t, law, of.slots(), number, first, count, false);
    }

    private static DrawDistribution law(Tolerance t, NumberSlot slot, double nominal) {
        if (t.kind() == Tolerance.Kind.ADD && t.distribution() == Tolerance.Distribution.LOGNORMAL && t.value() > 0) {
            if (nominal == 0) {
                throw new ToleranceException("tolerance '" + t.name() + "': " + slot.path() + " is 0, and a lognormal addend has the "
                    + "nominal value as its median; give the quantity a value, or choose another distribution");
            }
            return DrawDistribution.of(t.distribution(), t.value() / Math.abs(nominal), t.limit());
        }
        return DrawDistribution.of(t.distribution(), t.value(), t.limit());
    }

    /** The same with half the stated value. */
    DrawnTolerance halved() {
        DrawDistribution[] half = new DrawDistribution[law.length];
        for (int i = 0; i < half.length; i++) {
            half[i] = law[i].halved();
        }
        return new DrawnTolerance(tolerance, half, slots, number, first, count, isLot());
    }

    public boolean isLot() {
        return tolerance.kind() == Tolerance.Kind.LOT;
    }

    /**
     * Lets the drawn numbers act.
     *
     * @param z       correlated standard normals of the whole unit
     * @param nominal the design's numbers
     * @param values  the unit's numbers so far; modified
     */
    void act(double[] z, Quantities nominal, double[] values) {
        if (isLot()) {
            Tolerance.Lot lot = tolerance.lot().orElseThrow();
            int row = row(z[first], lot.rows().size());
            for (int i = 0; i < slots.length; i++) {
                int axis = i;
                double drawn = lot.rows().get(row).get(axis);
                values[slots[i]] = narrowed ? (drawn + mean(lot, axis)) / 2 : drawn;
            }
            return;
        }
        boolean scale = tolerance.kind() == Tolerance.Kind.SCALE;
        boolean relative = tolerance.distribution() == Tolerance.Distribution.LOGNORMAL;
        for (int i = 0; i < slots.length; i++) {
            double drawn = law[i].at(z[first + number[i]]);
            if (scale) {
                values[slots[i]] *= 1 + drawn;
            } else {
                values[slots[i]] += relative ? nominal.value(slots[i]) * drawn : drawn;
            }
        }
    }

    private static double mean(Tolerance.Lot lot, int axis) {
        return lot.rows().stream().mapToDouble(r -> r.get(axis)).average().orElse(0);
    }

    /** The row a normal draws: each is as likely as any other. */
    public static int row(double z, int rows) {
        return (int) Math.min(rows - 1L, (long) (NormalCurve.below(z) * rows));
    }
}

package quietband.tuning.orient;

import java.util.LinkedHashMap;
import java.util.Locale;
import java.util.Map;
import quietband.model.Axis;
import quietband.model.Resonance;
import quietband.model.Vec;
import quietband.model.edit.ModelFile;
import quietband.units.Amounts;

/**
 * A support of the blank as engineering input.
 *
 * @param name      e.g. four-point
 * @param points    where the blank is held
 * @param resonance of the blank on it, per axis
 * @param relative  sensitivity over that of the row it is compared with, above 0
 * @param source    where the figures come from, e.g. invented or measured
 */
public record SupportRow(String name, int points, Resonance resonance, double relative, String source) {

    /** Whether the figures are invented for a demonstration. */
    public boolean invented() {
        return source.toLowerCase(Locale.ROOT).contains("invented");
    }

    /** Lowest resonance of any axis, Hz; infinite without one. */
    public double lowestHz() {
        Vec f = resonance.frequencyHz();
        return Math.min(f.x(), Math.min(f.y(), f.z()));
    }

    /**
     * A model with this support: its name, its resonances, and its sensitivity in proportion.
     *
     * @param own row of the support the model has now; null when the table has none of that name, then sensitivity is taken as
     *            that of a relative sensitivity of 1
     */
    public ModelFile in(ModelFile file, SupportRow own) {
        String base = "oscillator.resonator.";
        Map<String, String> pieces = new LinkedHashMap<>();
        pieces.put(base + "support", name);
        double scale = relative / (own == null ? 1 : own.relative());
        Vec g = file.design().oscillator().resonator().sensitivityPerG().times(scale * 1e9);
        pieces.put(base + "sensitivity", "{x: " + Amounts.print(g.x()) + " ppb/g, y: " + Amounts.print(g.y()) + " ppb/g, z: "
            + Amounts.print(g.z()) + " ppb/g}");
        StringBuilder map = new StringBuilder();
        for (Axis axis : Axis.ALL) {
            if (resonance.on(axis.ordinal())) {
                map.append(map.isEmpty() ? "" : ", ").append(axis.letter()).append(": {frequency: ")
                    .append(Amounts.print(resonance.frequencyHz().get(axis))).append(" Hz, q: ")
                    .append(Amounts.print(resonance.q().get(axis))).append('}');
            }
        }
        if (map.isEmpty()) {
            return file.without(base + "support_resonance").withValues(pieces);
        }
        pieces.put(base + "support_resonance", "{" + map + "}");
        return file.withValues(pieces);
    }
}

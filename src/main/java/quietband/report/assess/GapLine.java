package quietband.report.assess;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import quietband.demand.RequirementResult;
import quietband.report.file.NumberFormat;
import quietband.report.file.QuantityText;
import quietband.tuning.cures.CoverageGap;
import quietband.tuning.cures.Cure;
import quietband.tuning.cures.ValueChange;

/**
 * A gap as the page shows it.
 *
 * @param stack  which stack
 * @param range  where, with the worst point
 * @param cause  leading cause, a clause
 * @param before what leads to the values
 * @param values what to change, the first few
 * @param more   how many values more stand further down
 * @param after  what else to know of the change; may be empty
 * @param or     another change that does it too; empty when none is known
 * @param all    every change that closes it, in full
 */
public record GapLine(String stack, String range, String cause, String before, List<Value> values, int more,
                      String after, List<Whole> or, List<Whole> all) {

    private static final int SHOWN = 3;

    /** A value of the model: its path, as it is, as it would just hold. */
    public record Value(String path, String now, String holds) { }

    /** One change with all its values. */
    public record Whole(String words, List<Value> values, String after) { }

    /**
     * The line of a gap.
     *
     * @param full whether it is one of the fullest stack, of which everything else is asked too
     */
    public static GapLine of(CoverageGap gap, boolean full) {
        List<Value> values = gap.cure().map(GapLine::values).orElse(List.of());
        List<Whole> all = new ArrayList<>();
        gap.single().ifPresent(c -> all.add(whole(c, full)));
        gap.together().ifPresent(c -> all.add(whole(c, full)));
        gap.others().forEach(c -> all.add(whole(c, full)));
        String range = NumberFormat.text("%s, %s over at %s %s", QuantityText.range(gap.fromHz(), gap.toHz()),
            QuantityText.db(-gap.worst().marginDb()), QuantityText.hz(gap.worst().frequencyHz()), gap.worst().axis());
        return new GapLine(gap.stack().key(), range, cause(gap), before(gap), values.stream().limit(SHOWN).toList(),
            Math.max(0, values.size() - SHOWN), gap.cure().map(c -> after(c, full)).orElse(""),
            all.size() > 1 ? List.of(all.get(1)) : List.of(), all);
    }

    private static String cause(CoverageGap gap) {
        if (gap.cause().equals("platform")) {
            return gap.amplification() > 1 ? NumberFormat.text("the platform amplifies %.1f times at its own resonance",
                gap.amplification()) : "the platform does not isolate this low";
        }
        StringBuilder text = new StringBuilder(gap.words());
        if (!Double.isNaN(gap.withoutPerG()) && gap.withoutPerG() > 0) {
            text.append(NumberFormat.text(" (if ideal, %s ppb/g left there)", NumberFormat.brief(gap.withoutPerG() * 1e9, 3)));
        }
        if (gap.amplification() > 1.05) {
            text.append(NumberFormat.text(", where the platform amplifies %.1f times", gap.amplification()));
        }
        return text.toString();
    }

    private static String before(CoverageGap gap) {
        if (gap.single().isPresent()) {
            return "It meets the limit at";
        }
        if (gap.together().isPresent()) {
            return "No value of it alone closes the gap; " + gap.together().get().words() + " together meet the limit at";
        }
        return gap.others().isEmpty() ? "No single value and no pair of them closes the gap."
            : "No value of it closes the gap, alone or in a pair; the " + gap.others().get(0).words() + " meets the limit at";
    }

    private static Whole whole(Cure cure, boolean full) {
        return new Whole(cure.words(), values(cure), after(cure, full));
    }

    private static String after(Cure cure, boolean full) {
        if (!full) {
            return "";
        }
        return cure.missed().isEmpty() ? "(then every requirement is met)." : "(but then not met: "
            + String.join(", ", cure.missed().stream().map(GapLine::missed).toList()) + ").";
    }

    private static String missed(RequirementResult r) {
        String name = r.name().replace('_', ' ');
        return r.hasMargin() ? name + " by " + QuantityText.db(-r.marginDb())
            : NumberFormat.text("%s, %.0f %% used", name, 100 * r.usedShare());
    }

    /** One line a quantity: axes of the same stand in it together. */
    private static List<Value> values(Cure cure) {
        Map<String, List<ValueChange>> byQuantity = new LinkedHashMap<>();
        cure.settings().forEach(s -> byQuantity.computeIfAbsent(axis(s.of()).isEmpty() ? s.of()
            : s.of().substring(0, s.of().length() - 2), k -> new ArrayList<>()).add(s));
        return byQuantity.entrySet().stream().map(e -> value(e.getKey(), e.getValue())).toList();
    }

    private static String axis(String path) {
        return path.matches(".*\\.[xyz]") ? path.substring(path.length() - 1) : "";
    }

    private static Value value(String path, List<ValueChange> settings) {
        boolean one = settings.size() == 1 && axis(settings.get(0).of()).isEmpty();
        List<String> now = new ArrayList<>();
        List<String> holds = new ArrayList<>();
        double like = settings.stream().mapToDouble(s -> Math.abs(s.now())).max().orElse(0);
        for (ValueChange s : settings) {
            String letter = one ? "" : axis(s.of()) + " ";
            now.add(letter + QuantityText.amount(s.now(), like, s.dimension(), 5));
            holds.add(letter + QuantityText.amount(s.holds(), like, s.dimension(), 5));
        }
        return new Value(path, joined(now), joined(holds));
    }

    /** Amounts of one unit, which stands once at the end. */
    private static String joined(List<String> amounts) {
        String last = amounts.get(amounts.size() - 1);
        String unit = last.matches(".*[0-9] [^ ]+") ? last.substring(last.lastIndexOf(' ')) : "";
        List<String> bare = amounts.stream().map(a -> a.endsWith(unit) ? a.substring(0, a.length() - unit.length()) : a).toList();
        return String.join(", ", bare) + unit;
    }
}

package quietband.report;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import quietband.tuning.Cure;
import quietband.tuning.Gap;
import quietband.tuning.Setting;

/**
 * A gap as the page shows it.
 *
 * @param stack  which stack
 * @param range  where, with the worst point
 * @param cause  leading cause, a clause
 * @param before what no value of the leading cause can do; empty when one closes the gap
 * @param values what to change, the first few
 * @param more   how many values more stand further down
 * @param after  what else to know of the change; may be empty
 * @param all    every change that closes it, in full
 */
public record GapLine(String stack, String range, String cause, String before, List<Value> values, int more,
                      String after, List<Whole> all) {

    private static final int SHOWN = 3;

    /** A value of the model: its path, as it is, as it would just hold. */
    public record Value(String path, String now, String holds) { }

    /** One change with all its values. */
    public record Whole(String words, List<Value> values, String after) { }

    static GapLine of(Gap gap) {
        List<Value> values = gap.cure().map(GapLine::values).orElse(List.of());
        List<Whole> all = new ArrayList<>();
        gap.single().ifPresent(c -> all.add(whole(c)));
        gap.together().ifPresent(c -> all.add(whole(c)));
        gap.others().forEach(c -> all.add(whole(c)));
        String range = String.format(Locale.ROOT, "%s, worst %s over at %s %s", Words.range(gap.fromHz(), gap.toHz()),
            Words.db(-gap.worst().marginDb()), Words.hz(gap.worst().frequencyHz()), gap.worst().axis());
        return new GapLine(StackName.of(gap.stack()), range, cause(gap), before(gap), values.stream().limit(SHOWN).toList(),
            Math.max(0, values.size() - SHOWN), gap.cure().map(GapLine::after).orElse(""), all);
    }

    private static String cause(Gap gap) {
        StringBuilder text = new StringBuilder(gap.words());
        if (!Double.isNaN(gap.withoutPerG()) && gap.withoutPerG() > 0) {
            text.append(String.format(Locale.ROOT, "; ideal, it would leave %s ppb/g there", Digits.brief(gap.withoutPerG() * 1e9, 3)));
        }
        if (gap.amplification() > 1.05) {
            text.append(String.format(Locale.ROOT, "; the platform amplifies %.1f times there", gap.amplification()));
        }
        return text.toString();
    }

    private static String before(Gap gap) {
        if (gap.single().isPresent()) {
            return "";
        }
        if (gap.together().isPresent()) {
            return "No value of it alone closes the gap; " + gap.together().get().words() + " together do:";
        }
        return gap.others().isEmpty() ? "No single value and no pair of them closes the gap."
            : "No value of it closes the gap, alone or in a pair; the " + gap.others().get(0).words() + " does:";
    }

    private static Whole whole(Cure cure) {
        return new Whole(cure.words(), values(cure), after(cure));
    }

    private static String after(Cure cure) {
        return cure.breaks().isEmpty() ? "" : "but then not met: "
            + String.join(", ", cure.breaks().stream().map(b -> b.replace('_', ' ')).toList());
    }

    private static List<Value> values(Cure cure) {
        return cure.settings().stream().map(GapLine::value).toList();
    }

    private static Value value(Setting s) {
        return new Value(s.of(), Words.amount(s.now(), s.now(), s.dimension(), 5),
            Words.amount(s.holds(), s.now(), s.dimension(), 5));
    }
}

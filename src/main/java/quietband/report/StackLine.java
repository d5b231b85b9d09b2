package quietband.report;

import java.util.List;
import java.util.Locale;
import quietband.response.StackVerdict;

/** What one stack covers, a name and a sentence. */
public record StackLine(String name, String sentence) {

    static List<StackLine> of(List<StackVerdict> verdicts) {
        return verdicts.stream().map(v -> new StackLine(StackName.capital(v.stack()), sentence(v))).toList();
    }

    private static String sentence(StackVerdict v) {
        StackVerdict.Worst w = v.worst();
        String where = Words.hz(w.frequencyHz()) + (w.axis().equals("vector") ? ", vector" : ", axis " + w.axis());
        if (!v.asked()) {
            return String.format(Locale.ROOT, "no residual limit asked; most %s ppb/g at %s.", Words.ppb(w.residualPerG()), where);
        }
        String within = v.intervals().isEmpty() ? "nowhere within the limit" : String.format(Locale.ROOT,
            "within the limit %s (%.0f %% of the band)", Words.ranges(v.intervals(), ""), Math.floor(100 * v.share() + 1e-9));
        return String.format(Locale.ROOT, "%s; %s %s at %s.", within, Words.db(Math.abs(w.marginDb())),
            w.marginDb() < 0 ? "over it" : "to spare", where);
    }
}

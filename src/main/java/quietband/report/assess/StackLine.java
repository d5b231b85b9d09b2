package quietband.report.assess;

import java.util.List;
import quietband.demand.ResidualPoint;
import quietband.report.file.NumberFormat;
import quietband.report.file.QuantityText;
import quietband.report.page.StackName;
import quietband.response.verdict.StackVerdict;

/** What one stack covers, a name and a sentence. */
public record StackLine(String name, String sentence) {

    static List<StackLine> of(List<StackVerdict> verdicts) {
        return verdicts.stream().map(v -> new StackLine(StackName.capital(v.stack()), sentence(v))).toList();
    }

    private static String sentence(StackVerdict v) {
        ResidualPoint w = v.worst();
        String where = QuantityText.hz(w.frequencyHz()) + (w.axis().equals("vector") ? ", vector" : ", axis " + w.axis());
        if (!v.asked()) {
            return NumberFormat.text("no residual limit stated; most %s ppb/g at %s.", QuantityText.ppb(w.residualPerG()), where);
        }
        String within = v.intervals().isEmpty() ? "nowhere within the limit" : NumberFormat.text(
            "within the limit %s (%.0f %% of the band)", QuantityText.ranges(v.intervals(), ""), Math.floor(100 * v.share() + 1e-9));
        return NumberFormat.text("%s; %s %s at %s.", within, QuantityText.db(Math.abs(w.marginDb())),
            w.marginDb() < 0 ? "over it" : "to spare", where);
    }
}

package quietband.report.page;

import java.util.Comparator;
import java.util.List;
import quietband.demand.RequirementResult;
import quietband.report.file.NumberFormat;
import quietband.response.verdict.Assessment;

/** The verdict in one sentence. */
public final class VerdictSentence {

    private VerdictSentence() { }

    /** The verdict alone, as pages are headed with it. */
    public static String words(Assessment a) {
        return a.requirementMet().map(met -> met ? "HOLDS" : "DOES NOT HOLD").orElse("NO VERDICT");
    }

    /** How it looks: holds, fails or none. */
    public static String kind(Assessment a) {
        return a.requirementMet().map(met -> met ? "holds" : "fails").orElse("none");
    }

    /** HOLDS or DOES NOT HOLD, with what is tightest or broken. */
    public static String sentence(Assessment a) {
        if (a.requirements().isEmpty()) {
            return "No requirement is stated: no verdict.";
        }
        List<RequirementResult> broken = a.requirements().stream().filter(r -> !r.met()).toList();
        if (!broken.isEmpty()) {
            return "DOES NOT HOLD: " + String.join(", ", broken.stream().map(VerdictSentence::broken).toList());
        }
        return a.requirements().stream().filter(RequirementResult::hasMargin)
            .min(Comparator.comparingDouble(RequirementResult::marginDb))
            .map(r -> NumberFormat.text("HOLDS: least margin %.2f dB (%s)", r.marginDb(), name(r)))
            .orElse("HOLDS");
    }

    private static String broken(RequirementResult r) {
        return r.hasMargin() ? NumberFormat.text("%s by %.2f dB", name(r), -r.marginDb())
            : NumberFormat.text("%s uses %.0f %%", name(r), 100 * r.usedShare());
    }

    private static String name(RequirementResult r) {
        return r.name().replace('_', ' ');
    }
}

package quietband.report.assess;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import quietband.demand.RequirementResult;
import quietband.demand.ResidualPoint;
import quietband.model.Axis;
import quietband.report.file.NumberFormat;
import quietband.report.file.Provenance;
import quietband.report.page.Caution;
import quietband.report.page.VerdictSentence;
import quietband.response.ModeProperties;
import quietband.response.travel.Travel;
import quietband.response.verdict.Assessment;
import quietband.response.verdict.StackVerdict;

/** The summary of an assessment for a terminal, at most 80 columns wide. */
public final class AssessmentText {

    private static final int WIDTH = 80;

    private AssessmentText() { }

    /** The lines, each ended. */
    public static String of(Assessment a, Provenance from) {
        List<String> lines = new ArrayList<>();
        lines.add(cut(a.design().title().isEmpty() ? from.input() : a.design().title(), WIDTH));
        lines.add(String.format(Locale.ROOT, "model %s, quietband %s", from.modelHash().substring(0, 12), from.version()));
        lines.add("");
        stacks(a, lines);
        if (!a.modes().isEmpty()) {
            modes(a, lines);
        }
        a.travel().ifPresent(t -> travel(a, t, lines));
        if (!a.requirements().isEmpty()) {
            requirements(a, lines);
        }
        a.warnings().forEach(w -> wrap("warning: " + w, lines));
        if (!a.warnings().isEmpty()) {
            lines.add("");
        }
        lines.add(VerdictSentence.sentence(a));
        lines.add(Caution.PREDICTION);
        return String.join("\n", lines) + "\n";
    }

    private static void stacks(Assessment a, List<String> lines) {
        lines.add(String.format(Locale.ROOT, "%-10s %10s %10s  %-6s %9s  %s", "stack", "worst", "at", "axis", "margin",
            "within the limit"));
        for (StackVerdict v : a.verdicts()) {
            ResidualPoint w = v.worst();
            String within = !v.asked() ? "no limit asked" : v.intervals().isEmpty() ? "nowhere" : intervals(v.intervals());
            String head = String.format(Locale.ROOT, "%-10s %10s %10s  %-6s %9s  ", v.stack().key(),
                NumberFormat.brief(w.residualPerG() * 1e9, 4), hz(w.frequencyHz()), w.axis(),
                v.asked() ? db(w.marginDb()) : "-");
            hang(head, within, lines);
        }
        lines.add("           (ppb/g)");
        lines.add("");
    }

    private static String intervals(List<double[]> intervals) {
        List<String> parts = new ArrayList<>();
        for (double[] i : intervals) {
            parts.add(hz(i[0]).replace(" Hz", "") + " to " + hz(i[1]));
        }
        return String.join(", ", parts);
    }

    private static void modes(Assessment a, List<String> lines) {
        lines.add("modes      at          damping  shape");
        for (ModeProperties m : a.modes()) {
            lines.add(String.format(Locale.ROOT, "           %-10s  %-7s  %s", hz(m.frequencyHz()),
                NumberFormat.brief(m.dampingRatio(), 3), m.shape()));
        }
        lines.add("");
    }

    private static void travel(Assessment a, Travel t, List<String> lines) {
        lines.add("travel mm  sag        sustained  shock      random 3s  clearance");
        for (Axis axis : Axis.ALL) {
            String clearance = a.design().platform().orElseThrow().clearance()
                .map(c -> NumberFormat.brief(c.get(axis) * 1e3, 4)).orElse("-");
            lines.add(String.format(Locale.ROOT, "%-10s %-10s %-10s %-10s %-10s %s", axis.letter(), mm(t.sag().get(axis)),
                mm(t.sustained().get(axis)), mm(t.shock().get(axis)), mm(t.random3Sigma().get(axis)), clearance));
        }
        lines.add("");
    }

    private static String mm(double m) {
        return NumberFormat.brief(m * 1e3, 3);
    }

    private static void requirements(Assessment a, List<String> lines) {
        lines.add(String.format(Locale.ROOT, "%-13s %-4s %12s %12s %-7s %12s  %s", "asked", "met", "worst", "limit", "", "margin",
            "where"));
        for (RequirementResult r : a.requirements()) {
            String where = Double.isNaN(r.frequencyHz()) ? r.axis() : hz(r.frequencyHz()) + " " + r.axis();
            lines.add(cut(String.format(Locale.ROOT, "%-13s %-4s %12s %12s %-7s %12s  %s", r.name().replace('_', ' '),
                r.met() ? "yes" : "NO", NumberFormat.brief(r.value(), 4), NumberFormat.brief(r.limit(), 4), r.unit(),
                r.hasMargin() ? db(r.marginDb()) : NumberFormat.brief(100 * r.usedShare(), 3) + " % used", where).stripTrailing(),
                WIDTH));
        }
        lines.add("");
    }

    private static String hz(double f) {
        return f >= 999.5 ? NumberFormat.brief(f / 1000, 4) + " kHz" : NumberFormat.brief(f, 4) + " Hz";
    }

    private static String db(double margin) {
        return String.format(Locale.ROOT, "%.2f dB", margin);
    }

    private static String cut(String text, int width) {
        return text.length() <= width ? text : text.substring(0, width - 3) + "...";
    }

    public static void hang(String head, String text, List<String> lines) {
        String indent = " ".repeat(head.length());
        String line = head;
        boolean fresh = true;
        for (String word : text.split(" ")) {
            if (!fresh && line.length() + 1 + word.length() > WIDTH) {
                lines.add(line);
                line = indent + word;
            } else {
                line = fresh ? line + word : line + " " + word;
            }
            fresh = false;
        }
        lines.add(line);
    }

    private static void wrap(String text, List<String> lines) {
        hang("", text, lines);
    }
}

package quietband.report.assess;

import quietband.demand.RequirementResult;
import quietband.demand.ResidualPoint;
import quietband.model.Axis;
import quietband.report.file.NumberFormat;
import quietband.report.file.QuantityText;
import quietband.report.page.Report;
import quietband.report.page.TerminalText;
import quietband.report.page.VerdictSentence;
import quietband.response.ModeProperties;
import quietband.response.travel.Travel;
import quietband.response.verdict.Assessment;
import quietband.response.verdict.StackVerdict;

/** The summary of an assessment for a terminal, at most 80 columns wide. */
final class AssessmentText {

    private AssessmentText() { }

    /** The lines. */
    static void say(Report report, Assessment a) {
        report.line(TerminalText.cut(report.title())).origin().line("");
        stacks(report, a);
        if (!a.modes().isEmpty()) {
            modes(report, a);
        }
        a.travel().ifPresent(t -> travel(report, a, t));
        if (!a.requirements().isEmpty()) {
            requirements(report, a);
        }
        a.warnings().forEach(w -> report.hang("", "warning: " + w));
        if (!a.warnings().isEmpty()) {
            report.line("");
        }
        report.line(VerdictSentence.sentence(a));
    }

    private static void stacks(Report report, Assessment a) {
        report.line("%-10s %10s %10s  %-6s %9s  %s", "stack", "worst", "at", "axis", "margin",
            "within the limit");
        for (StackVerdict v : a.verdicts()) {
            ResidualPoint w = v.worst();
            String within = !v.asked() ? "no limit stated" : QuantityText.ranges(v.intervals(), "nowhere");
            String head = NumberFormat.text("%-10s %10s %10s  %-6s %9s  ", v.stack().key(),
                NumberFormat.brief(w.residualPerG() * 1e9, 4), QuantityText.hz(w.frequencyHz()), w.axis(),
                v.asked() ? db(w.marginDb()) : "-");
            report.hang(head, within);
        }
        report.line("           (ppb/g)");
        report.line("");
    }

    private static void modes(Report report, Assessment a) {
        report.line("modes      at          damping  shape");
        for (ModeProperties m : a.modes()) {
            report.line("           %-10s  %-7s  %s", QuantityText.hz(m.frequencyHz()),
                NumberFormat.brief(m.dampingRatio(), 3), m.shape());
        }
        report.line("");
    }

    private static void travel(Report report, Assessment a, Travel t) {
        report.line("travel mm  sag        sustained  shock      random 3s  clearance");
        for (Axis axis : Axis.ALL) {
            String clearance = a.design().platform().orElseThrow().clearance()
                .map(c -> NumberFormat.brief(c.get(axis) * 1e3, 4)).orElse("-");
            report.line("%-10s %-10s %-10s %-10s %-10s %s", axis.letter(), mm(t.sag().get(axis)),
                mm(t.sustained().get(axis)), mm(t.shock().get(axis)), mm(t.random3Sigma().get(axis)), clearance);
        }
        report.line("");
    }

    private static String mm(double m) {
        return NumberFormat.brief(m * 1e3, 3);
    }

    private static void requirements(Report report, Assessment a) {
        report.line("%-13s %-4s %12s %12s %-7s %12s  %s", "requirement", "met", "worst", "limit", "", "margin", "where");
        for (RequirementResult r : a.requirements()) {
            String where = Double.isNaN(r.frequencyHz()) ? r.axis() : QuantityText.hz(r.frequencyHz()) + " "
                + (r.axis().equals("vector") ? "vec." : r.axis());
            report.line(TerminalText.cut(NumberFormat.text("%-13s %-4s %12s %12s %-7s %12s  %s", r.name().replace('_', ' '),
                r.met() ? "yes" : "NO", NumberFormat.brief(r.value(), 4), NumberFormat.brief(r.limit(), 4), r.unit(),
                r.hasMargin() ? db(r.marginDb()) : NumberFormat.brief(100 * r.usedShare(), 3) + " % used", where).stripTrailing()));
        }
        report.line("");
    }

    private static String db(double margin) {
        return NumberFormat.text("%.2f dB", margin);
    }
}

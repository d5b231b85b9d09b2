package quietband.report.assess;

import java.util.ArrayList;
import java.util.List;
import quietband.demand.ResidualPoint;
import quietband.model.Axis;
import quietband.model.Design;
import quietband.model.Stack;
import quietband.report.file.NumberFormat;
import quietband.report.file.QuantityText;
import quietband.report.page.CauseName;
import quietband.report.page.PageTable;
import quietband.response.Contribution;
import quietband.response.FrequencyTable;
import quietband.response.ModeProperties;
import quietband.response.travel.Travel;
import quietband.response.verdict.Assessment;
import quietband.response.verdict.ToneSideband;

/** The tables of the page of an assessment. */
public final class AssessmentGrids {

    private static final String NONE = "\u2013";

    private AssessmentGrids() { }

    static PageTable tones(Assessment a) {
        List<String> head = new ArrayList<>(List.of("tone", "frequency", "axis", "peak, g"));
        List<Stack> stacks = Stack.of(a.design());
        stacks.forEach(s -> head.add(s.key() + ", dBc"));
        head.add("limit, dBc");
        List<List<String>> rows = new ArrayList<>();
        for (ToneSideband t : a.tones()) {
            List<String> row = new ArrayList<>(List.of(t.name(), QuantityText.hz(t.frequencyHz()), t.axis().letter(),
                NumberFormat.brief(t.peakG(), 3)));
            stacks.forEach(s -> row.add(fixed(t.levelDbc().get(s)) + (t.exact(s) ? " (Bessel)" : "")));
            row.add(fixed(t.limitDbc()));
            rows.add(row);
        }
        return new PageTable("Sidebands of the tones at the output", head, rows);
    }

    private static String fixed(double v) {
        return Double.isFinite(v) ? NumberFormat.text("%.2f", v) : NONE;
    }

    public static PageTable modes(Assessment a) {
        List<List<String>> rows = new ArrayList<>();
        for (ModeProperties m : a.modes()) {
            rows.add(List.of(Integer.toString(rows.size() + 1), QuantityText.hz(m.frequencyHz()), NumberFormat.brief(m.dampingRatio(), 3),
                m.shape()));
        }
        return new PageTable("Natural modes of the platform on its springs", List.of("mode", "frequency", "damping ratio", "shape"), rows);
    }

    public static PageTable travel(Assessment a) {
        List<List<String>> rows = new ArrayList<>();
        a.travel().ifPresent(t -> Axis.ALL.forEach(axis -> rows.add(travel(a.design(), t, axis))));
        return new PageTable("Travel of the platform in its housing, mm", List.of("axis", "sag under 1 g", "sustained", "shock",
            "random, 3 sigma", "counted", "clearance"), rows);
    }

    private static List<String> travel(Design design, Travel t, Axis axis) {
        String clearance = design.platform().flatMap(p -> p.clearance()).map(c -> mm(c.get(axis))).orElse(NONE);
        return List.of(axis.letter(), mm(t.sag().get(axis)), mm(t.sustained().get(axis)), mm(t.shock().get(axis)),
            mm(t.random3Sigma().get(axis)), mm(t.counted().get(axis)), clearance);
    }

    private static String mm(double m) {
        return NumberFormat.brief(m * 1e3, 3);
    }

    /** What each cause alone would leave, and all others, at the worst point of the fullest stack. */
    static PageTable contributions(Assessment a, FrequencyTable.Row r) {
        ResidualPoint w = a.verdict(a.fullest()).worst();
        Axis axis = Axis.of(w.axis());
        List<List<String>> rows = new ArrayList<>();
        for (Contribution c : r.contributions()) {
            rows.add(List.of(CauseName.of(c.cause()), QuantityText.ppb(part(c.alone(), axis)), QuantityText.ppb(part(c.without(), axis))));
        }
        String where = QuantityText.hz(w.frequencyHz()) + (axis == null ? ", vector" : ", axis " + w.axis());
        return new PageTable("At the worst point (" + where + ", " + QuantityText.ppb(w.residualPerG()) + " ppb/g)",
            List.of("cause", "it alone, all others ideal, ppb/g", "all but it, ppb/g"), rows);
    }

    private static double part(double[] y, Axis axis) {
        return axis == null ? Math.sqrt(y[0] * y[0] + y[1] * y[1] + y[2] * y[2]) : y[axis.ordinal()];
    }

    static PageTable vibration(Assessment a) {
        List<List<String>> rows = new ArrayList<>();
        for (Axis axis : Axis.ALL) {
            rows.add(List.of(axis.letter(), a.design().vibration().axes().contains(axis)
                ? NumberFormat.brief(a.rmsG()[axis.ordinal()], 4) : "not driven"));
        }
        return new PageTable("Random vibration of the housing", List.of("axis", "overall, g rms"), rows);
    }
}

package quietband.report.change;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import quietband.demand.ResidualPoint;
import quietband.model.Vec;
import quietband.report.chart.FrequencyChart;
import quietband.report.file.NumberFormat;
import quietband.report.file.Provenance;
import quietband.report.file.QuantityText;
import quietband.report.page.Report;
import quietband.report.page.StackName;
import quietband.response.verdict.StackVerdict;
import quietband.study.orient.OrientStudy;
import quietband.study.orient.TriedSupport;
import quietband.tuning.orient.Orientation;

/** What turning a resonator says in words and rows, for a terminal and for the page. */
final class OrientText {

    private static final String INVENTED = "Rows marked invented are made up for the demonstration, from no real support: replace them by "
        + "measured ones.";

    private OrientText() { }

    /** Unit of the goal's figures. */
    static String unit(Orientation t) {
        return t.goal() == Orientation.Goal.NOISE ? "mrad" : t.limited() ? "times the limit" : "ppb/g";
    }

    private static String goal(Orientation t) {
        return switch (t.goal()) {
            case AXIS -> "largest component";
            case RESIDUAL -> "worst residual through platform and cancellation";
            case NOISE -> "integrated phase noise in the model's vibration";
        };
    }

    private static String number(double v) {
        return NumberFormat.brief(v, 4);
    }

    static void say(Report report, OrientStudy s, Provenance from, FrequencyChart chart) {
        Orientation turn = s.turn();
        List<String> told = sentences(s);
        List<List<String>> errors = OrientReport.errors(turn).stream().map(e -> List.of(
            NumberFormat.json(Math.rint(Math.toDegrees(e.angle()) * 1e6) / 1e6) + " deg", figure(turn, e.recalibrated()),
            figure(turn, e.kept()))).toList();
        List<List<String>> supports = s.tried().stream().map(OrientText::row).toList();
        report.line(report.title() + ", model " + from.shortHash() + ", quietband " + from.version()).line("").lines(told).line("");
        report.line("%-12s %14s %14s   (%s)", "angle error", "recalibrated", "weights kept", unit(turn));
        errors.forEach(row -> report.line("%-12s %14s %14s", row.toArray()));
        report.head("TURNED", "none", told.get(0));
        report.part("Turn").say(told).chart(chart);
        report.part("What an error of the angle costs").say("The vector points elsewhere by the angle, the worst way round. Recalibrated: "
            + "the weights follow it. Kept: the weights are those of the vector as meant.")
            .table(capitalised(goal(turn)) + ", " + unit(turn), List.of("angle error", "recalibrated", "weights kept"), errors);
        if (!supports.isEmpty()) {
            report.line("").line("%-16s %9s %8s %8s %9s %8s  %s", "support", "resonance", "bare", "all", "margin", "shock", "source");
            supports.forEach(r -> report.line("%-16s %9s %8s %8s %9s %8s  %s", r.get(0), r.get(2), r.get(4), r.get(6), r.get(8), r.get(10),
                r.get(11)));
            report.lines(notes(s));
            report.part("Supports").say(notes(s)).table("Each with its best turn; worst residual of the resonator alone and of the stack "
                + "combined, ppb/g; peak of the blank under the model's shock", List.of("support", "points", "lowest resonance",
                "relative sensitivity", "alone", "at", "combined", "at", "margin", "shock, bare",
                "shock, as the model stands", "source"), supports);
        }
    }

    private static String figure(Orientation turn, double figure) {
        return number(OrientReport.shown(turn, figure));
    }

    private static List<String> sentences(OrientStudy s) {
        Orientation t = s.turn();
        Vec a = t.turn().axis();
        Vec g = t.mounted().times(1e9);
        List<String> said = new ArrayList<>();
        said.add(NumberFormat.text("Turn by %.3f deg about (%.4f, %.4f, %.4f): %s %s %s, before %s, without any turn %s.",
            Math.toDegrees(t.turn().angle()), a.x(), a.y(), a.z(), goal(t), figure(t, t.after()), unit(t), figure(t, t.before()),
            figure(t, t.unturned())));
        said.add(NumberFormat.text("Mounted sensitivity %+.4f, %+.4f, %+.4f ppb/g.", g.x(), g.y(), g.z()));
        said.add(StackName.capital(s.after().stack()) + ": worst " + worst(s.after()) + "; before " + worst(s.before()) + ".");
        if (s.base().design().cancellation().map(c -> c.weightsPerG().isPresent()).orElse(false)) {
            said.add("The model writes its weights out: they stay, and the turn is the best for them.");
        }
        return said;
    }

    private static String worst(StackVerdict v) {
        return QuantityText.ppb(v.worst().residualPerG()) + " ppb/g at " + QuantityText.hz(v.worst().frequencyHz()) + " on "
            + v.worst().axis() + (v.asked() ? ", margin " + QuantityText.db(v.worst().marginDb()) : "");
    }

    private static List<String> row(TriedSupport t) {
        ResidualPoint bare = t.bare().worst();
        ResidualPoint full = t.full().worst();
        return List.of(t.row().name(), Integer.toString(t.row().points()), Double.isInfinite(t.row().lowestHz()) ? "none"
            : QuantityText.hz(t.row().lowestHz()), number(t.row().relative()), QuantityText.ppb(bare.residualPerG()),
            QuantityText.hz(bare.frequencyHz()), QuantityText.ppb(full.residualPerG()), QuantityText.hz(full.frequencyHz()),
            t.full().asked() ? QuantityText.db(full.marginDb()) : "", shock(t, false), shock(t, true), t.row().source());
    }

    /** Peak of the blank; the platform's when there is one and it is asked for. */
    private static String shock(TriedSupport t, boolean platform) {
        return t.shock().map(s -> platform && !Double.isNaN(s.sprung()) ? s.sprung() : s.bolted())
            .map(g -> NumberFormat.brief(g, 3) + " g").orElse("");
    }

    private static List<String> notes(OrientStudy s) {
        List<String> said = new ArrayList<>();
        s.tried().stream().filter(TriedSupport::inBand).map(TriedSupport::row).forEach(r -> said.add(r.name()
            + " resonates within the band, at " + QuantityText.hz(r.lowestHz()) + ": supports/" + r.name()
            + "/model.yaml for assess, and for simulate --drive shock."));
        if (!s.known()) {
            said.add("The table has no row of the support the model names: its sensitivity is taken as that of a relative one of 1.");
        }
        if (s.tried().stream().anyMatch(t -> t.model().design().tolerances().stream().anyMatch(o -> o.lot().isPresent()))) {
            said.add("A lot under tolerances stays as it was measured: before tolerance, give each support's model the lot of resonators "
                + "on that support.");
        }
        if (s.tried().stream().anyMatch(t -> t.row().invented())) {
            said.add(INVENTED);
        }
        return said;
    }

    private static String capitalised(String text) {
        return text.substring(0, 1).toUpperCase(Locale.ROOT) + text.substring(1);
    }
}

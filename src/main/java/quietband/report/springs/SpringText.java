package quietband.report.springs;

import java.util.ArrayList;
import java.util.List;
import quietband.model.Axis;
import quietband.model.Vec;
import quietband.report.assess.AssessmentGrids;
import quietband.report.file.NumberFormat;
import quietband.report.file.QuantityText;
import quietband.report.page.PageTable;
import quietband.report.page.Report;
import quietband.report.page.VerdictSentence;
import quietband.report.svg.Picture;
import quietband.tuning.parts.Elastomer;
import quietband.tuning.parts.SpringPart;
import quietband.tuning.springs.SpringAnswer;

/** Springs in words and rows, for a terminal and for the page. */
final class SpringText {

    private SpringText() { }

    static String mm(Vec v) {
        return NumberFormat.text("(%.2f, %.2f, %.2f) mm", 1e3 * v.x(), 1e3 * v.y(), 1e3 * v.z());
    }

    static void say(Report report, SpringAnswer a) {
        report.line(report.title()).line("");
        a.parts().forEach(p -> report.hang(p.group() + ": ",
            QuantityText.count((long) p.places() * p.perPlace(), "piece") + ", " + p.name()));
        if (a.shift().length() > 0) {
            report.hang("places moved by ", mm(a.shift()) + " so that elastic centre and centre of gravity meet");
        }
        if (a.ballast() > 0) {
            report.hang("ballast ", NumberFormat.brief(1e3 * a.ballast(), 4) + " g at " + mm(a.ballastAt()));
        }
        if (Double.isFinite(a.liftOff())) {
            report.hang("lift-off ", "at " + NumberFormat.brief(a.liftOff(), 3) + " times the stated vibration");
        }
        if (!a.search().isEmpty()) {
            report.hang("", a.search());
        }
        report.line("");
        a.findings().forEach(f -> report.hang(f.met() ? "yes  " : "NO   ", f.words() + (f.met() ? "" : "; it would take " + f.takes())));
        report.line("").line(VerdictSentence.sentence(a.after()));
        page(report, a);
    }

    private static void page(Report report, SpringAnswer a) {
        long unmet = a.findings().stream().filter(f -> !f.met()).count();
        report.head(a.met() ? "TARGETS MET" : "NOT ALL MET", a.met() ? "none" : "fails", a.met()
            ? "natural frequencies and every check hold"
            : unmet + " of " + a.findings().size() + " do not hold, see below");
        report.part("Targets and checks").say(a.search().isEmpty() ? List.of() : List.of(a.search()))
            .say("After the change: " + VerdictSentence.sentence(a.after()))
            .table("Targets, what has to hold, and what it would take", List.of("of", "met", "found", "it would take"),
                a.findings().stream().map(f -> List.of(f.name().replace('_', ' '), f.met() ? "yes" : "NO", f.words(), f.takes()))
                    .toList());
        Report.Part parts = report.part("Parts and sketch").say(parts(a)).table(
            "Parts; rates and damping of all that stands at one place, along x, y, z", List.of("group", "pieces", "part", "rates, N/mm",
            "exact would be", "damping, N s/m", "loss factor", "preload of each, N"), a.parts().stream().map(SpringText::row).toList());
        a.warm().ifPresent(e -> parts.table(warm(a, e)));
        parts.chart(Picture.of("sketch", SpringSketch.svg(a)));
        Report.Part motion = report.part("Natural frequencies, modes and travel").say(lesson(a))
            .table("Natural frequency of each axis: the mode that moves "
            + "mostly along it, Hz", List.of("axis", "wanted", "reached"), Axis.ALL.stream().map(x -> List.of(x.letter(),
            NumberFormat.brief(a.wantedHz().get(x), 4), NumberFormat.brief(a.cornerHz().get(x), 4))).toList())
            .table(AssessmentGrids.modes(a.after())).table(AssessmentGrids.travel(a.after())).chart(SpringCharts.travel(a));
        SpringCharts.box(a).ifPresent(motion::chart);
    }

    private static List<String> parts(SpringAnswer a) {
        List<String> told = new ArrayList<>();
        if (a.shift().length() > 0) {
            told.add("The springs' places are moved by " + mm(a.shift()) + " so that the elastic centre meets the centre of gravity.");
        }
        if (a.ballast() > 0) {
            told.add(NumberFormat.text("Ballast of %.4g g at %s brings the natural frequencies down to where they are wanted.",
                1e3 * a.ballast(), mm(a.ballastAt())));
        }
        if (Double.isFinite(a.liftOff())) {
            told.add(NumberFormat.text("The springs lift off or go slack at %.3g times the stated vibration.", a.liftOff()));
        }
        if (a.parts().stream().anyMatch(p -> p.perPlace() == 2)) {
            told.add("A compression spring cannot pull: at each place two of them stand against each other, so that together they act "
                + "both ways until the preload of one is used up.");
        }
        if (a.parts().stream().anyMatch(p -> p.kind().equals("coil") && p.damping().length() > 0)) {
            told.add("Coil springs hardly damp: the damping stands for a damper at each place beside them.");
        }
        return told;
    }

    private static List<String> row(SpringPart p) {
        return List.of(p.group(), Integer.toString(p.places() * p.perPlace()), p.name(), rates(p.rate()), rates(p.wanted()),
            NumberFormat.text("%.3g, %.3g, %.3g", p.damping().x(), p.damping().y(), p.damping().z()),
            NumberFormat.brief(p.loss().z(), 3), NumberFormat.brief(p.preload(), 4));
    }

    private static String rates(Vec v) {
        return NumberFormat.text("%.4g, %.4g, %.4g", v.x() / 1e3, v.y() / 1e3, v.z() / 1e3);
    }

    private static PageTable warm(SpringAnswer a, Elastomer e) {
        List<List<String>> rows = new ArrayList<>();
        double viscous = a.after().modes().get(0).dampingRatio() - e.roomLoss() / 2;
        for (int i = 0; i < e.celsius().length; i++) {
            double root = Math.sqrt(e.stiffness()[i]);
            rows.add(List.of(NumberFormat.text("%.0f", e.celsius()[i]), NumberFormat.brief(e.stiffness()[i], 3),
                NumberFormat.brief(e.loss()[i], 3), NumberFormat.brief(a.cornerHz().x() * root, 3),
                NumberFormat.brief(a.cornerHz().y() * root, 3), NumberFormat.brief(a.cornerHz().z() * root, 3),
                NumberFormat.brief(e.loss()[i] / 2 + Math.max(0, viscous) / root, 3)));
        }
        return new PageTable("The mounts over temperature (" + e.name() + "; invented figures of the usual order, ask the maker)",
            List.of("degrees C", "stiffness factor", "loss factor", "natural frequency x, Hz", "y",
                "z", "damping ratio, lowest mode"), rows);
    }

    private static String lesson(SpringAnswer a) {
        return Double.isNaN(a.tenfold()) ? "Damping keeps the platform from a tenfold reduction at any frequency."
            : NumberFormat.text("The big-box lesson: the platform takes a tenth away from %.3g times its natural frequency on. "
                + "A tenfold reduction from 10 Hz would need a natural frequency of %.3g Hz, %.3g mm of travel each way and a box of "
                + "%.0f mm inside; this "
                + "design has it from %.4g Hz on in a box of %.0f mm.", a.tenfold(), 10 / a.tenfold(), 1e3 * a.tenfoldTravel(10),
                1e3 * a.tenfoldBox(10), a.tenfoldFromHz(), 1e3 * SpringCharts.compact(a));
    }
}

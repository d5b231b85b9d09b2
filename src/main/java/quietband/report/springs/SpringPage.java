package quietband.report.springs;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import quietband.model.Axis;
import quietband.model.Vec;
import quietband.report.assess.AssessmentGrids;
import quietband.report.assess.AssessmentSources;
import quietband.report.file.NumberFormat;
import quietband.report.file.Provenance;
import quietband.report.page.CommandPage;
import quietband.report.page.PageHead;
import quietband.report.page.PageTable;
import quietband.report.page.VerdictSentence;
import quietband.tuning.parts.SpringPart;
import quietband.tuning.parts.TargetCheck;
import quietband.tuning.springs.SpringAnswer;

/** The page of springs. */
final class SpringPage {

    private final SpringAnswer a;
    private final Provenance from;

    SpringPage(SpringAnswer answer, Provenance from) {
        this.a = answer;
        this.from = from;
    }

    static String mm(Vec v) {
        return String.format(Locale.ROOT, "(%.2f, %.2f, %.2f) mm", 1e3 * v.x(), 1e3 * v.y(), 1e3 * v.z());
    }

    CommandPage page(String sketch, List<String> charts) {
        String title = a.changed().design().title();
        long unmet = a.findings().stream().filter(f -> !f.met()).count();
        PageHead head = new PageHead(title.isEmpty() ? from.input() : title, a.met()
            ? "WISHES MET" : "NOT ALL MET",
            a.met() ? "holds" : "fails", a.met() ? "corners and every check hold" : unmet + " of " + a.findings().size()
            + " do not hold, see below", from, AssessmentSources.today());
        return new CommandPage(head, List.of(wishes(), parts(sketch), motion(charts)));
    }

    private CommandPage.Part wishes() {
        List<String> told = new ArrayList<>();
        if (!a.search().isEmpty()) {
            told.add(a.search());
        }
        told.add("After the change: " + VerdictSentence.sentence(a.after()));
        List<List<String>> rows = a.findings().stream().map((TargetCheck f) -> List.of(f.name().replace('_', ' '), f.met()
            ? "yes" : "NO", f.words(),
            f.takes())).toList();
        return new CommandPage.Part("Wishes and checks", told,
            List.of(new PageTable("What was wished for, what has to hold, and what it would take",
            List.of("of", "met", "found", "it would take"), rows)), List.of());
    }

    private CommandPage.Part parts(String sketch) {
        List<String> told = new ArrayList<>();
        if (a.shift().length() > 0) {
            told.add("The springs' places are moved by " + mm(a.shift())
                + " so that the elastic centre meets the centre of gravity.");
        }
        if (a.ballast() > 0) {
            told.add(String.format(Locale.ROOT,
                "Ballast of %.4g g at %s brings the corners down to where they are wanted.", 1e3 * a.ballast(),
                mm(a.ballastAt())));
        }
        if (Double.isFinite(a.liftOff())) {
            told.add(String.format(Locale.ROOT, "The springs lift off or go slack at %.3g times the stated vibration.",
                a.liftOff()));
        }
        if (a.parts().stream().anyMatch(p -> p.perPlace() == 2)) {
            told.add("A compression spring cannot pull: at each place two of them stand against each other, so that "
                + "together they act both ways "
                + "until the preload of one is used up.");
        }
        if (a.parts().stream().anyMatch(p -> p.kind().equals("coil") && p.damping().length() > 0)) {
            told.add("Coil springs hardly damp: the damping stands for a damper at each place beside them.");
        }
        List<List<String>> rows = a.parts().stream().map((SpringPart p) -> List.of(p.group(),
            Integer.toString(p.places() * p.perPlace()),
            p.name(), rates(p.rate()), rates(p.wanted()), String.format(Locale.ROOT, "%.3g, %.3g, %.3g", p.damping()
            .x(), p.damping().y(),
            p.damping().z()), NumberFormat.brief(p.loss().z(), 3), NumberFormat.brief(p.preload(), 4))).toList();
        PageTable grid = new PageTable("Parts; rates and damping of all that stands at one place, along x, y, z",
            List.of("group", "pieces", "part",
            "rates, N/mm", "exact would be", "damping, N s/m", "loss factor", "preload of each, N"), rows);
        List<PageTable> grids = new ArrayList<>(List.of(grid));
        a.warm().ifPresent(e -> grids.add(warm(e)));
        return new CommandPage.Part("Parts and sketch", told, grids, List.of(sketch));
    }

    private PageTable warm(quietband.tuning.parts.Elastomer e) {
        List<List<String>> rows = new ArrayList<>();
        double viscous = a.after().modes().get(0).dampingRatio() - e.roomLoss() / 2;
        for (int i = 0; i < e.celsius().length; i++) {
            double root = Math.sqrt(e.stiffness()[i]);
            rows.add(List.of(String.format(Locale.ROOT, "%.0f", e.celsius()[i]), NumberFormat.brief(e.stiffness()[i], 3),
                NumberFormat.brief(e.loss()[i], 3),
                NumberFormat.brief(a.cornerHz().x() * root, 3), NumberFormat.brief(a.cornerHz().y() * root, 3),
                NumberFormat.brief(a.cornerHz().z() * root, 3),
                NumberFormat.brief(e.loss()[i] / 2 + Math.max(0, viscous) / root, 3)));
        }
        return new PageTable("The mounts over temperature (" + e.name()
            + "; invented figures of the usual order, ask the maker)",
            List.of("degrees C", "stiffness factor", "loss factor", "corner x, Hz", "y", "z",
            "damping ratio, lowest mode"), rows);
    }

    private static String rates(Vec v) {
        return String.format(Locale.ROOT, "%.4g, %.4g, %.4g", v.x() / 1e3, v.y() / 1e3, v.z() / 1e3);
    }

    private CommandPage.Part motion(List<String> charts) {
        List<List<String>> corners = new ArrayList<>();
        for (Axis x : Axis.ALL) {
            corners.add(List.of(x.letter(), NumberFormat.brief(a.wantedHz().get(x), 4), NumberFormat.brief(a.cornerHz().get(x),
                4)));
        }
        List<String> told = Double.isNaN(a.tenfold()) ? List.of("Damping keeps the platform from a tenfold reduction at any frequency.")
            : List.of(String.format(Locale.ROOT, "The big-box lesson: the platform takes a tenth away from %.3g times its corner on. A "
                + "tenfold reduction from 10 Hz would need a corner of %.3g Hz, %.3g mm of travel each way and a box of %.0f mm inside; "
                + "this design has it from %.4g Hz on in a box of %.0f mm.", a.tenfold(), 10 / a.tenfold(), 1e3 * a.tenfoldTravel(10),
                1e3 * a.tenfoldBox(10), a.tenfoldFromHz(), 1e3 * SpringCharts.compact(a)));
        return new CommandPage.Part("Corners, modes and travel", told,
            List.of(new PageTable("Corner of each axis: the mode that moves mostly "
            + "along it, Hz", List.of("axis", "wanted", "reached"), corners), AssessmentGrids.modes(a.after()),
            AssessmentGrids.travel(a.after())), charts);
    }
}

package quietband.report.change;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import quietband.demand.ResidualPoint;
import quietband.model.Vec;
import quietband.report.assess.AssessmentSources;
import quietband.report.file.NumberFormat;
import quietband.report.file.QuantityText;
import quietband.report.page.Caution;
import quietband.report.page.CommandPage;
import quietband.report.page.PageHead;
import quietband.report.page.PageTable;
import quietband.report.page.StackName;
import quietband.response.verdict.StackVerdict;
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
            case RESIDUAL -> "worst residual through platform and correction";
            case NOISE -> "integrated phase noise in the model's vibration";
        };
    }

    private static String number(double v) {
        return NumberFormat.brief(v, 4);
    }

    /** The summary for a terminal, each line ended. */
    static String of(OrientFiles f, List<OrientFiles.Tried> tried, boolean known) {
        List<String> lines = new ArrayList<>();
        String title = f.base().design().title();
        lines.add((title.isEmpty() ? f.from().input() : title) + ", model " + f.from().modelHash().substring(0, 12) + ", quietband "
            + f.from().version());
        lines.add("");
        lines.addAll(sentences(f));
        lines.add("");
        lines.add(String.format(Locale.ROOT, "%-12s %14s %14s   (%s)", "angle error", "recalibrated", "weights kept", unit(f.turn())));
        for (List<String> row : errors(f)) {
            lines.add(String.format(Locale.ROOT, "%-12s %14s %14s", row.toArray()));
        }
        if (!tried.isEmpty()) {
            lines.add("");
            lines.add(String.format(Locale.ROOT, "%-16s %9s %8s %8s %9s %8s  %s", "support", "resonance", "bare", "all", "margin", "shock",
                "source"));
            for (List<String> r : supports(tried)) {
                lines.add(String.format(Locale.ROOT, "%-16s %9s %8s %8s %9s %8s  %s", r.get(0), r.get(2), r.get(4), r.get(6), r.get(8),
                    r.get(10), r.get(11)));
            }
            lines.addAll(supportNotes(tried, known));
        }
        lines.add(Caution.PREDICTION);
        return String.join("\n", lines) + "\n";
    }

    private static List<String> sentences(OrientFiles f) {
        Orientation t = f.turn();
        Vec a = t.turn().axis();
        Vec g = t.mounted().times(1e9);
        List<String> said = new ArrayList<>();
        said.add(String.format(Locale.ROOT, "Turn by %.3f deg about (%.4f, %.4f, %.4f): %s %s %s, before %s, without any turn %s.",
            Math.toDegrees(t.turn().angle()), a.x(), a.y(), a.z(), goal(t), number(f.shown(t.after())), unit(t),
            number(f.shown(t.before())), number(f.shown(t.unturned()))));
        said.add(String.format(Locale.ROOT, "Mounted sensitivity %+.4f, %+.4f, %+.4f ppb/g.", g.x(), g.y(), g.z()));
        said.add(capital(f.after()) + ": worst " + worst(f.after()) + "; before " + worst(f.before()) + ".");
        if (f.base().design().cancellation().map(c -> c.weightsPerG().isPresent()).orElse(false)) {
            said.add("The model writes its weights out: they stay, and the turn is the best for them.");
        }
        return said;
    }

    private static String capital(StackVerdict v) {
        return StackName.capital(v.stack());
    }

    private static String worst(StackVerdict v) {
        return QuantityText.ppb(v.worst().residualPerG()) + " ppb/g at " + QuantityText.hz(v.worst().frequencyHz()) + " on "
            + v.worst().axis()
            + (v.asked() ? ", margin " + QuantityText.db(v.worst().marginDb()) : "");
    }

    private static List<List<String>> errors(OrientFiles f) {
        List<List<String>> rows = new ArrayList<>();
        rows.add(List.of("0 deg", number(f.shown(f.turn().after())), number(f.shown(f.turn().after()))));
        for (Orientation.AngleError e : f.turn().errors()) {
            rows.add(List.of(NumberFormat.json(Math.rint(Math.toDegrees(e.angle()) * 1e6) / 1e6) + " deg",
                number(f.shown(e.recalibrated())),
                number(f.shown(e.kept()))));
        }
        return rows;
    }

    private static List<List<String>> supports(List<OrientFiles.Tried> tried) {
        List<List<String>> rows = new ArrayList<>();
        for (OrientFiles.Tried t : tried) {
            ResidualPoint bare = t.bare().worst();
            ResidualPoint full = t.full().worst();
            rows.add(List.of(t.row().name(), Integer.toString(t.row().points()), Double.isInfinite(t.row().lowestHz()) ? "none"
                : QuantityText.hz(t.row().lowestHz()), number(t.row().relative()), QuantityText.ppb(bare.residualPerG()),
                QuantityText.hz(bare.frequencyHz()),
                QuantityText.ppb(full.residualPerG()), QuantityText.hz(full.frequencyHz()), t.full().asked()
                ? QuantityText.db(full.marginDb()) : "",
                shock(t, false), shock(t, true), t.row().source()));
        }
        return rows;
    }

    /** Peak of the blank; the platform's when there is one and it is asked for. */
    private static String shock(OrientFiles.Tried t, boolean platform) {
        return t.shock().map(s -> platform && !Double.isNaN(s.sprung()) ? s.sprung() : s.bolted())
            .map(g -> NumberFormat.brief(g, 3) + " g").orElse("");
    }

    private static List<String> supportNotes(List<OrientFiles.Tried> tried, boolean known) {
        List<String> said = new ArrayList<>();
        for (OrientFiles.Tried t : tried) {
            if (t.inBand()) {
                said.add(t.row().name() + " resonates within the band, at " + QuantityText.hz(t.row().lowestHz()) + ": supports/"
                    + t.row().name()
                    + "/model.yaml for assess, and for simulate --drive shock.");
            }
        }
        if (!known) {
            said.add("The table has no row of the support the model names: its sensitivity is taken as that of a relative one of 1.");
        }
        if (tried.stream().anyMatch(t -> t.model().design().tolerances().stream().anyMatch(o -> o.lot().isPresent()))) {
            said.add("A lot under tolerances stays as it was measured: before tolerance, give each support's model the lot of resonators "
                + "on that support.");
        }
        if (tried.stream().anyMatch(t -> t.row().invented())) {
            said.add(INVENTED);
        }
        return said;
    }

    /** The page. */
    static CommandPage page(OrientFiles f, List<OrientFiles.Tried> tried, boolean known, String svg) {
        Orientation t = f.turn();
        String title = f.base().design().title();
        String why = sentences(f).get(0);
        PageHead head = new PageHead(title.isEmpty() ? f.from().input() : title, "TURNED", "none", why, f.from(),
            AssessmentSources.today());
        List<CommandPage.Part> parts = new ArrayList<>();
        parts.add(new CommandPage.Part("Turn", sentences(f), List.of(), List.of(svg)));
        PageTable errors = new PageTable(capitalised(goal(t)) + ", " + unit(t),
            List.of("angle error", "recalibrated", "weights kept"), errors(f));
        parts.add(new CommandPage.Part("What an error of the angle costs",
            List.of("The vector points elsewhere by the angle, the worst way "
            + "round. Recalibrated: the weights follow it. Kept: the weights are those of the vector as meant."), List.of(errors),
            List.of()));
        if (!tried.isEmpty()) {
            PageTable grid = new PageTable("Each with its best turn; worst residual of the resonator alone and of the stack with every "
                + "measure, ppb/g; "
                + "peak of the blank under the model's shock", List.of("support", "points", "lowest resonance", "relative sensitivity",
                "alone", "at", "with every measure", "at", "margin", "shock, bolted down", "shock, as the model stands", "source"),
                supports(tried));
            parts.add(new CommandPage.Part("Supports", supportNotes(tried, known), List.of(grid), List.of()));
        }
        return new CommandPage(head, parts);
    }

    private static String capitalised(String text) {
        return text.substring(0, 1).toUpperCase(Locale.ROOT) + text.substring(1);
    }
}

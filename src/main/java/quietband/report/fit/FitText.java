package quietband.report.fit;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import quietband.identification.MeasuredResponse.Kind;
import quietband.identification.fit.FitResult;
import quietband.report.file.NumberFormat;
import quietband.report.file.QuantityText;
import quietband.report.page.PageTable;
import quietband.report.page.Report;

/** A fit in words and short tables, for a terminal and for the page. */
final class FitText {

    /** What the new model's tolerances are. */
    static final String OFFERED = "model.yaml has the standard errors as offered tolerances named \"fit of ...\"; take out what tolerance "
        + "shall not draw.";

    private FitText() { }

    /** The unit in which tables show a value: the base unit where files may use it. */
    static String unit(FitResult.Value v) {
        return v.dimension().plain().text();
    }

    /** A number of a value's dimension in that unit. */
    static double in(FitResult.Value v, double number) {
        return Double.isFinite(number) ? QuantityText.in(number, v.dimension().plain()) : Double.NaN;
    }

    static String state(FitResult.Value v) {
        return v.state().name().toLowerCase(Locale.ROOT);
    }

    static String quantity(FitResult.Curve c) {
        return c.kind() == Kind.WEIGHTED_PATH ? "path" : c.kind().name().toLowerCase(Locale.ROOT);
    }

    static String sentence(FitResult fit) {
        long found = fit.values().stream().filter(v -> v.state() == FitResult.State.FOUND).count();
        return NumberFormat.text("%d of %d values found; RMS difference of prediction and measurement %s from %s %% to %s %%",
            found, fit.values().size(),
            fit.quality().rmsAfter() <= fit.quality().rmsBefore() ? "fell" : "rose", NumberFormat.brief(100 * fit.quality().rmsBefore(), 3),
            NumberFormat.brief(100 * fit.quality().rmsAfter(), 3));
    }

    /** A value with its standard error: "9.12 +- 0.05 N/mm". */
    static String amount(FitResult.Value v) {
        if (v.state() == FitResult.State.HELD) {
            return QuantityText.amount(v.value(), v.value(), v.dimension(), 4) + " (held)";
        }
        if (!(v.standardError() > 0)) {
            return QuantityText.amount(v.value(), v.value(), v.dimension(), 4) + " (at its bound)";
        }
        double like = v.value() == 0 ? v.standardError() : v.value();
        String error = QuantityText.amount(v.standardError(), like, v.dimension(), 2);
        int digits = (int) Math.max(2, Math.min(9, 2 + Math.floor(Math.log10(Math.abs(like))) - Math.floor(
            Math.log10(v.standardError()))));
        String value = QuantityText.amount(v.value(), like, v.dimension(), digits);
        int space = value.indexOf(' ');
        return (space < 0 ? value : value.substring(0, space)) + " +- " + error;
    }

    static List<List<String>> rows(List<FitResult.Value> values) {
        List<List<String>> rows = new ArrayList<>();
        for (FitResult.Value v : values) {
            String interval = Double.isNaN(v.low()) ? "" : QuantityText.amount(v.low(), v.value(), v.dimension(), 4) + " to "
                + QuantityText.amount(v.high(), v.value(), v.dimension(), 4);
            rows.add(List.of(v.of(), QuantityText.amount(v.before(), v.before(), v.dimension(), 4), amount(v), interval));
        }
        return rows;
    }

    static void say(Report report, FitResult fit, String model) {
        wrap(report, model + ": " + sentence(fit) + ".");
        report.line("");
        for (List<String> row : rows(fit.values())) {
            report.line(row.get(0)).line("    " + row.get(1) + " -> " + row.get(2));
        }
        if (!fit.kinds().isEmpty()) {
            report.line("").line("kind of damping          AICc       BIC");
            fit.kinds().forEach(k -> report.line("%-18s %10.1f %9.1f%s", k.kind().words(), k.aicc(), k.bic(), k.taken() ? "  taken" : ""));
        }
        report.line("");
        if (fit.after().design().tolerances().size() > fit.before().design().tolerances().size()) {
            wrap(report, OFFERED);
        }
        fit.curves().forEach(c -> wrap(report, "Noise, " + c.noise() + "."));
        report.line("");
        page(report, fit);
    }

    /** Words, at most 80 columns wide. */
    private static void wrap(Report report, String words) {
        report.hang("", String.join(" ", words.split("\\s+")));
    }

    private static void page(Report report, FitResult fit) {
        boolean doubt = !fit.notes().isEmpty();
        report.head(doubt ? "FITTED, WITH DOUBTS" : "FITTED", "none", sentence(fit));
        report.part("Values").say(sentence(fit) + ". The changed model is model.yaml beside this page. " + OFFERED)
            .say(fit.notes().stream().map(n -> "Mind: " + n + ".").toList()).table("Values found, with one standard error",
                List.of("value of", "before", "after", "95 % interval"), rows(fit.values()));
        report.part("Measured, before and after").say(fit.curves().stream().map(c -> "Noise, " + c.noise() + ".").toList())
            .charts(FitCharts.of(fit));
        if (!fit.kinds().isEmpty()) {
            report.part("Kind of damping").say("The same data with another kind of damping in place of the one that was free. A criterion "
                + "lower by 10 or more is strong evidence, by less than 2 none (common practice, no source).").table(kinds(fit));
        }
        if (fit.values().size() > 1) {
            report.part("Correlation of the values' errors").say("Near +1 or -1 the data hardly tell two values apart.")
                .table(correlation(fit));
        }
        if (!fit.modes().isEmpty()) {
            report.part("Modes").table(modes(fit));
        }
    }

    private static PageTable kinds(FitResult fit) {
        return new PageTable("Kinds of damping, the likeliest first", List.of("kind", "AICc", "BIC", "values", ""),
            fit.kinds().stream().map(k -> List.of(k.kind().words(), NumberFormat.text("%.1f", k.aicc()),
                NumberFormat.text("%.1f", k.bic()), k.values().stream().map(v -> last(v.of()) + " " + amount(v))
                .collect(Collectors.joining("; ")), k.taken() ? "taken" : "")).toList());
    }

    /** The last two keys of a path. */
    private static String last(String path) {
        String[] keys = path.split("\\.");
        return keys.length < 2 ? path : keys[keys.length - 2] + "." + keys[keys.length - 1];
    }

    private static PageTable correlation(FitResult fit) {
        List<String> head = new ArrayList<>(List.of("value of"));
        IntStream.rangeClosed(1, fit.values().size()).forEach(i -> head.add("" + i));
        List<List<String>> rows = new ArrayList<>();
        for (int i = 0; i < fit.values().size(); i++) {
            List<String> row = new ArrayList<>(List.of(i + 1 + ". " + fit.values().get(i).of()));
            for (int j = 0; j < fit.values().size(); j++) {
                double c = fit.correlation()[i][j];
                row.add(Double.isNaN(c) ? "-" : NumberFormat.text("%.3f", c));
            }
            rows.add(row);
        }
        return new PageTable("Correlation coefficients", head, rows);
    }

    private static PageTable modes(FitResult fit) {
        return new PageTable("Modes of the platform before and after", List.of("shape", "before", "after", "damping ratio before",
            "after"), fit.modes().stream().map(m -> List.of(m.shape(), QuantityText.hz(m.beforeHz()), NumberFormat.text(
            "%s +- %s Hz", NumberFormat.brief(m.afterHz(), 5), NumberFormat.brief(m.errorHz(), 2)), NumberFormat.brief(m.beforeRatio(), 3),
            NumberFormat.brief(m.afterRatio(), 4) + " +- " + NumberFormat.brief(m.errorRatio(), 2))).toList());
    }
}

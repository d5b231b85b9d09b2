package quietband.report.fit;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import quietband.identification.fit.FitResult;
import quietband.report.assess.AssessmentSources;
import quietband.report.file.NumberFormat;
import quietband.report.file.Provenance;
import quietband.report.file.QuantityText;
import quietband.report.page.CommandPage;
import quietband.report.page.PageHead;
import quietband.report.page.PageTable;

/** The page of a fit. */
final class FitPage {

    private FitPage() { }

    static CommandPage of(FitResult fit, Provenance from, List<String> svgs) {
        String title = fit.before().design().title();
        boolean doubt = !fit.notes().isEmpty();
        PageHead head = new PageHead((title.isEmpty() ? from.input() : title) + ", fitted",
            doubt ? "FITTED, WITH DOUBTS" : "FITTED", doubt ? "none" : "holds", FitText.sentence(fit), from, AssessmentSources.today());
        List<CommandPage.Part> parts = new ArrayList<>();
        List<String> told = new ArrayList<>(List.of(FitText.sentence(fit) + ". The changed model is model.yaml beside this "
            + "page. " + FitText.OFFERED));
        fit.notes().forEach(n -> told.add("Mind: " + n + "."));
        parts.add(new CommandPage.Part("Values", told, List.of(new PageTable("Values found, with one standard error",
            List.of("value of", "before", "after", "95 % interval"), FitText.rows(fit.values()))), List.of()));
        parts.add(new CommandPage.Part("Measured, before and after", fit.curves().stream().map(c -> "Noise, " + c.noise() + ".").toList(),
            List.of(), svgs));
        if (!fit.kinds().isEmpty()) {
            parts.add(new CommandPage.Part("Kind of damping", List.of("The same data with another kind of damping in place of the one that "
                + "was free. A criterion lower by 10 or more is strong evidence, by less than 2 none (common practice, no source)."),
                List.of(kinds(fit)), List.of()));
        }
        if (fit.values().size() > 1) {
            parts.add(new CommandPage.Part("Correlation of the values' errors", List.of("Near +1 or -1 the data hardly tell two "
                + "values apart."),
                List.of(correlation(fit)), List.of()));
        }
        if (!fit.modes().isEmpty()) {
            parts.add(new CommandPage.Part("Modes", List.of(), List.of(modes(fit)), List.of()));
        }
        return new CommandPage(head, parts);
    }

    private static PageTable kinds(FitResult fit) {
        return new PageTable("Kinds of damping, the likeliest first", List.of("kind", "AICc", "BIC", "values", ""),
            fit.kinds().stream().map(k -> List.of(k.kind().words(), String.format(Locale.ROOT, "%.1f", k.aicc()),
                String.format(Locale.ROOT, "%.1f", k.bic()), k.values().stream().map(v -> last(v.of()) + " " + FitText.amount(v))
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
                row.add(Double.isNaN(c) ? "-" : String.format(Locale.ROOT, "%.3f", c));
            }
            rows.add(row);
        }
        return new PageTable("Correlation coefficients", head, rows);
    }

    private static PageTable modes(FitResult fit) {
        return new PageTable("Modes of the platform before and after", List.of("shape", "before", "after", "damping ratio before",
            "after"), fit.modes().stream().map(m -> List.of(m.shape(), QuantityText.hz(m.beforeHz()), String.format(Locale.ROOT,
            "%s +- %s Hz", NumberFormat.brief(m.afterHz(), 5), NumberFormat.brief(m.errorHz(), 2)), NumberFormat.brief(m.beforeRatio(), 3),
            NumberFormat.brief(m.afterRatio(), 4) + " +- " + NumberFormat.brief(m.errorRatio(), 2))).toList());
    }
}

package quietband.report.fit;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import quietband.identification.MeasuredResponse.Kind;
import quietband.identification.fit.FitResult;
import quietband.report.file.NumberFormat;
import quietband.report.file.Provenance;
import quietband.report.file.QuantityText;
import quietband.report.page.Caution;
import quietband.units.Amounts;
import quietband.units.Unit;

/** A fit in words and short tables. */
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
        Unit unit = v.dimension().plain();
        if (!Double.isFinite(number)) {
            return Double.NaN;
        }
        String text = Amounts.print(number, unit);
        int space = text.indexOf(' ');
        return Double.parseDouble(space < 0 ? text : text.substring(0, space));
    }

    static String state(FitResult.Value v) {
        return v.state().name().toLowerCase(Locale.ROOT);
    }

    static String quantity(FitResult.Curve c) {
        return c.kind() == Kind.WEIGHTED_PATH ? "path" : c.kind().name().toLowerCase(Locale.ROOT);
    }

    static String sentence(FitResult fit) {
        long found = fit.values().stream().filter(v -> v.state() == FitResult.State.FOUND).count();
        return String.format(Locale.ROOT, "%d of %d values found; what prediction and measurement differ by went from %s %% to %s %% "
            + "(root mean square)", found, fit.values().size(), NumberFormat.brief(100 * fit.quality().rmsBefore(), 3),
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

    static String of(FitResult fit, Provenance from) {
        StringBuilder text = new StringBuilder();
        String title = fit.before().design().title();
        wrap(text, (title.isEmpty() ? from.input() : title) + ": " + sentence(fit) + ".");
        text.append('\n');
        for (List<String> row : rows(fit.values())) {
            text.append(row.get(0)).append('\n').append("    ").append(row.get(1)).append(" -> ").append(row.get(2)).append('\n');
        }
        if (!fit.kinds().isEmpty()) {
            text.append('\n').append("kind of damping          AICc       BIC\n");
            fit.kinds().forEach(k -> text.append(String.format(Locale.ROOT, "%-18s %10.1f %9.1f%s%n", k.kind().words(), k.aicc(),
                k.bic(), k.taken() ? "  taken" : "")));
        }
        text.append('\n');
        if (fit.after().design().tolerances().size() > fit.before().design().tolerances().size()) {
            wrap(text, OFFERED);
        }
        fit.curves().forEach(c -> wrap(text, "Noise, " + c.noise() + "."));
        text.append('\n').append(Caution.PREDICTION).append('\n');
        return text.toString();
    }

    /** Adds words, at most 80 columns wide, and a line end. */
    private static void wrap(StringBuilder text, String words) {
        int width = 0;
        for (String word : words.split("\\s+")) {
            boolean fits = width > 0 && width + 1 + word.length() <= 80;
            text.append(width == 0 ? "" : fits ? " " : "\n").append(word);
            width = fits ? width + 1 + word.length() : word.length();
        }
        text.append('\n');
    }
}

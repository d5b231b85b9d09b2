package quietband.report.assess;

import java.util.List;
import quietband.demand.RequirementResult;
import quietband.model.Design;
import quietband.report.file.NumberFormat;
import quietband.report.file.QuantityText;
import quietband.units.Dimension;

/** One line of what is asked, as the page shows it; every cell a text, empty when it has none. */
public record RequirementRow(String name, boolean met, String worst, String limit, String frequency, String axis,
                       String margin) {

    /** The lines in order. */
    static List<RequirementRow> of(List<RequirementResult> results, Design design, String profile) {
        return results.stream().map(r -> of(r, design, profile)).toList();
    }

    private static RequirementRow of(RequirementResult r, Design design, String profile) {
        String unit = " " + r.unit();
        return new RequirementRow(name(r, design, profile), r.met(), NumberFormat.brief(r.value(), 4) + unit,
            NumberFormat.brief(r.limit(), 4) + unit, Double.isNaN(r.frequencyHz()) ? "" : QuantityText.hz(r.frequencyHz()), r.axis(),
            r.hasMargin() ? QuantityText.db(r.marginDb()) : NumberFormat.text("%.1f %% used", 100 * r.usedShare()));
    }

    private static String name(RequirementResult r, Design design, String profile) {
        String output = " at " + carrier(design.oscillator().outputHz());
        String by = profile.isEmpty() ? "the model's vibration" : profile;
        return switch (r.name()) {
            case "phase_noise" -> "Phase noise" + output + " under " + by;
            case "residual" -> "Residual sensitivity";
            case "tones" -> "Sidebands of the tones" + output;
            case "jitter" -> "Phase jitter" + output;
            case "travel" -> "Travel of the platform";
            case "sensor_range" -> "Sensor range, 3 sigma plus tones";
            case "tuning_swing" -> "Tuning swing, 3 sigma plus tones";
            default -> r.name().replace('_', ' ');
        };
    }

    private static String carrier(double f) {
        return QuantityText.amount(f, f, Dimension.FREQUENCY, 6);
    }
}

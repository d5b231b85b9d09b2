package quietband.window;

import java.util.Comparator;
import java.util.List;
import quietband.demand.RequirementResult;
import quietband.report.file.NumberFormat;
import quietband.report.file.QuantityText;

/** What can be said of one requirement: how it came out, and where to turn when it is not met. */
final class RequirementAdvice {

    private RequirementAdvice() { }

    /** Value, limit and where, in words. */
    static String full(RequirementResult r) {
        String where = (Double.isNaN(r.frequencyHz()) ? "" : " at " + QuantityText.hz(r.frequencyHz()))
            + (r.axis().isEmpty() ? "" : ", " + (r.axis().length() == 1 ? "axis " : "") + r.axis());
        return r.name().replace('_', ' ') + ": " + NumberFormat.brief(r.value(), 4) + " " + r.unit() + " of "
            + NumberFormat.brief(r.limit(), 4)
            + " " + r.unit() + " allowed" + where;
    }

    /** Which values move it. */
    static String of(RequirementResult r) {
        String turn = switch (r.name()) {
            case "travel" -> "stiffer springs, more damping or more clearance";
            case "phase_noise", "jitter", "tones" -> "less residual there, or less noise of sensor and port";
            case "sensor_range" -> "a sensor with more range, or more damping of the platform";
            case "tuning_swing" -> "a steeper tuning slope or more range of the port";
            default -> "less residual there";
        };
        return turn + " (" + full(r) + ").";
    }

    /** What is closest to its limit. */
    static String tightest(List<RequirementResult> all) {
        return all.stream().min(Comparator.comparingDouble(RequirementAdvice::room))
            .map(r -> NumberFormat.text("Tightest: %s.", full(r))).orElse("");
    }

    /** Distance to the limit in dB, whichever way it is stated. */
    private static double room(RequirementResult r) {
        return r.hasMargin() ? r.marginDb() : -20 * Math.log10(Math.max(r.usedShare(), 1e-15));
    }
}

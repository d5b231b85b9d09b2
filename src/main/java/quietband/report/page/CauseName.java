package quietband.report.page;

import quietband.response.Cause;

/** What people call the causes. */
public final class CauseName {

    private CauseName() { }

    /** In the middle of a sentence. */
    public static String of(Cause cause) {
        return switch (cause) {
            case GAIN -> "gain error";
            case PHASE -> "phase error";
            case DELAY -> "delay error";
            case PATH -> "path";
            case CROSS_AXIS -> "cross-axis";
            case SENSOR_PLACE -> "sensor place";
            case SUPPORT_RESONANCE -> "support resonance";
            case WEIGHTS -> "weights";
        };
    }
}

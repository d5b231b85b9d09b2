package quietband.tolerance.judge;

import java.util.Locale;

/** What a unit can be asked, by the names that {@code assess} uses. */
public enum RequirementKind {
    RESIDUAL, PHASE_NOISE, TONES, JITTER, TRAVEL, SENSOR_RANGE, TUNING_SWING;

    /** The name in files. */
    public String key() {
        return name().toLowerCase(Locale.ROOT);
    }

    /** Its bit in a set. */
    int bit() {
        return 1 << ordinal();
    }
}

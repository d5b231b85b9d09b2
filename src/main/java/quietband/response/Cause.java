package quietband.response;

import java.util.EnumSet;
import java.util.Locale;
import java.util.Set;

/** What keeps a cancellation from cancelling all; each can be made ideal on its own. */
public enum Cause {
    /** The relative gain error; ideal: 0. */
    GAIN,
    /** The constant phase error; ideal: 0. */
    PHASE,
    /** The delay error; ideal: 0. */
    DELAY,
    /** Sensor, passes, digital filter, hold, latency and tuning pole together; ideal: 1. */
    PATH,
    /** Cross-axis reading of the sensors; ideal: none. */
    CROSS_AXIS,
    /** Where the sensors are; ideal: at the resonator, on the platform. */
    SENSOR_PLACE,
    /** The blank's resonance on its support; ideal: none. */
    SUPPORT_RESONANCE,
    /** The weights; ideal: the mounted sensitivity. */
    WEIGHTS;

    /** All of them as they are in the design. */
    public static final Set<Cause> ALL = EnumSet.allOf(Cause.class);

    /** The name in files. */
    public String key() {
        return name().toLowerCase(Locale.ROOT);
    }
}

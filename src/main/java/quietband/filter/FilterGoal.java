package quietband.filter;

import java.util.Locale;

/** What a cancellation filter is designed for. */
public enum FilterGoal {
    /** Least largest residual over its limit. */
    LIMIT,
    /** Least integrated phase noise, nowhere above no cancellation by more than 0.01 dB. */
    NOISE,
    /** Least sum of squares of the residual on a grid. */
    FLAT;

    /** The name in files and options. */
    public String key() {
        return name().toLowerCase(Locale.ROOT);
    }
}

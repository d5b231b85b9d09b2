package quietband.filter;

import java.util.Locale;

/** How a cancellation filter is built. */
public enum FilterForm {
    /** A sum of delayed samples. */
    TAPS,
    /** Second-order sections one after the other. */
    SECTIONS;

    /** The name in files and options. */
    public String key() {
        return name().toLowerCase(Locale.ROOT);
    }
}

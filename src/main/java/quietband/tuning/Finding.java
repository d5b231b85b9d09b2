package quietband.tuning;

/**
 * Something that was wished for or has to hold, and how it came out.
 *
 * @param name  short, in files
 * @param met   whether it holds
 * @param words what was found, for people
 * @param takes what it would take where it does not hold; empty where it does
 */
public record Finding(String name, boolean met, String words, String takes) {

    /** One that holds. */
    static Finding met(String name, String words) {
        return new Finding(name, true, words, "");
    }

    /** One that holds or not. */
    static Finding of(String name, boolean met, String words, String takes) {
        return new Finding(name, met, words, met ? "" : takes);
    }
}

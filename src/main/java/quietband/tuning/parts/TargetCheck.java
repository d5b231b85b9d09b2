package quietband.tuning.parts;

/**
 * A target, or something that has to hold, and how it came out.
 *
 * @param name  short, in files
 * @param met   whether it holds
 * @param words what was found, for people
 * @param takes what it would take where it does not hold; empty where it does
 */
public record TargetCheck(String name, boolean met, String words, String takes) {

    /** One that holds or not. */
    public static TargetCheck of(String name, boolean met, String words, String takes) {
        return new TargetCheck(name, met, words, met ? "" : takes);
    }
}

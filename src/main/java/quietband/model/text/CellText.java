package quietband.model.text;

/**
 * Names and other texts that a file brings and a table of a result repeats. A spreadsheet takes a cell that begins with
 * =, +, -, @, a tab or a carriage return for a formula and runs it, so none is read.
 */
public final class CellText {

    /** What to do about one. */
    public static final String ADVICE = "a spreadsheet would take it for a formula; begin with a letter or a digit";

    private CellText() { }

    /** Whether a spreadsheet would take a text for a formula. */
    public static boolean formula(String text) {
        return !text.isEmpty() && "=+-@\t\r".indexOf(text.charAt(0)) >= 0;
    }

    /** What was found, for a message. */
    public static String found(String text) {
        return "'" + YamlNode.shorten(text) + "' begins with '" + text.charAt(0) + "'";
    }
}

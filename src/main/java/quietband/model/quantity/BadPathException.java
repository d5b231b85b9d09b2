package quietband.model.quantity;

/** A path that names no number of the design. */
public final class BadPathException extends IllegalArgumentException {

    private static final long serialVersionUID = 1;

    private final String path;
    private final String found;
    private final String advice;

    public BadPathException(String path, String found, String advice) {
        super(path + ": " + found + (advice.isEmpty() ? "" : "; " + advice));
        this.path = path;
        this.found = found;
        this.advice = advice;
    }

    /** As the person wrote it. */
    public String path() {
        return path;
    }

    /** What is wrong with it. */
    public String found() {
        return found;
    }

    /** What would do; may be empty. */
    public String advice() {
        return advice;
    }
}

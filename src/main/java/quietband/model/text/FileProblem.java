package quietband.model.text;

/**
 * Something wrong in a file, told so that a person can correct it.
 *
 * @param file   as the person named it
 * @param line   from 1; 0 when it concerns the whole file
 * @param column from 1; 0 when it concerns the whole line or file
 * @param path   of the quantity or key, e.g. {@code platform.springs.corners.stiffness.x}; empty when none is meant
 * @param found  what was found
 * @param advice what would do; empty when the finding says it
 */
public record FileProblem(String file, int line, int column, String path, String found, String advice) {

    /** One line: {@code file:line:column: path: found; advice}. */
    @Override
    public String toString() {
        StringBuilder text = new StringBuilder(file);
        if (line > 0) {
            text.append(':').append(line);
            if (column > 0) {
                text.append(':').append(column);
            }
        }
        text.append(": ");
        if (!path.isEmpty()) {
            text.append(path).append(": ");
        }
        text.append(found);
        return advice.isEmpty() ? text.toString() : text.append("; ").append(advice).toString();
    }
}

package quietband.window.bench;

/**
 * Steps one behind the other, the latest first: an immutable list of any length.
 *
 * @param step the latest
 * @param rest what came before it; null at the end
 * @param size how many
 */
record EditHistory(EditStep step, EditHistory rest, int size) {

    /** A list with one step more; the list may be null, which is the empty one. */
    static EditHistory plus(EditHistory rest, EditStep step) {
        return new EditHistory(step, rest, rest == null ? 1 : rest.size + 1);
    }
}

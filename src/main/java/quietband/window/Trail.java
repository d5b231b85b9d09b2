package quietband.window;

/**
 * Steps one behind the other, the latest first: an immutable list of any length.
 *
 * @param step the latest
 * @param rest what came before it; null at the end
 * @param size how many
 */
record Trail(Step step, Trail rest, int size) {

    /** A list with one step more; the list may be null, which is the empty one. */
    static Trail plus(Trail rest, Step step) {
        return new Trail(step, rest, rest == null ? 1 : rest.size + 1);
    }
}

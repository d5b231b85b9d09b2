package quietband.window.bench;

/**
 * Something to be done to the bench, away from the event thread.
 *
 * @param about   what it concerns: the path of a value, or empty; a refusal is shown there
 * @param typed   what was typed, for the refusal; else empty
 * @param gesture orders with the same name, not empty, that wait in a row are done once, the latest
 * @param change  from the bench as it is to the bench as it shall be
 */
public record EditOrder(String about, String typed, String gesture, Change change) {

    /** Changes a bench. */
    @FunctionalInterface
    public interface Change {
        /** The bench after it. */
        EditingBench of(EditingBench bench);
    }

    /** One that concerns no value. */
    public static EditOrder of(Change change) {
        return new EditOrder("", "", "", change);
    }

    /** Sets a value to what was typed. */
    public static EditOrder set(String label, String gesture, String path, String typed, String yaml) {
        return new EditOrder(path, typed, gesture, bench -> bench.edit(label, gesture, path, yaml));
    }
}

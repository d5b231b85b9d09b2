package quietband.work;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.concurrent.FutureTask;
import java.util.function.Supplier;

/** Parts of a work that a thread beside begins, while its owner does something else, and that both finish together. */
public final class BackgroundParts<T> {

    private final List<FutureTask<T>> parts;

    private BackgroundParts(List<Supplier<T>> parts) {
        this.parts = parts.stream().map(part -> new FutureTask<>(part::get)).toList();
    }

    /**
     * Begins.
     *
     * @param name  of the thread
     * @param parts in the order of their results; independent of each other
     */
    public static <T> BackgroundParts<T> on(String name, List<Supplier<T>> parts) {
        BackgroundParts<T> start = new BackgroundParts<>(parts);
        // a part runs once, in the first thread that needs it
        Thread thread = new Thread(() -> start.parts.forEach(FutureTask::run), name);
        thread.setDaemon(true);
        thread.start();
        return start;
    }

    /** Begins nothing: {@link #finish} does it all, where no thread beside is wanted. */
    public static <T> BackgroundParts<T> none(List<Supplier<T>> parts) {
        return new BackgroundParts<>(parts);
    }

    /** Does what is not begun, from the end, and waits for the rest; what a part threw is thrown as it was. */
    public List<T> finish() {
        List<FutureTask<T>> backwards = new ArrayList<>(parts);
        Collections.reverse(backwards);
        backwards.forEach(FutureTask::run);
        return parts.stream().map(ParallelWork::get).toList();
    }
}

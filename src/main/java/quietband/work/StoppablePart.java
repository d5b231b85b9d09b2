package quietband.work;

import java.util.Optional;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.FutureTask;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.TimeoutException;
import java.util.function.BooleanSupplier;
import java.util.function.Supplier;

/** A part of a work that a thread beside does at once, and that can be given up: the thread does not keep the program alive. */
public final class StoppablePart<T> {

    private static final long EVERY_MS = 20;

    private final FutureTask<T> task;
    private final BooleanSupplier stopped;

    /**
     * Begins.
     *
     * @param name    of the thread
     * @param stopped whether it is to be given up; asked before it begins and while it is waited for
     */
    public StoppablePart(String name, Supplier<T> part, BooleanSupplier stopped) {
        task = new FutureTask<>(part::get);
        this.stopped = stopped;
        if (!stopped.getAsBoolean()) {
            Thread thread = new Thread(task, name);
            thread.setDaemon(true);
            thread.start();
        }
    }

    /** Waits for it; empty when it was given up. What it threw is thrown as it was. */
    public Optional<T> finish() {
        while (!stopped.getAsBoolean()) {
            try {
                task.get(EVERY_MS, TimeUnit.MILLISECONDS);
                return Optional.of(ParallelWork.get(task));
            } catch (TimeoutException e) {
                continue;
            } catch (ExecutionException e) {
                return Optional.of(ParallelWork.get(task));
            } catch (InterruptedException e) {
                Thread.currentThread().interrupt();
                return Optional.empty();
            }
        }
        task.cancel(true);
        return Optional.empty();
    }
}

package quietband.window.work;

import java.util.function.Consumer;

/**
 * A thread that works on the latest thing it was given: what comes in while it is busy replaces what waits, so that work never piles up.
 *
 * @param <T> what is worked on
 */
public final class LatestTask<T> implements AutoCloseable {

    private final Consumer<T> work;
    private final Consumer<RuntimeException> trouble;
    private final Thread thread;
    private T waiting;
    private boolean busy;
    private boolean closed;

    /**
     * Starts the thread.
     *
     * @param trouble told what the work throws; the thread goes on
     */
    public LatestTask(String name, Consumer<T> work, Consumer<RuntimeException> trouble) {
        this.work = work;
        this.trouble = trouble;
        this.thread = new Thread(this::run, name);
        thread.setDaemon(true);
        thread.start();
    }

    /** Hands over something to work on; replaces what still waits. */
    public synchronized void give(T next) {
        waiting = next;
        notifyAll();
    }

    /** Whether something newer waits, so that the work at hand need not be finished. */
    synchronized boolean overtaken() {
        return waiting != null || closed;
    }

    /** Whether nothing waits and nothing is being worked on. */
    public synchronized boolean idle() {
        return waiting == null && !busy;
    }

    private void run() {
        for (T next = take(); next != null; next = take()) {
            try {
                work.accept(next);
            } catch (RuntimeException e) {
                trouble.accept(e);
            } finally {
                done();
            }
        }
    }

    private synchronized void done() {
        busy = false;
        notifyAll();
    }

    private synchronized T take() {
        try {
            while (waiting == null && !closed) {
                wait();
            }
        } catch (InterruptedException e) {
            return null;
        }
        T next = closed ? null : waiting;
        waiting = null;
        busy = next != null;
        return next;
    }

    /** Ends the thread once it has finished what it is at. */
    @Override
    public synchronized void close() {
        closed = true;
        notifyAll();
    }
}

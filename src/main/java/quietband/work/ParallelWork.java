package quietband.work;

import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.Callable;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import java.util.function.Supplier;

/** Work shared among threads; what goes wrong in one of them is thrown where the results are asked for. */
public final class ParallelWork {

    private ParallelWork() { }

    /**
     * The results of several parts, in their order.
     *
     * @param threads how many share the work, at least 1; with one everything runs on the caller's
     */
    public static <T> List<T> all(List<Supplier<T>> parts, int threads) {
        List<T> results = new ArrayList<>();
        if (threads == 1 || parts.size() <= 1) {
            parts.forEach(part -> results.add(part.get()));
            return results;
        }
        ExecutorService pool = Executors.newFixedThreadPool(Math.min(threads, parts.size()));
        try {
            List<Callable<T>> calls = parts.stream().<Callable<T>>map(part -> part::get).toList();
            for (Future<T> result : pool.invokeAll(calls)) {
                results.add(get(result));
            }
            return results;
        } catch (InterruptedException e) {
            throw interrupted(e);
        } finally {
            pool.shutdownNow();
        }
    }

    /** Waits for a result; what the work threw is thrown as it was. */
    public static <T> T get(Future<T> result) {
        try {
            return result.get();
        } catch (ExecutionException e) {
            if (e.getCause() instanceof Error error) {
                throw error;
            }
            throw e.getCause() instanceof RuntimeException r ? r : new IllegalStateException(e.getCause());
        } catch (InterruptedException e) {
            throw interrupted(e);
        }
    }

    private static IllegalStateException interrupted(InterruptedException e) {
        Thread.currentThread().interrupt();
        return new IllegalStateException("interrupted", e);
    }
}

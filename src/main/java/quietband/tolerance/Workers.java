package quietband.tolerance;

import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.Callable;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import java.util.concurrent.atomic.AtomicInteger;
import java.util.function.Supplier;

/** Numbers that do not depend on one another, worked out by several threads; who does which changes nothing. */
final class Workers {

    private static final int CHUNK = 16;

    private Workers() { }

    /** A number by index; one object serves one thread. */
    @FunctionalInterface
    interface Numbers {
        /** The number. */
        double at(int index);
    }

    /** The numbers 0 to n - 1. */
    static double[] all(int n, int threads, Supplier<Numbers> worker) {
        double[] values = new double[n];
        AtomicInteger next = new AtomicInteger();
        Callable<Integer> share = () -> {
            Numbers numbers = worker.get();
            for (int from = next.getAndAdd(CHUNK); from < n; from = next.getAndAdd(CHUNK)) {
                for (int i = from; i < Math.min(n, from + CHUNK); i++) {
                    values[i] = numbers.at(i);
                }
            }
            return 0;
        };
        ExecutorService pool = Executors.newFixedThreadPool(threads);
        try {
            List<Callable<Integer>> shares = new ArrayList<>();
            for (int t = 0; t < threads; t++) {
                shares.add(share);
            }
            for (Future<Integer> f : pool.invokeAll(shares)) {
                f.get();
            }
            return values;
        } catch (ExecutionException e) {
            throw e.getCause() instanceof RuntimeException r ? r : new IllegalStateException(e.getCause());
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
            throw new IllegalStateException("interrupted", e);
        } finally {
            pool.shutdownNow();
        }
    }
}

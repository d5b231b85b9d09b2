package quietband.work;

import java.util.Collections;
import java.util.concurrent.atomic.AtomicInteger;
import java.util.function.IntConsumer;
import java.util.function.Supplier;

/** Things that do not depend on one another, done by several threads; who does which changes nothing. */
public final class Workers {

    private static final int CHUNK = 16;

    private Workers() { }

    /** A number by index; one object serves one thread. */
    @FunctionalInterface
    public interface Numbers {
        /** The number. */
        double at(int index);
    }

    /** The numbers 0 to n - 1. */
    public static double[] all(int n, int threads, Supplier<Numbers> worker) {
        double[] values = new double[n];
        each(n, threads, () -> {
            Numbers numbers = worker.get();
            return i -> values[i] = numbers.at(i);
        });
        return values;
    }

    /** Does what is to be done for each of 0 to n - 1; one object does it in one thread. */
    public static void each(int n, int threads, Supplier<IntConsumer> worker) {
        AtomicInteger next = new AtomicInteger();
        Supplier<Integer> share = () -> {
            IntConsumer own = worker.get();
            for (int from = next.getAndAdd(CHUNK); from < n; from = next.getAndAdd(CHUNK)) {
                for (int i = from; i < Math.min(n, from + CHUNK); i++) {
                    own.accept(i);
                }
            }
            return 0;
        };
        ParallelWork.all(Collections.nCopies(threads, share), threads);
    }
}

package quietband.tolerance;

import java.util.Collections;
import java.util.concurrent.atomic.AtomicInteger;
import java.util.function.Supplier;
import quietband.spectrum.Parallel;

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
        Supplier<Integer> share = () -> {
            Numbers numbers = worker.get();
            for (int from = next.getAndAdd(CHUNK); from < n; from = next.getAndAdd(CHUNK)) {
                for (int i = from; i < Math.min(n, from + CHUNK); i++) {
                    values[i] = numbers.at(i);
                }
            }
            return 0;
        };
        Parallel.all(Collections.nCopies(threads, share), threads);
        return values;
    }
}

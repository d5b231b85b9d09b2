package quietband.work;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.util.List;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.atomic.AtomicInteger;
import java.util.function.Supplier;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;

class BackgroundPartsTest {

    @Test
    void every_part_runs_once_and_results_keep_their_order() {
        AtomicInteger runs = new AtomicInteger();
        List<Supplier<Integer>> parts = IntStream.range(0, 200).<Supplier<Integer>>mapToObj(i -> () -> {
            runs.incrementAndGet();
            return i * i;
        }).toList();
        assertThat(BackgroundParts.on("beside", parts).finish()).isEqualTo(IntStream.range(0, 200).mapToObj(i -> i * i).toList());
        assertThat(runs).hasValue(200);
    }

    /** The first part waits for the last, which only its owner can do meanwhile. */
    @Test
    void who_waits_works() {
        CountDownLatch last = new CountDownLatch(1);
        List<Supplier<String>> parts = List.of(() -> {
            try {
                last.await();
            } catch (InterruptedException e) {
                throw new IllegalStateException(e);
            }
            return Thread.currentThread().getName();
        }, () -> {
            last.countDown();
            return Thread.currentThread().getName();
        });
        BackgroundParts<String> start = BackgroundParts.on("beside", parts);
        while (Thread.getAllStackTraces().keySet().stream().noneMatch(t -> t.getName().equals("beside")
            && t.getState() == Thread.State.WAITING)) {
            Thread.onSpinWait();
        }
        assertThat(start.finish()).containsExactly("beside", Thread.currentThread().getName());
    }

    @Test
    void what_a_part_throws_is_thrown_as_it_was() {
        BackgroundParts<Integer> start = BackgroundParts.on("beside", List.of(() -> 1, () -> {
            throw new IllegalArgumentException("no");
        }));
        assertThatThrownBy(start::finish).isInstanceOf(IllegalArgumentException.class).hasMessage("no");
    }
}

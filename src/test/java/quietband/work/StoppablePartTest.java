package quietband.work;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.util.concurrent.CountDownLatch;
import java.util.concurrent.atomic.AtomicBoolean;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;

@Timeout(10)
class StoppablePartTest {

    @Test
    void what_is_done_is_known() {
        assertThat(new StoppablePart<>("p", () -> 7, () -> false).finish()).contains(7);
    }

    @Test
    void what_is_given_up_is_not_waited_for() {
        AtomicBoolean stopped = new AtomicBoolean();
        CountDownLatch begun = new CountDownLatch(1);
        CountDownLatch ended = new CountDownLatch(1);
        StoppablePart<Integer> endless = new StoppablePart<>("p", () -> {
            begun.countDown();
            try {
                new CountDownLatch(1).await();
            } catch (InterruptedException e) {
                ended.countDown();
            }
            return 1;
        }, stopped::get);
        new Thread(() -> {
            try {
                begun.await();
            } catch (InterruptedException e) {
                throw new IllegalStateException(e);
            }
            stopped.set(true);
        }).start();
        assertThat(endless.finish()).isEmpty();
        assertThat(ended).satisfies(CountDownLatch::await);
    }

    @Test
    void what_was_stopped_before_is_not_begun() {
        AtomicBoolean begun = new AtomicBoolean();
        assertThat(new StoppablePart<>("p", () -> begun.getAndSet(true), () -> true).finish()).isEmpty();
        assertThat(begun).isFalse();
    }

    @Test
    void what_it_threw_is_thrown_as_it_was() {
        assertThatThrownBy(() -> new StoppablePart<>("p", () -> Integer.parseInt("x"), () -> false).finish())
            .isInstanceOf(NumberFormatException.class);
        assertThatThrownBy(() -> new StoppablePart<>("p", () -> {
            throw new OutOfMemoryError("made");
        }, () -> false).finish()).isInstanceOf(OutOfMemoryError.class);
    }
}

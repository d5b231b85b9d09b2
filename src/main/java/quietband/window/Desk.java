package quietband.window;

import java.util.ArrayDeque;
import java.util.Deque;
import java.util.Optional;
import java.util.concurrent.Executor;
import quietband.model.Problem;
import quietband.response.Assessment;
import quietband.response.Assessor;
import quietband.response.ResidualCurves;
import quietband.tuning.Cures;

/**
 * Does the work behind the window on threads of its own: one changes the bench and computes the picture, one computes the
 * figures behind it. Orders are done in their order; only the picture of the last that waits is computed.
 */
final class Desk implements AutoCloseable {

    /** Points of the curves, beside those of the program's own grid. */
    static final int POINTS = 400;

    /** Takes what the desk has to show; called through the executor it was given. */
    interface Sink {

        /** A new picture. */
        void show(View view);

        /** New figures, perhaps of a view that is no longer the latest. */
        void show(Figures figures);

        /** An order that was not done. */
        void refused(Refusal refusal);
    }

    private final Executor shown;
    private final Sink sink;
    private final Deque<Order> orders = new ArrayDeque<>();
    private final Latest<Boolean> changing;
    private final Latest<View> figuring;
    private Bench bench;
    private View view;
    private long serial;

    /**
     * Opens a desk; the first picture follows.
     *
     * @param shown runs what is told to the sink, e.g. on the event thread
     */
    Desk(Bench start, Executor shown, Sink sink) {
        this.shown = shown;
        this.sink = sink;
        this.bench = start;
        this.figuring = new Latest<>("figures", this::figures, this::trouble);
        this.changing = new Latest<>("changes", go -> changes(), this::trouble);
        changing.give(true);
    }

    /** Hands over an order; returns at once. */
    void submit(Order order) {
        synchronized (orders) {
            Order last = orders.peekLast();
            if (last != null && !order.gesture().isEmpty() && last.gesture().equals(order.gesture())) {
                orders.removeLast();
            }
            orders.add(order);
        }
        changing.give(true);
    }

    /** Whether nothing is left to do. */
    boolean idle() {
        synchronized (orders) {
            return orders.isEmpty() && changing.idle() && figuring.idle();
        }
    }

    private Order next() {
        synchronized (orders) {
            return orders.poll();
        }
    }

    private void changes() {
        Bench before = bench;
        String gesture = "";
        for (Order order = next(); order != null; order = next()) {
            try {
                gesture = order.gesture();
                bench = order.change().of(bench);
            } catch (RuntimeException e) {
                refuse(Refusal.of(order, e));
            }
        }
        if (view == null || bench != before) {
            show(gesture);
        }
    }

    private void show(String gesture) {
        boolean same = view != null && bench.model() == view.model();
        ResidualCurves curves = same ? view.curves() : ResidualCurves.of(bench.model().design(), POINTS);
        boolean going = !gesture.isEmpty() && view != null && view.bench().undoable().isPresent()
            && view.bench().undoable().get().gesture().equals(gesture);
        Optional<ResidualCurves> ghost = view == null ? Optional.empty() : same || going ? view.ghost() : Optional.of(view.curves());
        view = new View(++serial, bench, curves, ghost, same ? view.values() : bench.model().values());
        View now = view;
        shown.execute(() -> sink.show(now));
        figuring.give(now);
    }

    /** The figures of a view, told as they come; the rest is left out once a newer view waits. */
    private void figures(View of) {
        Assessment a = Assessor.assess(of.model().design())
            .after(of.model().warnings().stream().map(Problem::toString).toList());
        tell(new Figures(of, a, Optional.empty(), Optional.empty()));
        if (figuring.overtaken()) {
            return;
        }
        Details details = Details.of(a, of.curves().frequencyHz(), POINTS);
        if (figuring.overtaken()) {
            return;
        }
        tell(new Figures(of, a, Optional.empty(), Optional.of(details)));
        if (!figuring.overtaken()) {
            tell(new Figures(of, a, Optional.of(Cures.of(a)), Optional.of(details)));
        }
    }

    private void trouble(RuntimeException e) {
        refuse(Refusal.of(Order.of(b -> b), e));
    }

    private void refuse(Refusal refusal) {
        shown.execute(() -> sink.refused(refusal));
    }

    private void tell(Figures figures) {
        shown.execute(() -> sink.show(figures));
    }

    /** Ends the threads. */
    @Override
    public void close() {
        changing.close();
        figuring.close();
    }
}

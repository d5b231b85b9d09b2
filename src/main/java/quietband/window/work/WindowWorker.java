package quietband.window.work;

import java.util.ArrayDeque;
import java.util.Deque;
import java.util.Optional;
import java.util.concurrent.Executor;
import quietband.model.text.FileProblem;
import quietband.response.ResidualCurves;
import quietband.response.verdict.Assessment;
import quietband.response.verdict.Assessor;
import quietband.tuning.cures.Cures;
import quietband.window.bench.EditOrder;
import quietband.window.bench.EditingBench;
import quietband.window.bench.RefusedEdit;

/**
 * Does the work behind the window on threads of its own: one changes the bench and computes the picture, one computes the
 * figures behind it. Orders are done in their order; only the picture of the last that waits is computed.
 */
public final class WindowWorker implements AutoCloseable {

    /** Points of the curves, beside those of the program's own grid. */
    public static final int POINTS = 400;

    /** Takes what the desk has to show; called through the executor it was given. */
    public interface Sink {

        /** A new picture. */
        void show(DesignView view);

        /** New figures, perhaps of a view that is no longer the latest. */
        void show(BackgroundFigures figures);

        /** An order that was not done. */
        void refused(RefusedEdit refusal);
    }

    private final Executor shown;
    private final Sink sink;
    private final Deque<EditOrder> orders = new ArrayDeque<>();
    private final LatestTask<Boolean> changing;
    private final LatestTask<DesignView> figuring;
    private EditingBench bench;
    private DesignView view;
    private long serial;

    /**
     * Opens a desk; the first picture follows.
     *
     * @param shown runs what is told to the sink, e.g. on the event thread
     */
    public WindowWorker(EditingBench start, Executor shown, Sink sink) {
        this.shown = shown;
        this.sink = sink;
        this.bench = start;
        this.figuring = new LatestTask<>("figures", this::figures, this::trouble);
        this.changing = new LatestTask<>("changes", go -> changes(), this::trouble);
        changing.give(true);
    }

    /** Hands over an order; returns at once. */
    public void submit(EditOrder order) {
        synchronized (orders) {
            EditOrder last = orders.peekLast();
            if (last != null && !order.gesture().isEmpty() && last.gesture().equals(order.gesture())) {
                orders.removeLast();
            }
            orders.add(order);
        }
        changing.give(true);
    }

    /** Whether nothing is left to do. */
    public boolean idle() {
        synchronized (orders) {
            return orders.isEmpty() && changing.idle() && figuring.idle();
        }
    }

    private EditOrder next() {
        synchronized (orders) {
            return orders.poll();
        }
    }

    private void changes() {
        EditingBench before = bench;
        String gesture = "";
        for (EditOrder order = next(); order != null; order = next()) {
            try {
                gesture = order.gesture();
                bench = order.change().of(bench);
            } catch (RuntimeException e) {
                refuse(RefusedEdit.of(order, e));
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
        view = new DesignView(++serial, bench, curves, ghost, same ? view.values() : bench.model().values());
        DesignView now = view;
        shown.execute(() -> sink.show(now));
        figuring.give(now);
    }

    /** The figures of a view, told as they come; the rest is left out once a newer view waits. */
    private void figures(DesignView of) {
        Assessment a = Assessor.assess(of.model().design())
            .after(of.model().warnings().stream().map(FileProblem::toString).toList());
        tell(new BackgroundFigures(of, a, Optional.empty(), Optional.empty()));
        if (figuring.overtaken()) {
            return;
        }
        RoleFigures details = RoleFigures.of(a, of.curves().frequencyHz(), POINTS);
        if (figuring.overtaken()) {
            return;
        }
        tell(new BackgroundFigures(of, a, Optional.empty(), Optional.of(details)));
        if (!figuring.overtaken()) {
            tell(new BackgroundFigures(of, a, Optional.of(Cures.of(a)), Optional.of(details)));
        }
    }

    private void trouble(RuntimeException e) {
        refuse(RefusedEdit.of(EditOrder.of(b -> b), e));
    }

    private void refuse(RefusedEdit refusal) {
        shown.execute(() -> sink.refused(refusal));
    }

    private void tell(BackgroundFigures figures) {
        shown.execute(() -> sink.show(figures));
    }

    /** Ends the threads. */
    @Override
    public void close() {
        changing.close();
        figuring.close();
    }
}

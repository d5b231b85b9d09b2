package quietband.window.work;

import java.util.Optional;
import java.util.concurrent.Executor;
import java.util.concurrent.locks.LockSupport;
import java.util.function.Consumer;
import quietband.spectrum.LogGrid;
import quietband.tolerance.campaign.MonteCarlo;
import quietband.tolerance.campaign.MonteCarloResult;
import quietband.tolerance.influence.ToleranceInfluence;
import quietband.tolerance.judge.MonteCarloPlan;

/**
 * A Monte Carlo beside the window, on one thread so that the window stays live: a few units first, then more and more of the same
 * ones. It starts anew with every new view and stops when it is told to.
 */
public final class BackgroundMonteCarlo implements AutoCloseable {

    /** The seed of all draws: that of {@code tolerance}. */
    static final long SEED = 1;

    private static final long FIRST = 256;
    private static final int POINTS = 120;
    /** Rest after an edit before units are drawn, ns: while a value is dragged they would be out of date before the first is done. */
    private static final long REST = 150_000_000;

    private final Executor shown;
    private final Consumer<MonteCarloProgress> sink;
    private final LatestTask<DesignView> drawing;
    private final long most;
    private volatile boolean going;
    private volatile boolean working;

    /**
     * Prepares.
     *
     * @param most    units drawn in the end
     * @param shown   runs what is told
     * @param trouble told what cannot be drawn
     */
    public BackgroundMonteCarlo(long most, Executor shown, Consumer<MonteCarloProgress> sink, Consumer<RuntimeException> trouble) {
        this.most = most;
        this.shown = shown;
        this.sink = sink;
        this.drawing = new LatestTask<>("draws", this::draw, e -> shown.execute(() -> trouble.accept(e)));
    }

    /** Starts, or goes on with a new view. */
    public void draw(DesignView view, boolean start) {
        going |= start;
        if (going) {
            drawing.give(view);
        }
    }

    /** Stops; what was drawn stays. */
    public void stop() {
        going = false;
    }

    /** Whether it is told to go. */
    public boolean going() {
        return going;
    }

    private boolean over() {
        return !going || drawing.overtaken();
    }

    /** Whether units are being drawn right now. */
    public boolean working() {
        return working;
    }

    private void draw(DesignView view) {
        long start = System.nanoTime() + REST;
        while (!over() && System.nanoTime() < start) {
            LockSupport.parkNanos(REST / 10);
        }
        if (!over()) {
            working = true;
            try {
                drawUnits(view);
            } finally {
                working = false;
            }
        }
    }

    private void drawUnits(DesignView view) {
        MonteCarloPlan plan = new MonteCarloPlan(view.model().design(), SEED);
        double[] f = LogGrid.between(POINTS, view.model().design().requirement().fromHz(),
            view.model().design().requirement().toHz());
        MonteCarlo campaign = new MonteCarlo(plan, f, 1);
        for (long units = FIRST; units <= most && !over(); units *= 4) {
            MonteCarloResult outcome = campaign.run(units, this::over, done -> { });
            if (!outcome.partial()) {
                tell(new MonteCarloProgress(view, plan, outcome, Optional.empty(), most));
                if (units * 4 > most && !over()) {
                    ToleranceInfluence influence = ToleranceInfluence.of(plan, outcome, MonteCarloProgress.CONFIDENCE, 1);
                    tell(new MonteCarloProgress(view, plan, outcome, Optional.of(influence), most));
                }
            }
        }
    }

    private void tell(MonteCarloProgress scattering) {
        shown.execute(() -> sink.accept(scattering));
    }

    /** Ends the thread. */
    @Override
    public void close() {
        stop();
        drawing.close();
    }
}

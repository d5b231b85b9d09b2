package quietband.window.work;

import java.util.LinkedHashMap;
import java.util.Map;
import java.util.concurrent.Executor;
import java.util.function.Consumer;
import quietband.model.edit.ModelFile;
import quietband.response.ResidualCurves;
import quietband.response.verdict.Assessment;
import quietband.response.verdict.Assessor;
import quietband.window.bench.DesignVariant;

/** Works out every variant that is not in view, so that they can be compared at a glance; each text once. */
public final class VariantComparison implements AutoCloseable {

    private final Executor shown;
    private final Consumer<Map<String, Compared>> sink;
    private final LatestTask<DesignView> working;
    private final Map<String, Compared> known = new LinkedHashMap<>();

    /**
     * One variant.
     *
     * @param curves     of it
     * @param assessment of it
     */
    public record Compared(ResidualCurves curves, Assessment assessment) {

        /** Works it out. */
        static Compared of(ModelFile file) {
            return new Compared(ResidualCurves.of(file.design(), WindowWorker.POINTS), Assessor.assess(file.design()));
        }

        /** Least margin of the fullest stack, dB; NaN when no limit is stated. */
        public double marginDb() {
            return assessment.verdict(assessment.fullest()).worst().marginDb();
        }
    }

    public VariantComparison(Executor shown, Consumer<Map<String, Compared>> sink, Consumer<RuntimeException> trouble) {
        this.shown = shown;
        this.sink = sink;
        this.working = new LatestTask<>("comparison", this::work, e -> shown.execute(() -> trouble.accept(e)));
    }

    /** Compares with the variants of a view. */
    public void of(DesignView view) {
        working.give(view);
    }

    public boolean idle() {
        return working.idle();
    }

    private void work(DesignView view) {
        Map<String, Compared> all = new LinkedHashMap<>();
        for (int i = 0; i < view.bench().variants().size(); i++) {
            DesignVariant v = view.bench().variants().get(i);
            if (i != view.bench().current()) {
                all.put(v.name(), known.computeIfAbsent(v.path() + "\n" + v.text(), text -> Compared.of(v.model())));
            }
        }
        known.values().retainAll(all.values());
        shown.execute(() -> sink.accept(all));
    }

    /** Ends the thread. */
    @Override
    public void close() {
        working.close();
    }
}

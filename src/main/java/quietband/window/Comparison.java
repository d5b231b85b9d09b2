package quietband.window;

import java.util.LinkedHashMap;
import java.util.Map;
import java.util.concurrent.Executor;
import java.util.function.Consumer;
import quietband.model.ModelFile;
import quietband.response.Assessment;
import quietband.response.Assessor;
import quietband.response.ResidualCurves;

/** Works out every variant that is not in view, so that they can be compared at a glance; each text once. */
final class Comparison implements AutoCloseable {

    private final Executor shown;
    private final Consumer<Map<String, Compared>> sink;
    private final Latest<View> working;
    private final Map<String, Compared> known = new LinkedHashMap<>();

    /**
     * One variant.
     *
     * @param curves     of it
     * @param assessment of it
     */
    record Compared(ResidualCurves curves, Assessment assessment) {

        /** Works it out. */
        static Compared of(ModelFile file) {
            return new Compared(ResidualCurves.of(file.design(), Desk.POINTS), Assessor.assess(file.design()));
        }

        /** Least margin of the fullest stack, dB; NaN when no limit is asked. */
        double marginDb() {
            return assessment.verdict(assessment.fullest()).worst().marginDb();
        }
    }

    Comparison(Executor shown, Consumer<Map<String, Compared>> sink, Consumer<RuntimeException> trouble) {
        this.shown = shown;
        this.sink = sink;
        this.working = new Latest<>("comparison", this::work, e -> shown.execute(() -> trouble.accept(e)));
    }

    /** Compares with the variants of a view. */
    void of(View view) {
        working.give(view);
    }

    boolean idle() {
        return working.idle();
    }

    private void work(View view) {
        Map<String, Compared> all = new LinkedHashMap<>();
        for (int i = 0; i < view.bench().variants().size(); i++) {
            Variant v = view.bench().variants().get(i);
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

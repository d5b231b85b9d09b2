package quietband.window.work;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import java.util.concurrent.CopyOnWriteArrayList;
import java.util.concurrent.locks.LockSupport;
import java.util.function.BooleanSupplier;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.Test;
import quietband.model.edit.ModelFile;
import quietband.response.verdict.Assessment;
import quietband.response.verdict.Assessor;
import quietband.window.bench.EditOrder;
import quietband.window.bench.EditingBench;
import quietband.window.bench.RefusedEdit;

/** The work behind the window: in order, latest wins, refusals told. */
class WindowWorkerTest {

    private static final String RATE = "platform.springs.corners.stiffness.x";

    private final List<DesignView> views = new CopyOnWriteArrayList<>();
    private final List<BackgroundFigures> figures = new CopyOnWriteArrayList<>();
    private final List<RefusedEdit> refusals = new CopyOnWriteArrayList<>();
    private final WindowWorker desk = new WindowWorker(EditingBench.of(ModelFile.read(Path.of("models/ridge-relay.yaml"))),
        Runnable::run, new WindowWorker.Sink() {
        @Override
        public void show(DesignView view) {
            views.add(view);
        }

        @Override
        public void show(BackgroundFigures f) {
            figures.add(f);
        }

        @Override
        public void refused(RefusedEdit refusal) {
            refusals.add(refusal);
        }
    });

    @AfterEach
    void close() {
        desk.close();
    }

    private void settle() {
        await(() -> desk.idle() && !views.isEmpty());
    }

    private static void await(BooleanSupplier what) {
        long end = System.nanoTime() + 20_000_000_000L;
        while (!what.getAsBoolean()) {
            assertThat(System.nanoTime()).as("in time").isLessThan(end);
            LockSupport.parkNanos(2_000_000);
        }
    }

    private static EditOrder set(String value, String gesture) {
        return EditOrder.set("rate " + value, gesture, RATE, value, value);
    }

    @Test
    void a_burst_of_orders_is_done_in_order_and_only_few_pictures_are_computed() {
        settle();
        for (int i = 0; i < 200; i++) {
            desk.submit(set(String.format(Locale.ROOT, "%.2f N/mm", 10 + i * 0.01), "drag"));
        }
        settle();
        DesignView last = views.get(views.size() - 1);
        assertThat(last.model().design().quantities().valueOf(RATE)).isEqualTo(11_990);
        assertThat(last.bench().depth()).as("one gesture is one step").isEqualTo(1);
        assertThat(views.size()).as("what was overtaken was left out").isLessThan(60);
        assertThat(last.ghost().orElseThrow()).as("the ghost is the picture before the gesture").isSameAs(views.get(0).curves());
    }

    @Test
    void a_bad_value_is_told_with_its_field_and_the_last_good_result_stays() {
        settle();
        desk.submit(set("9 N/kg", ""));
        await(() -> !refusals.isEmpty());
        settle();
        assertThat(refusals.get(0).about()).isEqualTo(RATE);
        assertThat(refusals.get(0).why()).contains("is an acceleration").contains("expected a stiffness");
        assertThat(views).hasSize(1);
        desk.submit(EditOrder.set("all", "", "platform.springs.corners.stiffness", "0 N/mm", "0 N/mm"));
        await(() -> refusals.size() > 1);
        assertThat(refusals.get(1).why()).isNotEmpty().doesNotContain("defect");
    }

    @Test
    void the_figures_are_those_of_an_assessment_of_the_same_text() {
        desk.submit(set("9 N/mm", ""));
        settle();
        await(() -> figures.stream().anyMatch(f -> f.gaps().isPresent() && f.of(views.get(views.size() - 1))));
        Assessment shown = figures.get(figures.size() - 1).assessment();
        String text = views.get(views.size() - 1).model().text();
        Assessment alone = Assessor.assess(ModelFile.parse(Path.of("models/ridge-relay.yaml"), text).design());
        assertThat(shown.verdict(shown.fullest()).worst()).isEqualTo(alone.verdict(alone.fullest()).worst());
        assertThat(shown.requirements()).isEqualTo(alone.requirements());
        assertThat(shown.travel()).isEqualTo(alone.travel());
    }
}

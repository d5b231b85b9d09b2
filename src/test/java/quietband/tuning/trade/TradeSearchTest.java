package quietband.tuning.trade;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.stream.IntStream;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import quietband.model.Design;
import quietband.model.Stack;
import quietband.model.edit.ModelFile;
import quietband.model.quantity.NumberSlot;
import quietband.response.verdict.DesignMargins;
import quietband.spectrum.LogGrid;
import quietband.tuning.cures.GapMargin;

/** The search of the command trade against a plain grid. */
class TradeSearchTest {

    /** The main model with springs 40 % soft, its sensor 10 mm off and no filter. */
    private static Design bad() {
        Design d = ModelFile.read(Path.of("models/ridge-relay.yaml")).without("cancellation.path.taps").design();
        double[] v = d.quantities().values();
        for (int i = 0; i < v.length; i++) {
            NumberSlot s = d.quantities().slot(i);
            v[i] *= s.quantity().equals("platform.springs.stiffness") ? 0.6 : 1;
            v[i] += s.path().equals("cancellation.sensor.position.x") ? 10e-3 : 0;
        }
        return d.with(d.quantities().with(v));
    }

    @ParameterizedTest
    @CsvSource({
        "platform.springs.corners.stiffness, 2e3, 24e3, platform.springs.corners.damping, 1, 30",
        "cancellation.sensor.position.x, -15e-3, 15e-3, cancellation.sensor.position.z, -10e-3, 10e-3",
        "platform.springs.corners.stiffness, 4e3, 24e3, cancellation.sensor.position.x, -15e-3, 15e-3"})
    void from_a_bad_start_it_comes_within_03_dB_of_the_best_of_41_by_41_points_and_breaks_no_limit(String a, double a0,
    double a1, String b,
                                                                                                   double b0, double b1) {
        Design start = bad();
        List<VariedQuantity> axes = List.of(new VariedQuantity(start.quantities().find(a), a0, a1, 41),
            new VariedQuantity(start.quantities()
            .find(b), b0, b1, 41));
        TradeSearch found = TradeSearch.run(start, axes, 1, 2, Optional.empty(), judged -> { });
        double bar = found.after().verdict(found.after().fullest()).worst().marginDb() + 0.3;
        // judged in full, not by the fast verdict
        assertThat(found.after().requirementMet()).contains(true);
        double best = IntStream.range(0, 41 * 41).parallel().mapToObj(i -> TradeSweep.changed(start, axes,
            new double[] {axes.get(0).value(i % 41), axes.get(1).value(i / 41)})).filter(d -> atSome(d) > bar)
            .map(DesignMargins::of)
            .filter(q -> q.worstOver() <= 0).mapToDouble(DesignMargins::goal).max().orElse(Double.NEGATIVE_INFINITY);
        assertThat(best).isLessThan(bar);
    }

    /** The margin at some frequencies only, dB: never less than that of the whole band. */
    private static double atSome(Design d) {
        GapMargin.Over over = new GapMargin.Over(d, Stack.fullest(d));
        double most = -300;
        for (double f : LogGrid.between(25, 10, 2000)) {
            most = Math.max(most, over.at(f));
        }
        return -most;
    }
}

package quietband.motion.run;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import org.junit.jupiter.api.Test;
import quietband.model.Axis;
import quietband.model.Design;
import quietband.response.verdict.Assessor;
import quietband.response.verdict.StackVerdict;
import quietband.spectrum.LogGrid;

/** A sweep against an assessment. */
class SineSweepTest {

    private static SineSweep.Result sweep(Design d, double[] f, double peakG, boolean linear) {
        return SineSweep.run(d, new SineSweep.Request(Axis.ALL, f, peakG, linear, Double.POSITIVE_INFINITY, 2), share -> { });
    }

    @Test
    void the_main_model_s_residual_and_coverage_are_those_of_the_frequency_domain() {
        Design d = Examples.shipped("ridge-relay.yaml");
        SineSweep.Result r = sweep(d, LogGrid.between(100, 10, 2000), 1, true);
        for (SineSweep.Point p : r.points()) {
            for (Axis a : Axis.ALL) {
                double[][] y = Examples.predicted(d, a, p.frequencyHz());
                for (int s = 0; s < y.length; s++) {
                    double db = 20 * Math.log10(p.residual()[s][a.ordinal()] / Math.hypot(y[s][0], y[s][1]));
                    // 0.1 dB is asked; some 1e-3 come out even where the residual is deep
                    assertThat(db).as(r.stacks().get(s) + " " + a + " " + p.frequencyHz()).isBetween(-0.01, 0.01);
                }
            }
        }
        List<StackVerdict> asked = Assessor.assess(d).verdicts();
        for (int s = 0; s < asked.size(); s++) {
            List<double[]> edges = r.bands().get(s).intervals();
            assertThat(edges).hasSameSizeAs(asked.get(s).intervals());
            for (int i = 0; i < edges.size(); i++) {
                for (int e = 0; e < 2; e++) {
                    // 1 % is asked; edges are closed in to 1e-5
                    assertThat(edges.get(i)[e]).isCloseTo(asked.get(s).intervals().get(i)[e],
                        org.assertj.core.data.Percentage.withPercentage(0.05));
                }
            }
        }
    }

    @Test
    void without_linear_a_clipped_sensor_takes_coverage_away() {
        Design d = Examples.parse(Examples.oscillator("x"),
            "cancellation: {sensor: {place: housing, range: 2 g}, error: {gain: 1 %}}",
            "requirement: {band: {from: 100 Hz, to: 200 Hz}, residual: [{frequency: 100 Hz, limit: 0.05 ppb/g}]}");
        double[] f = {120, 150};
        assertThat(sweep(d, f, 1, false).bands().get(1).share()).isEqualTo(1);
        assertThat(sweep(d, f, 4, false).bands().get(1).share()).isZero();
    }
}

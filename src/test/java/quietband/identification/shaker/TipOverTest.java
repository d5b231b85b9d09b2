package quietband.identification.shaker;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.List;
import org.hipparchus.stat.regression.OLSMultipleLinearRegression;
import org.junit.jupiter.api.Test;
import quietband.model.Axis;

/** Sensitivity from turning an oscillator over in gravity: half the difference up and down, whatever the drift. */
class TipOverTest {

    private static final double CARRIER = 10e6;

    private static ShakerReading reading(int sense, double hz, double time) {
        return new ShakerReading("A", 1, Axis.Z, Double.NaN, Double.NaN, Double.NaN, Double.NaN, Double.NaN, Double.NaN, new double[3],
            false, sense, hz, time);
    }

    // 2 g between the two: G = (f_up - f_down)/(2 f0); 24 mHz at 10 MHz are 1.2 ppb/g
    @Test
    void two_readings_give_half_the_difference_and_no_uncertainty() {
        TipOver tip = TipOver.of(List.of(reading(1, CARRIER + 0.013, Double.NaN), reading(-1, CARRIER - 0.011, Double.NaN)), CARRIER);
        assertThat(tip.perG()).isCloseTo(1.2e-9, within(1e-15));
        assertThat(tip.readings()).isEqualTo(2);
        assertThat(tip.sigmaPerG()).isNaN();
        assertThat(tip.halfPerG()).isNaN();
        // with the axis down it goes up: a negative component
        assertThat(TipOver.of(List.of(reading(-1, CARRIER + 0.013, 0), reading(1, CARRIER - 0.011, 5)), CARRIER).perG())
            .isCloseTo(-1.2e-9, within(1e-15));
    }

    @Test
    void one_sense_alone_says_nothing() {
        assertThat(TipOver.of(List.of(reading(1, CARRIER, 0), reading(1, CARRIER + 1, 5)), CARRIER)).isNull();
        assertThat(TipOver.of(List.of(reading(-1, CARRIER, 0)), CARRIER)).isNull();
    }

    // a drift of 3e-12/s over readings up, down, up, down: without it the pairs would be off by 60 s x 3e-12
    @Test
    void a_steady_drift_is_taken_out_and_told() {
        List<ShakerReading> list = new ArrayList<>();
        for (int i = 0; i < 6; i++) {
            double t = 60 * i;
            list.add(reading(i % 2 == 0 ? 1 : -1, CARRIER * (1 + 3e-12 * t + (i % 2 == 0 ? 0.8e-9 : -0.8e-9)), t));
        }
        TipOver tip = TipOver.of(list, CARRIER);
        // a double holds 10 MHz to 2e-9 Hz, 2e-16 of it
        assertThat(tip.perG()).isCloseTo(0.8e-9, within(1e-15));
        assertThat(tip.driftPerS()).isCloseTo(3e-12, within(1e-17));
    }

    // second road: an ordinary regression of a library, with noise; half width is Student's t of 4 spare readings, 2.7764
    @Test
    void uncertainty_is_that_of_an_ordinary_regression() {
        double[] noise = {1.1e-11, -0.4e-11, 0.9e-11, 0.2e-11, -1.3e-11, -0.6e-11, 0.5e-11};
        List<ShakerReading> list = new ArrayList<>();
        double[] y = new double[7];
        double[][] x = new double[7][];
        for (int i = 0; i < 7; i++) {
            int sense = i % 3 == 0 ? 1 : -1;
            y[i] = 0.5e-9 * sense + 2e-12 * 40 * i + noise[i];
            x[i] = new double[] {sense, 40.0 * i};
            list.add(reading(sense, CARRIER * (1 + y[i]), 40 * i));
        }
        OLSMultipleLinearRegression regression = new OLSMultipleLinearRegression();
        regression.newSampleData(y, x);
        TipOver tip = TipOver.of(list, CARRIER);
        assertThat(tip.perG()).isCloseTo(regression.estimateRegressionParameters()[1], within(1e-14));
        assertThat(tip.driftPerS()).isCloseTo(regression.estimateRegressionParameters()[2], within(1e-16));
        double sigma = regression.estimateRegressionParametersStandardErrors()[1];
        assertThat(tip.sigmaPerG()).isCloseTo(sigma, within(1e-4 * sigma));
        assertThat(tip.halfPerG() / tip.sigmaPerG()).isCloseTo(2.7764, within(5e-5));
    }
}

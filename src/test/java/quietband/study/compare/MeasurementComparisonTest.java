package quietband.study.compare;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Map;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import quietband.identification.MeasuredResponse;
import quietband.model.Axis;
import quietband.model.Stack;
import quietband.study.LightPlatform;

/** Readings that are known factors off the transmissibility of one lightly damped oscillator. */
class MeasurementComparisonTest {

    private static final double[] FREQUENCY = {20, 51, 90, 300};
    private static final double[] FACTOR = {1.04, 1.15, 0.5, 1};

    private static MeasurementComparison compared(Optional<double[]> error) {
        double[] magnitude = new double[4];
        for (int i = 0; i < 4; i++) {
            magnitude[i] = FACTOR[i] * LightPlatform.ratio(FREQUENCY[i]);
        }
        MeasuredResponse measured = new MeasuredResponse(MeasuredResponse.Kind.TRANSMISSIBILITY, FREQUENCY,
            Map.of(Axis.X, new MeasuredResponse.Curve(magnitude, Optional.empty(), error)));
        return MeasurementComparison.of(LightPlatform.with("").design(), Stack.ISOLATED, "m.csv", measured);
    }

    // of the reading, 1.04 is off by 3.8 %, 1.15 by 13 %, 0.5 by 100 %, 1 by nothing: with 10 % two are within, within twice it three
    @Test
    void deviations_are_a_root_mean_square_in_decibels_and_counted_by_their_uncertainty() {
        MeasurementComparison c = compared(Optional.of(new double[] {0.1, 0.1, 0.1, 0.1}));
        double squares = 0;
        for (double factor : FACTOR) {
            squares += Math.pow(20 * Math.log10(factor), 2);
        }
        // closed forms: rounding alone
        assertThat(c.rmsDb()).containsOnlyKeys(Axis.X);
        assertThat(c.rmsDb().get(Axis.X)).isCloseTo(Math.sqrt(squares / 4), within(1e-8));
        assertThat(c.within()).isEqualTo(2);
        assertThat(c.withinTwice()).isEqualTo(3);
        assertThat(c.judged()).isTrue();
        assertThat(c.sensitivity()).isFalse();
    }

    @Test
    void without_an_uncertainty_nothing_is_judged() {
        MeasurementComparison c = compared(Optional.empty());
        assertThat(c.judged()).isFalse();
        assertThat(c.within()).isZero();
        assertThat(c.off()).isEmpty();
    }
}

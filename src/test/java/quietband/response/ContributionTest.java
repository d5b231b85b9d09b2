package quietband.response;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.EnumSet;
import java.util.Set;
import org.hipparchus.complex.Complex;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import quietband.model.Stack;

/** What each cause leaves of the residual, from its own short formula: with the others ideal only a difference of two terms is left. */
class ContributionTest {

    private static final double[] FREQUENCIES = {7, 61, 140, 430, 2100};

    // rounding, as for the whole residual: 1e-9 of the sensitivity
    @ParameterizedTest
    @EnumSource(Cause.class)
    void a_cause_alone_is_the_difference_of_what_the_resonator_feels_and_what_is_taken_off(Cause cause) {
        for (int seed : new int[] {21, 22, 23, 24}) {
            IndependentResidual other = new IndependentResidual(new RandomDesign(seed));
            ResidualResponse response = new ResidualResponse(Models.of(other.d.text()));
            for (double f : FREQUENCIES) {
                Complex[][] a = other.crystal(f);
                response.at(f);
                double[] alone = Contribution.of(response, Stack.COMBINED, cause).alone();
                for (int j = 0; j < 3; j++) {
                    Complex sum = Complex.ZERO;
                    for (int i = 0; i < 3; i++) {
                        sum = sum.add(left(other, cause, a, i, j, f));
                    }
                    assertThat(alone[j]).as("seed %d, %s Hz, axis %d", seed, f, j)
                        .isCloseTo(sum.norm(), within(1e-9 * other.scale()));
                }
            }
        }
    }

    /** One sensor's part of the residual of a cause alone. */
    private static Complex left(IndependentResidual o, Cause cause, Complex[][] a, int i, int j, double f) {
        Complex felt = a[i][j].multiply(o.g[i]);
        double w = 2 * Math.PI * f;
        return switch (cause) {
            case GAIN -> felt.multiply(-o.d.gain[i]);
            case PHASE -> felt.multiply(Complex.ONE.subtract(IndependentResidual.polar(1, o.d.phase[i])));
            case DELAY -> felt.multiply(Complex.ONE.subtract(IndependentResidual.polar(1, -w * o.d.delay[i])));
            case PATH -> felt.multiply(Complex.ONE.subtract(o.nominal(i, f)));
            case CROSS_AXIS -> felt.subtract(crossed(o, a, i, j).multiply(o.g[i]));
            case SENSOR_PLACE -> felt.subtract(o.sensor(f)[i][j].multiply(o.g[i]));
            case SUPPORT_RESONANCE -> felt.multiply(o.support(i, f).subtract(1));
            case WEIGHTS -> a[i][j].multiply(o.g[i] - (o.d.weights == null ? o.g : o.d.weights)[i]);
        };
    }

    private static Complex crossed(IndependentResidual o, Complex[][] a, int i, int j) {
        return a[0][j].multiply(o.d.crossAxis[3 * i]).add(a[1][j].multiply(o.d.crossAxis[3 * i + 1]))
            .add(a[2][j].multiply(o.d.crossAxis[3 * i + 2]));
    }

    @ParameterizedTest
    @EnumSource(Cause.class)
    void without_a_cause_the_residual_has_its_ideal_in_place_of_it(Cause cause) {
        Set<Cause> real = EnumSet.complementOf(EnumSet.of(cause));
        for (int seed : new int[] {31, 32, 33}) {
            IndependentResidual other = new IndependentResidual(new RandomDesign(seed));
            ResidualResponse response = new ResidualResponse(Models.of(other.d.text()));
            for (double f : FREQUENCIES) {
                response.at(f);
                double[] without = Contribution.of(response, Stack.COMBINED, cause).without();
                for (int j = 0; j < 3; j++) {
                    assertThat(without[j]).as("seed %d, %s Hz, axis %d", seed, f, j)
                        .isCloseTo(residual(other, real, j, f).norm(), within(1e-9 * other.scale()));
                }
            }
        }
    }

    private static Complex residual(IndependentResidual o, Set<Cause> real, int j, double f) {
        Complex[][] a = o.crystal(f);
        Complex[][] s = real.contains(Cause.SENSOR_PLACE) ? o.sensor(f) : a;
        Complex y = Complex.ZERO;
        for (int i = 0; i < 3; i++) {
            Complex h = real.contains(Cause.SUPPORT_RESONANCE) ? o.support(i, f) : Complex.ONE;
            Complex p = real.contains(Cause.PATH) ? o.nominal(i, f) : Complex.ONE;
            double gain = real.contains(Cause.GAIN) ? 1 + o.d.gain[i] : 1;
            double angle = (real.contains(Cause.PHASE) ? o.d.phase[i] : 0)
                - (real.contains(Cause.DELAY) ? 2 * Math.PI * f * o.d.delay[i] : 0);
            Complex read = real.contains(Cause.CROSS_AXIS) ? crossed(o, s, i, j) : s[i][j];
            double weight = (real.contains(Cause.WEIGHTS) && o.d.weights != null ? o.d.weights : o.g)[i];
            y = y.add(a[i][j].multiply(h).multiply(o.g[i]))
                .subtract(read.multiply(p).multiply(IndependentResidual.polar(gain, angle)).multiply(weight));
        }
        return y;
    }
}

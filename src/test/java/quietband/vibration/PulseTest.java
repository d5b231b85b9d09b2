package quietband.vibration;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import quietband.model.Vibration.Shock;
import quietband.model.Vibration.ShockShape;

class PulseTest {

    @ParameterizedTest
    @EnumSource(ShockShape.class)
    void pieces_values_and_velocity_change_agree(ShockShape shape) {
        Pulse p = new Pulse(new Shock(shape, 30, 0.011));
        int n = 110_000;
        double sum = 0;
        double most = 0;
        for (int i = 0; i < n; i++) {
            double a = p.at((i + 0.5) * 0.011 / n);
            sum += a * 0.011 / n;
            most = Math.max(most, a);
        }
        // midpoint rule: second order in 1e-5
        assertThat(sum).isCloseTo(p.velocityChange(), within(1e-8));
        assertThat(most).isCloseTo(30, within(1e-3));
        assertThat(p.at(-1e-9)).isZero();
        assertThat(p.at(0.0111)).isZero();
        if (shape == ShockShape.SAWTOOTH) {
            assertThat(p.at(0.011 * (1 - 1e-9))).as("terminal peak").isCloseTo(30, within(1e-6));
        }
    }
}

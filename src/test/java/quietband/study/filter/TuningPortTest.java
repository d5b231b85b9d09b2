package quietband.study.filter;

import static org.assertj.core.api.Assertions.assertThat;

import org.assertj.core.data.Percentage;
import org.junit.jupiter.api.Test;
import quietband.study.LightPlatform;

/** Integrated phase noise of the port against closed forms. */
class TuningPortTest {

    // white noise e at a port of slope s: L = (f0/f)^2 (s e)^2/2, phase sqrt(2 int L df) = f0 s e sqrt(1/from - 1/to);
    // a sensor's n in g/rtHz through the weight 2 ppb/g is the same with n G for s e
    @Test
    void white_noise_has_the_phase_of_its_integral() {
        TuningPort port = TuningPort.of(LightPlatform.with("cancellation: {sensor: {place: housing, noise: {x: 30 ug/rtHz}}, "
            + "tuning: {slope: 4 ppb/V, noise: 50 nV/rtHz}}\nrequirement: {band: {from: 20 Hz, to: 1 kHz}}\n").design());
        double band = 10e6 * Math.sqrt(1.0 / 20 - 1.0 / 1000);
        // straight lines between 160 points overstate f^-2 by h^2/6 = 1e-4 with h = ln 50/159, its root by half of that
        assertThat(port.referenceRad()).isCloseTo(band * 4e-9 * 50e-9, Percentage.withPercentage(0.02));
        assertThat(port.sensorRad()).isCloseTo(band * 2e-9 * 30e-6, Percentage.withPercentage(0.02));
        assertThat(port.quantiserRad()).isZero();
        assertThat(port.curvatureRad()).isZero();
    }
}

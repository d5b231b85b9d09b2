package quietband.response.travel;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;

/** Peaks from mean squares put in by hand; rounding. */
class RandomMotionTest {

    private static final double G0 = 9.80665;

    private static RandomMotion motion(boolean together) {
        RandomMotion motion = new RandomMotion(together);
        // 9 g^2 on x and 16 g^2 on y, each moving the first coordinate by 1e-5 m per m/s^2, a quarter turn late on y
        motion.move(0, 9, new double[] {1e-5, 0, 0, 0, 0, 0}, new double[6]);
        motion.move(1, 16, new double[6], new double[] {-1e-5, 0, 0, 0, 0, 0});
        motion.swing(2, 0, 9);
        motion.swing(2, 1, 7);
        motion.swing(2, 1, 9);
        return motion;
    }

    // Result:  sigma 3 and 4 g, 5 g together; three sigma of 1e-5 s^2 x g
    @Test
    void three_sigma_is_that_of_the_worst_drive_or_of_all() {
        double[] rows = {7, 1, 0, 0, 0, 0, 0};
        assertThat(motion(false).peak(rows, 1)).isCloseTo(12e-5 * G0, within(1e-17));
        assertThat(motion(true).peak(rows, 1)).isCloseTo(15e-5 * G0, within(1e-17));
    }

    // Result:  tones of 2 g on x, 0.5 g on y and 1 g on z: 3 x 4 + 0.5, and 3 x 5 + 3.5 together
    @Test
    void tones_add_their_peaks_to_three_sigma() {
        double[] tones = {0, 0, 0, 0, 0, 0, 2, 0.5, 1, 0, 0, 0};
        assertThat(motion(false).swingPeak(2, tones)).isCloseTo(12.5, within(1e-12));
        assertThat(motion(true).swingPeak(2, tones)).isCloseTo(18.5, within(1e-12));
        assertThat(motion(false).swingPeak(1, tones)).isZero();
    }
}

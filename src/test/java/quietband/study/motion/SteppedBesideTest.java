package quietband.study.motion;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import org.junit.jupiter.api.Test;
import quietband.model.Axis;
import quietband.model.Design;
import quietband.motion.run.Dwell;
import quietband.motion.run.SineSweep;
import quietband.study.LightPlatform;

/** Dwells and sweeps of a lightly damped platform beside the transmissibility of one oscillator. */
class SteppedBesideTest {

    private static final double PEAK_G = 0.5;

    @Test
    void a_dwell_has_the_size_phase_and_line_of_one_oscillator() {
        Design design = LightPlatform.with("").design();
        DwellStudy study = DwellStudy.of(design, new Dwell.Request(Axis.X, 80, PEAK_G, 0, true));
        double[] a = LightPlatform.transmissibility(80);
        double perG = LightPlatform.SENSITIVITY * Math.hypot(a[0], a[1]);
        assertThat(study.predicted()).hasSize(2);
        // closed forms: rounding alone
        assertThat(study.predicted().get(0).perG()).isCloseTo(LightPlatform.SENSITIVITY, within(1e-9 * perG));
        assertThat(study.predicted().get(1).perG()).isCloseTo(perG, within(1e-9 * perG));
        double turn = study.predicted().get(1).phaseDeg() - study.predicted().get(0).phaseDeg();
        // above its resonance the platform lags by nearly half a turn
        assertThat(Math.IEEEremainder(turn - Math.toDegrees(Math.atan2(a[1], a[0])), 360)).isCloseTo(0, within(1e-6));
        // stepping is held to some 1e-3 dB elsewhere; a factor sqrt 2 would be 3 dB
        double stepped = study.traced().result().re()[1];
        double size = Math.hypot(stepped, study.traced().result().im()[1]);
        assertThat(20 * Math.log10(size / perG)).isBetween(-0.01, 0.01);
        double bare = Math.hypot(study.traced().result().re()[0], study.traced().result().im()[0]);
        double worst = Math.max(Math.abs(20 * Math.log10(size / perG)), Math.abs(20 * Math.log10(bare / LightPlatform.SENSITIVITY)));
        // the same difference by the closed form: sizes agree to rounding, 1e-9 dB, and the road through time is 2e-7 dB off
        assertThat(study.worstDb()).isCloseTo(worst, within(1e-9));
        assertThat(study.lines()).extracting(DwellStudy.Line::name).startsWith("mean", "harmonic 1", "harmonic 2").hasSize(8);
        assertThat(study.lines()).extracting(DwellStudy.Line::frequencyHz).startsWith(0.0, 80.0, 160.0);
        // peak values, of a trace of whole periods: 1 % covers what the settling leaves
        assertThat(study.lines().get(1).peak().get(1)).isCloseTo(perG * PEAK_G, within(0.01 * perG * PEAK_G));
        assertThat(study.lines().get(2).peak().get(1)).isLessThan(0.01 * perG * PEAK_G);
    }

    @Test
    void a_sweep_s_worst_difference_is_the_one_to_the_closed_form() {
        Design design = LightPlatform.with("").design();
        SweepStudy study = SweepStudy.of(design, new SineSweep.Request(List.of(Axis.X), new double[] {30, 51, 120}, PEAK_G, true,
            Double.POSITIVE_INFINITY, 1), share -> { });
        double worst = 0;
        for (SineSweep.Point p : study.result().points()) {
            double isolated = LightPlatform.SENSITIVITY * LightPlatform.ratio(p.frequencyHz());
            worst = Math.max(worst, Math.abs(20 * Math.log10(p.residual()[0][0] / LightPlatform.SENSITIVITY)));
            worst = Math.max(worst, Math.abs(20 * Math.log10(p.residual()[1][0] / isolated)));
        }
        // sizes agree to rounding, 1e-9 dB; the road through time stays near: 0.1 dB is asked of a sweep
        assertThat(study.worstDb()).isCloseTo(worst, within(1e-9)).isLessThan(0.1).isPositive();
        assertThat(study.result().points()).hasSize(3);
    }
}

package quietband.response.travel;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import org.junit.jupiter.api.Test;
import quietband.model.Axis;
import quietband.model.Design;
import quietband.platform.Assembly;
import quietband.response.FrequencyIntegrals;
import quietband.response.GridSeeds;
import quietband.response.Models;
import quietband.response.ResidualResponse;
import quietband.response.limits.DwellLimits;
import quietband.response.verdict.Assessor;

/** When a seated spring goes slack, and how hard a design may be shaken, from the motion of one axis. */
class SpringSlackTest {

    private static final double G0 = 9.80665;
    private static final double RATE = 15e3;
    private static final double OMEGA = Math.sqrt(4 * RATE / 0.21);

    private static Design design(String more, String vibration) {
        return Models.of(Models.oscillator("") + Models.platform("stiffness: 15 N/mm, damping: 3 N*s/m" + more,
            ", clearance: {x: 1 mm, y: 1 mm, z: 0.6 mm}") + "cancellation: {sensor: {range: {x: 30 g, y: 30 g, z: 7 g}}, "
            + "tuning: {slope: -6 ppb/V, range: 4 V}}\nvibration: {" + vibration + "}\n");
    }

    private static List<SpringSlack> slack(Design d) {
        Assembly assembly = new Assembly(d.platform().orElseThrow());
        FrequencyIntegrals.Part part = RandomMotion.part(d, assembly, new ResidualResponse(d, assembly));
        return SpringSlack.of(d, assembly, new RandomMotion(d.vibration().together(),
            FrequencyIntegrals.of(new GridSeeds(d, assembly), part)[0]));
    }

    // Result:  2 g on a body held by 4 k moves it m 2 g0/(4 k); a preload of 1.5 N is used up after 1.5/k
    @Test
    void steady_extension_over_preload_says_at_what_share_of_the_vibration_a_spring_lets_go() {
        Design d = design(", ends: compression_only, preload: 1.5 N", "sustained: 2 g, axes: [z]");
        List<SpringSlack> all = slack(d);
        assertThat(all).hasSize(4);
        double extension = 2 * G0 / (OMEGA * OMEGA);
        for (SpringSlack s : all) {
            assertThat(s.extension()).isCloseTo(extension, within(1e-9 * extension));
            assertThat(s.free()).isEqualTo(1.5 / RATE);
        }
        // 0.1 mm of free way in 0.0686 mm: nothing is said; with a third of the preload it lets go at 0.5/k over the extension
        assertThat(all.get(0).warning()).isEmpty();
        String warning = slack(design(", ends: compression_only, preload: 0.5 N", "sustained: 2 g, axes: [z]")).get(2).warning();
        assertThat(warning).contains("four[3]").contains("0.486 of the stated").contains("0.0686 mm").contains("0.0333 mm");
        assertThat(Assessor.assess(design(", ends: compression_only, preload: 0.5 N", "sustained: 2 g, axes: [z]")).warnings())
            .filteredOn(w -> w.contains("slack")).hasSize(4);
    }

    // System:  Miles' displacement, three sigma, added to the steady one; only motion along the spring's own z counts
    @Test
    void random_extension_adds_three_sigma_along_the_springs_own_axis() {
        String white = "random: {z: {points: [{frequency: 0.05 Hz, density: 0.004 g^2/Hz}, "
            + "{frequency: 100 kHz, density: 0.004 g^2/Hz}]}}";
        double z = 4 * 3.0 / (2 * 0.21 * OMEGA);
        double fn = OMEGA / (2 * Math.PI);
        double sigma = Math.sqrt(Math.PI / 2 * fn / (2 * z) * 0.004) * G0 / (OMEGA * OMEGA);
        // 0.05 Hz instead of 0 leaves out 4 z/pi f1/fn of the square
        String upright = ", ends: compression_only, preload: 9 N";
        assertThat(slack(design(upright, white)).get(0).extension()).isCloseTo(3 * sigma, within(1e-4 * sigma));
        // laid over by 90 degrees about x its z axis lies along y, which does not move
        String laid = ", orientation: {axis: x, angle: 90 deg}";
        assertThat(slack(design(upright + laid, white)).get(0).extension()).isLessThan(1e-6 * sigma);
    }

    // Result:  per g of a sine along z the body moves g0/w^2 |r^2/(1 - r^2 + 2 j z r)|/r^2 and carries |A| of it to the sensor
    @Test
    void a_sine_uses_up_clearance_preload_and_ranges_at_their_closed_forms() {
        Design d = design(", ends: compression_only, preload: 5 N", "sustained: 0 g");
        DwellLimits limits = new DwellLimits(d);
        double z = 4 * 3.0 / (2 * 0.21 * OMEGA);
        for (double r : new double[] {0.2, 0.97, 1, 1.4, 6}) {
            DwellLimits.Limit limit = limits.at(r * OMEGA / (2 * Math.PI), Axis.Z);
            double below = Math.hypot(1 - r * r, 2 * z * r);
            double relative = G0 / (OMEGA * OMEGA) / below;
            double absolute = Math.hypot(1, 2 * z * r) / below;
            assertThat(limit.travel()).isCloseTo(0.6e-3 / relative, within(1e-9 * limit.travel()));
            assertThat(limit.slack()).isCloseTo(5 / RATE / relative, within(1e-9 * limit.slack()));
            assertThat(limit.sensor()).isCloseTo(7 / absolute, within(1e-9 * limit.sensor()));
            // 1.2 ppb/g along z over a slope of 6 ppb/V: 0.2 V per g that the sensor feels
            assertThat(limit.tuning()).isCloseTo(4 / (0.2 * absolute), within(1e-9 * limit.tuning()));
            assertThat(limit.least()).isEqualTo(limit.sensor());
        }
        assertThat(limits.at(5, Axis.Z).cause()).isEqualTo("sensor range");
        // 1 mm in x at resonance lasts for 3.11 g, 30 g on the sensor for 3.19 g; no spring pulls along x
        assertThat(limits.at(OMEGA / (2 * Math.PI), Axis.X).cause()).isEqualTo("travel");
        assertThat(limits.at(OMEGA / (2 * Math.PI), Axis.X).slack()).isGreaterThan(1e9);
    }

    @Test
    void nothing_limits_an_oscillator_that_is_bolted_down_and_not_corrected() {
        DwellLimits.Limit limit = new DwellLimits(Models.of(Models.oscillator(""))).at(70, Axis.X);
        assertThat(limit.least()).isInfinite();
        assertThat(limit.cause()).isEmpty();
    }
}

package quietband.response.travel;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import java.util.Locale;
import org.hipparchus.linear.ArrayRealVector;
import org.hipparchus.linear.LUDecomposition;
import org.hipparchus.linear.MatrixUtils;
import org.hipparchus.linear.RealMatrix;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import quietband.demand.RequirementResult;
import quietband.model.Axis;
import quietband.model.Design;
import quietband.model.Platform.Spring;
import quietband.model.Vec;
import quietband.platform.BodyExtent;
import quietband.response.Models;
import quietband.response.verdict.Assessment;
import quietband.response.verdict.Assessor;

/** Sag, sustained and random travel against closed forms and against a balance of forces on an off-centre body. */
class TravelTest {

    private static final double G0 = 9.80665;

    private static String springs(double fn, double z) {
        double w = 2 * Math.PI * fn;
        double k = 0.21 * w * w / 4;
        return String.format(Locale.ROOT, "stiffness: %.17g N/m, damping: %.17g N*s/m", k, 2 * z * 0.21 * w / 4);
    }

    private static Assessment centred(double fn, double z, String vibration) {
        return Assessor.assess(Models.of(Models.oscillator("") + Models.platform(springs(fn, z), ", clearance: {x: 1 mm, y: 2 mm, z: 4 mm}")
            + "vibration: {" + vibration + "}\n"));
    }

    // System:  one axis under a steady acceleration: a/w^2; 1 g at 10 Hz is the handbooks' 2.484 mm
    // Note:    rounding
    @ParameterizedTest
    @CsvSource({"10, 2.484", "90, 0.030667"})
    void sag_and_sustained_travel_are_acceleration_over_the_square_of_the_natural_frequency(double fn, double millimetres) {
        Travel t = centred(fn, 0.1, "gravity: {x: 3, z: 4}, sustained: 7 g, axes: [x, y]").travel().orElseThrow();
        double one = G0 / Math.pow(2 * Math.PI * fn, 2);
        assertThat(one * 1e3).isCloseTo(millimetres, within(5e-4 * millimetres));
        assertThat(t.sag().x()).isCloseTo(0.6 * one, within(1e-9 * one));
        assertThat(t.sag().y()).isCloseTo(0, within(1e-12 * one));
        assertThat(t.sag().z()).isCloseTo(0.8 * one, within(1e-9 * one));
        assertThat(t.sustained().x()).isCloseTo(7 * one, within(1e-9 * one));
        // z is not driven
        assertThat(t.sustained().z()).isCloseTo(0, within(1e-12 * one));
    }

    // System:  Miles: sigma_u = sqrt(pi/2 fn Q S)/w^2 g0 for white noise of density S, Q = 1/(2 z); exact for displacement
    // Note:    0.05 Hz to 100 kHz instead of all frequencies: 4 z/pi (f1/fn) below, nothing above; 2e-4 for z = 0.05
    @Test
    void three_sigma_of_one_axis_is_miles_and_axes_together_leave_it_alone() {
        for (String apply : List.of("one_at_a_time", "together")) {
            Travel t = centred(60, 0.05, "apply: " + apply + ", random: {points: [{frequency: 0.05 Hz, density: 0.03 g^2/Hz}, "
                + "{frequency: 100 kHz, density: 0.03 g^2/Hz}]}").travel().orElseThrow();
            double w = 2 * Math.PI * 60;
            double sigma = Math.sqrt(Math.PI / 2 * 60 * 10 * 0.03) * G0 / (w * w);
            for (Axis axis : Axis.ALL) {
                // on a centred body an axis moves along itself only
                assertThat(t.random3Sigma().get(axis)).isCloseTo(3 * sigma, within(2e-4 * sigma));
            }
        }
    }

    // Result:  counted = sustained + the larger of shock and random; a rectangle of long duration doubles the static travel
    @Test
    void sustained_and_the_larger_of_shock_and_random_count_against_the_clearance() {
        Assessment a = centred(60, 0, "sustained: 2 g, shock: {shape: rectangle, peak: 5 g, duration: 100 ms}, random: {points: "
            + "[{frequency: 200 Hz, density: 0.001 g^2/Hz}, {frequency: 300 Hz, density: 0.001 g^2/Hz}]}");
        double one = G0 / Math.pow(2 * Math.PI * 60, 2);
        Travel t = a.travel().orElseThrow();
        // undamped, a period of 17 ms: 1e-6 as for the handbook's pulses
        assertThat(t.shock().z()).isCloseTo(2 * 5 * one, within(1e-5 * one));
        assertThat(t.random3Sigma().z()).isLessThan(one).isPositive();
        assertThat(t.counted().z()).isCloseTo(12 * one, within(1e-5 * one));
        RequirementResult travel = a.requirements().stream().filter(r -> r.name().equals("travel")).findFirst().orElseThrow();
        assertThat(travel.axis()).isEqualTo("x");
        assertThat(travel.usedShare()).isCloseTo(12 * one / 1e-3, within(1e-2 * one / 1e-3));
    }

    private static final String TURNED = """
        platform:
          mass: 480 g
          inertia: {xx: 210 kg*mm^2, yy: 260 kg*mm^2, zz: 330 kg*mm^2, xy: 12 kg*mm^2, yz: -9 kg*mm^2}
          centre_of_gravity: {x: 3 mm, y: -2 mm, z: 4 mm}
          springs:
            - {at: [{x: 30 mm, y: 25 mm, z: -5 mm}, {x: -28 mm, y: 27 mm}], stiffness: {x: 8 N/mm, y: 12 N/mm, z: 30 N/mm}}
            - {at: [{x: -30 mm, y: -25 mm}, {x: 31 mm, y: -24 mm, z: 6 mm}], stiffness: 14 N/mm, damping: 6 N*s/m}
            - {at: [{x: 1 mm, y: 2 mm, z: 20 mm}], stiffness: {x: 2 N/mm, y: 0 N/mm, z: 1 N/mm}}
        vibration: {gravity: {x: 1, y: -2, z: -2}, sustained: 3 g}
        """;

    // second road: forces and moments of all springs, each from its own stretch, balance the inertia forces
    @Test
    void an_off_centre_body_rests_where_forces_and_moments_balance() {
        Design d = Models.of(Models.oscillator("") + TURNED);
        Travel t = Assessor.assess(d).travel().orElseThrow();
        List<Vec> points = BodyExtent.points(d.platform().orElseThrow());
        assertThat(points).hasSize(6);
        assertThat(largest(rest(d, new Vec(1 / 3.0, -2 / 3.0, -2 / 3.0)), d, points).minus(t.sag()).length())
            .isLessThan(1e-9 * t.sag().length());
        Vec sustained = Vec.ZERO;
        for (Axis axis : Axis.ALL) {
            Vec one = largest(rest(d, Vec.ZERO.with(axis, 3)), d, points);
            sustained = new Vec(Math.max(sustained.x(), one.x()), Math.max(sustained.y(), one.y()), Math.max(sustained.z(), one.z()));
        }
        assertThat(sustained.minus(t.sustained()).length()).isLessThan(1e-9 * sustained.length());
    }

    /** u and theta at which the springs' forces and their moments about the centre of gravity carry the body. */
    private static double[] rest(Design d, Vec g) {
        RealMatrix k = MatrixUtils.createRealMatrix(6, 6);
        for (int c = 0; c < 6; c++) {
            double[] q = new double[6];
            q[c] = 1;
            for (Spring s : d.platform().orElseThrow().springs()) {
                Vec arm = s.at().minus(d.platform().orElseThrow().centreOfGravity());
                double[] u = moved(q, arm);
                double[] f = {s.stiffness().x() * u[0], s.stiffness().y() * u[1], s.stiffness().z() * u[2]};
                double[] all = {f[0], f[1], f[2], arm.y() * f[2] - arm.z() * f[1], arm.z() * f[0] - arm.x() * f[2],
                    arm.x() * f[1] - arm.y() * f[0]};
                for (int r = 0; r < 6; r++) {
                    k.addToEntry(r, c, all[r]);
                }
            }
        }
        double w = d.platform().orElseThrow().mass() * G0;
        double[] weight = {w * g.x(), w * g.y(), w * g.z(), 0, 0, 0};
        return new LUDecomposition(k).getSolver().solve(new ArrayRealVector(weight)).toArray();
    }

    private static double[] moved(double[] q, Vec p) {
        return new double[] {q[0] + q[4] * p.z() - q[5] * p.y(), q[1] + q[5] * p.x() - q[3] * p.z(), q[2] + q[3] * p.y() - q[4] * p.x()};
    }

    private static Vec largest(double[] q, Design d, List<Vec> points) {
        double[] most = new double[3];
        for (Vec p : points) {
            double[] u = moved(q, p.minus(d.platform().orElseThrow().centreOfGravity()));
            for (int i = 0; i < 3; i++) {
                most[i] = Math.max(most[i], Math.abs(u[i]));
            }
        }
        return Vec.of(most);
    }
}

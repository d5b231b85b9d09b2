package quietband.motion.platform;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import org.assertj.core.data.Percentage;
import org.hipparchus.analysis.UnivariateFunction;
import org.hipparchus.analysis.solvers.BracketedUnivariateSolver;
import org.hipparchus.analysis.solvers.BracketingNthOrderBrentSolver;
import org.hipparchus.ode.ODEState;
import org.hipparchus.ode.ODEStateAndDerivative;
import org.hipparchus.ode.OrdinaryDifferentialEquation;
import org.hipparchus.ode.events.AbstractODEDetector;
import org.hipparchus.ode.events.Action;
import org.hipparchus.ode.events.AdaptableInterval;
import org.hipparchus.ode.events.ODEEventHandler;
import org.hipparchus.ode.nonstiff.DormandPrince853Integrator;
import org.junit.jupiter.api.Test;
import quietband.model.Axis;
import quietband.model.Design;
import quietband.motion.run.Dwell;
import quietband.motion.run.Examples;
import quietband.motion.signal.BlockSignal;
import quietband.motion.signal.LinearStage;
import quietband.motion.signal.LossModel;
import quietband.motion.signal.TimeStepping;

/** Bump stops and compression-only springs against hand-computed cases and an integrator with event detection. */
class ContactTest {

    private static final double F = 50;
    private static final double W = 2 * Math.PI * F;

    private static TimeStepping plan(double step) {
        return new TimeStepping(step, false, LossModel.fit(200), false, 5, 1_000_000, false);
    }

    private static Design stopped(double ratio) {
        return Examples.parse(Examples.oscillator("x"), Examples.mass(F, "",
            "  clearance: {x: 1 mm, y: 1 mm, z: 1 mm}\n  stops: {stiffness: 400 N/mm, damping_ratio: " + ratio + "}"));
    }

    /** Starts the mass with a speed along x and steps; tells the largest x, the speed when x is back at 0, and the contacts. */
    private static double[] thrown(Design d, double speed, double step) {
        TimeStepping plan = plan(step);
        PlatformModel model = PlatformModel.of(d, plan);
        PlatformStage stage = new PlatformStage(d.platform().orElseThrow(), model, plan);
        double[] rate = model.equations().rate(new double[] {1, 0, 0, 0, 0, 0});
        double size = LinearStage.dot(rate, rate);
        double[] x = stage.state();
        for (int i = 0; i < x.length; i++) {
            x[i] = speed * rate[i] / size;
        }
        stage.state(x);
        double most = 0;
        double back = 0;
        BlockSignal[] rest = BlockSignal.several(3);
        for (int k = 0; k < 4000 && back == 0; k++) {
            stage.run(rest, new boolean[3], 1);
            most = Math.max(most, stage.seen()[0][1]);
            back = stage.seen()[0][1] < 0 ? LinearStage.dot(rate, stage.state()) : 0;
        }
        return new double[] {most, back, stage.contact().records().get(0).times()};
    }

    @Test
    void an_elastic_stop_turns_the_mass_where_the_energy_says_and_gives_all_of_it_back() {
        double v = 0.6;
        double[] r = thrown(stopped(0), v, 1e-4);
        // v^2/2 = (w u)^2/2 + k_s (u - c)^2/(2 m), m = 1 kg: a u^2 + b u + d = 0
        double a = W * W + 4e5;
        double b = -2 * 4e5 * 1e-3;
        double most = (-b + Math.sqrt(b * b - 4 * a * (4e5 * 1e-6 - v * v))) / (2 * a);
        // looked at every 0.1 ms, the turn's curvature leaves some 1e-3
        assertThat(r[0]).isCloseTo(most, Percentage.withPercentage(0.3));
        assertThat(r[1]).isCloseTo(-v, Percentage.withPercentage(0.1));
        assertThat(r[2]).isEqualTo(1);
    }

    @Test
    void a_damped_stop_meets_an_integrator_with_event_detection() {
        double v = 0.8;
        double z = 0.2;
        double[] r = thrown(stopped(z), v, 1e-4);
        double c = 2 * z * Math.sqrt(4e5);
        boolean[] on = new boolean[1];
        double[] most = new double[1];
        DormandPrince853Integrator dp = new DormandPrince853Integrator(1e-9, 1e-4, 1e-13, 1e-12);
        dp.addEventDetector(new Crossing(AdaptableInterval.of(1e-4), 100, (s, detector, up) -> {
            on[0] = up;
            return Action.RESET_DERIVATIVES;
        }, 1e-3, 0));
        dp.addEventDetector(new Crossing(AdaptableInterval.of(1e-4), 100, (s, detector, up) -> up ? Action.CONTINUE : Action.STOP,
            0, 0));
        dp.addEventDetector(new Crossing(AdaptableInterval.of(1e-4), 100, (s, detector, up) -> {
            most[0] = Math.max(most[0], s.getPrimaryState()[0]);
            return Action.CONTINUE;
        }, 0, 1));
        ODEStateAndDerivative end = dp.integrate(new OrdinaryDifferentialEquation() {
            @Override
            public int getDimension() {
                return 2;
            }

            @Override
            public double[] computeDerivatives(double t, double[] x) {
                double stop = on[0] ? 4e5 * (x[0] - 1e-3) + c * x[1] : 0;
                return new double[] {x[1], -W * W * x[0] - stop};
            }
        }, new ODEState(0, new double[] {1e-12, v}), 1);
        assertThat(r[0]).isCloseTo(most[0], Percentage.withPercentage(0.3));
        assertThat(r[1]).isCloseTo(end.getPrimaryState()[1], Percentage.withPercentage(0.2));
        assertThat(Math.abs(r[1])).isLessThan(0.9 * v);
    }

    /** A component of the state crossing a level. */
    private static final class Crossing extends AbstractODEDetector<Crossing> {

        private final double level;
        private final int component;

        Crossing(AdaptableInterval interval, int most, ODEEventHandler handler, double level, int component) {
            super(interval, most, new BracketingNthOrderBrentSolver(0, 1e-13, 0, 5), handler);
            this.level = level;
            this.component = component;
        }

        @Override
        protected Crossing create(AdaptableInterval interval, int most, BracketedUnivariateSolver<UnivariateFunction> solver,
                                  ODEEventHandler handler) {
            return new Crossing(interval, most, handler, level, component);
        }

        @Override
        public double g(ODEStateAndDerivative s) {
            return s.getPrimaryState()[component] - level;
        }
    }

    @Test
    void contact_never_adds_energy() {
        Design d = stopped(0.3);
        TimeStepping plan = plan(1e-4);
        PlatformModel model = PlatformModel.of(d, plan);
        PlatformStage stage = new PlatformStage(d.platform().orElseThrow(), model, plan);
        double[] x = stage.state();
        for (int i = 0; i < x.length; i++) {
            x[i] = 2 * Math.sin(i + 1);
        }
        stage.state(x);
        double before = Double.POSITIVE_INFINITY;
        BlockSignal[] rest = BlockSignal.several(3);
        for (int k = 0; k < 3000; k++) {
            stage.run(rest, new boolean[3], 1);
            double now = stage.contact().contactEnergy(stage.state());
            for (double v : stage.state()) {
                now += v * v / 2;
            }
            assertThat(now).isLessThanOrEqualTo(before * (1 + 1e-9));
            before = now;
        }
        assertThat(stage.contact().records().stream().mapToLong(ContactRecord::times).sum()).isGreaterThan(3);
    }

    /** A mass whose only spring along z is seated with 20 N, driven along z below its resonance. */
    private static List<ContactRecord> seated(double peakG) {
        double k = W * W;
        Design d = Examples.parse(Examples.oscillator("z"), "platform:\n  mass: 1 kg\n  size: {x: 100 mm, y: 100 mm, z: 100 mm}\n"
            + "  springs:\n    - {name: seat, at: [{x: 0 mm}], stiffness: {x: 100 N/mm, y: 100 N/mm, z: " + k
            + " N/m}, damping: {z: 20 N*s/m}, "
            + "ends: compression_only, preload: 20 N}\n    - {name: guide, at: [{x: 40 mm}, {x: -40 mm}, {y: 40 mm}, "
            + "{y: -40 mm}, {z: 40 mm}, {z: -40 mm}], "
            + "stiffness: {x: 100 N/mm, y: 100 N/mm, z: 0 N/m}}");
        return Dwell.run(d, new Dwell.Request(Axis.Z, 20, peakG, 1, false)).contacts();
    }

    @Test
    void a_seated_spring_lifts_off_at_the_hand_computed_level() {
        // |R| = a/(w0^2 |1 - r^2 + j 2 z r|), z = 20/(2 w0), r = 0.4; slack when it exceeds preload/k = 20 N/w0^2 m
        double r = 0.4;
        double z = 20 / (2 * W);
        double level = 20 * Math.hypot(1 - r * r, 2 * z * r) / 9.80665;
        assertThat(seated(0.99 * level).get(0).times()).isZero();
        assertThat(seated(1.01 * level).get(0).times()).isPositive();
    }
}

package quietband.tuning.orient;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.nio.file.Path;
import java.util.function.ToDoubleFunction;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import quietband.demand.ResidualDemand;
import quietband.model.Design;
import quietband.model.Rotation;
import quietband.model.Stack;
import quietband.model.Vec;
import quietband.model.edit.ModelFile;
import quietband.response.DesignGrid;
import quietband.response.ResidualResponse;
import quietband.response.verdict.Assessor;
import quietband.tuning.orient.Orientation.Goal;

/** The turn that serves best, against brute force and against the assessment of turned models. */
class OrientationTest {

    private static final Path RELAY = Path.of("models/ridge-relay.yaml");

    private static ModelFile pointing(ModelFile file, Vec g) {
        return file.without("oscillator.resonator.orientation").withValue("oscillator.resonator.sensitivity",
            "{x: " + g.x() * 1e9 + " ppb/g, y: " + g.y() * 1e9 + " ppb/g, z: " + g.z() * 1e9 + " ppb/g}");
    }

    /** Directions one degree apart in latitude and longitude: more than on the search's own grid. */
    private static double bruteForce(Goal goal, ToDoubleFunction<Vec> value) {
        double least = Double.POSITIVE_INFINITY;
        for (int lat = -90; lat <= 90; lat++) {
            for (int lon = 0; lon < 360; lon++) {
                double a = Math.toRadians(lat);
                double b = Math.toRadians(lon);
                least = Math.min(least, value.applyAsDouble(new Vec(Math.cos(a) * Math.cos(b), Math.cos(a) * Math.sin(b), Math.sin(a))));
            }
        }
        assertThat(least).as(goal.name()).isFinite();
        return least;
    }

    @Test
    void worst_axis_is_least_where_all_three_are_equal() {
        Design design = ModelFile.read(RELAY).design();
        Orientation o = Orientation.of(design, Goal.AXIS);
        double size = design.oscillator().resonator().sensitivityPerG().length();
        // the search closes in on a kink to about 1e-8 rad
        assertThat(o.after()).isCloseTo(size / Math.sqrt(3), within(1e-7 * size));
        double brute = size * bruteForce(Goal.AXIS, u -> Math.max(Math.abs(u.x()), Math.max(Math.abs(u.y()), Math.abs(u.z()))));
        // half a degree off, the largest component is up to 1.2 % larger
        assertThat(o.after()).isLessThanOrEqualTo(brute).isGreaterThan(brute * 0.98);
        assertThat(o.turn().apply(design.oscillator().resonator().sensitivityPerG()).minus(o.mounted()).length()).isLessThan(1e-15 * 1e-3);
    }

    /** Second road: three models, each with the vector along one axis and the weights following, no split into R and S. */
    @ParameterizedTest
    @ValueSource(strings = {"models/ridge-relay.yaml", "models/trial-a.yaml", "models/platform-only.yaml"})
    void the_best_turn_as_seen_is_that_of_brute_force_on_a_sphere_grid_of_one_degree(String model) {
        ModelFile file = ModelFile.read(Path.of(model));
        Design design = file.design();
        double size = design.oscillator().resonator().sensitivityPerG().length();
        double[] f = DesignGrid.of(design, 10, 2000);
        Stack stack = Stack.fullest(design);
        double[][] m = new double[f.length][18];
        for (int i = 0; i < 3; i++) {
            Vec unit = new Vec(i == 0 ? 1e-9 : 0, i == 1 ? 1e-9 : 0, i == 2 ? 1e-9 : 0);
            ResidualResponse response = new ResidualResponse(pointing(file, unit).design());
            double[] re = new double[3];
            double[] im = new double[3];
            for (int k = 0; k < f.length; k++) {
                response.at(f[k]);
                response.residual(stack, re, im);
                for (int j = 0; j < 3; j++) {
                    m[k][6 * j + 2 * i] = re[j] / 1e-9;
                    m[k][6 * j + 2 * i + 1] = im[j] / 1e-9;
                }
            }
        }
        double limit = new ResidualDemand(design).limit(ResidualDemand.VECTOR, 100);
        // every fifth frequency first tells most directions off early
        double[] best = {Double.POSITIVE_INFINITY};
        double brute = bruteForce(Goal.RESIDUAL, u -> {
            double worst = 0;
            for (int start = 0; start < 5; start++) {
                for (int k = start; k < f.length && worst < best[0]; k += 5) {
                    for (int j = 0; j < 3; j++) {
                        double re = m[k][6 * j] * u.x() + m[k][6 * j + 2] * u.y() + m[k][6 * j + 4] * u.z();
                        double im = m[k][6 * j + 1] * u.x() + m[k][6 * j + 3] * u.y() + m[k][6 * j + 5] * u.z();
                        worst = Math.max(worst, re * re + im * im);
                    }
                }
            }
            best[0] = Math.min(best[0], worst);
            return worst;
        });
        double value = Math.sqrt(brute) * size / limit;
        Orientation o = Orientation.of(design, Goal.RESIDUAL);
        // never worse than the grid; a grid of one degree is at most some 2 % off the optimum
        assertThat(o.after()).isLessThanOrEqualTo(value * (1 + 1e-9)).isGreaterThan(value * 0.975);
    }

    @Test
    void figures_are_those_of_the_assessed_turned_model() {
        ModelFile file = ModelFile.read(RELAY);
        for (Goal goal : new Goal[] {Goal.RESIDUAL, Goal.NOISE}) {
            Orientation o = Orientation.of(file.design(), goal);
            var before = Assessor.assess(file.design());
            var after = Assessor.assess(pointing(file, o.mounted()).design());
            if (goal == Goal.RESIDUAL) {
                // the assessment refines between the grid's points; a quarter of its steps leaves less than 0.02 %
                assertThat(o.after()).isCloseTo(ratio(after), within(2e-4 * o.after()));
                assertThat(o.before()).isCloseTo(ratio(before), within(2e-4 * o.before()));
            } else {
                assertThat(o.after()).isCloseTo(after.worstJitterRad(), within(1e-6 * o.after()));
                assertThat(o.before()).isCloseTo(before.worstJitterRad(), within(1e-6 * o.before()));
            }
            assertThat(o.after()).isLessThan(o.before());
        }
    }

    private static double ratio(quietband.response.verdict.Assessment a) {
        return Math.pow(10, -a.verdict(a.fullest()).worst().marginDb() / 20);
    }

    @Test
    void the_least_phase_noise_is_that_of_brute_force() {
        Design design = ModelFile.read(RELAY).design();
        double size = design.oscillator().resonator().sensitivityPerG().length();
        OrientationGoal aim = new NoiseOrientation(design);
        double brute = bruteForce(Goal.NOISE, u -> aim.of(u.times(size), u.times(size)));
        double found = Orientation.of(design, Goal.NOISE).after();
        assertThat(found).isLessThanOrEqualTo(brute).isGreaterThan(brute * 0.98);
    }

    @Test
    void an_angle_error_with_kept_weights_costs_the_sine_of_it() {
        // correction only, ideal path: what is left after a small error e is |G| sin e against a bare |G|, along the tilt
        ModelFile file = ModelFile.parse(Path.of("model.yaml"), "quietband: 1\noscillator:\n  carrier: 10 MHz\n  resonator:\n"
            + "    sensitivity: {x: 0.3 ppb/g, y: 0.4 ppb/g, z: 1.2 ppb/g}\ncancellation:\n  sensor: {place: housing}\n"
            + "requirement:\n  residual: [{frequency: 10 Hz, limit: 1 ppb/g}]\n  by: vector\n");
        Orientation o = Orientation.of(file.design(), Goal.RESIDUAL);
        for (Orientation.AngleError e : o.errors()) {
            assertThat(e.recalibrated()).isLessThan(1e-9);
            // the vector of 1.3 ppb/g over 1 ppb/g; a chord of 2 sin(e/2)
            assertThat(e.kept()).isCloseTo(1.3 * 2 * Math.sin(e.angle() / 2), within(1e-9));
        }
    }

    @Test
    void the_smallest_turn_takes_one_direction_to_the_other() {
        Vec a = SphereSearch.unit(new Vec(1, 2, -0.5));
        for (Vec b : new Vec[] {SphereSearch.unit(new Vec(-0.3, 0.2, 0.9)), a, a.times(-1)}) {
            Rotation t = Orientation.between(a, b);
            assertThat(t.apply(a).minus(b).length()).isLessThan(1e-14);
            assertThat(t.angle()).isCloseTo(Math.acos(Math.max(-1, Math.min(1, SphereSearch.dot(a, b)))), within(1e-7));
        }
    }
}

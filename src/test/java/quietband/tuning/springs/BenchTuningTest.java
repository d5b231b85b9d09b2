package quietband.tuning.springs;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.nio.file.Path;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import org.junit.jupiter.api.Test;
import quietband.model.Axis;
import quietband.model.Platform;
import quietband.model.Vec;
import quietband.model.edit.ModelFile;
import quietband.numerics.ImpossibleRequestException;
import quietband.platform.Assembly;
import quietband.platform.AxisFrequencies;
import quietband.response.ModeProperties;
import quietband.response.verdict.Assessor;

/** Tuning on the bench. */
class BenchTuningTest {

    private final ModelFile relay = ModelFile.read(Path.of("models/ridge-relay.yaml"));

    private static Vec corners(ModelFile file) {
        return AxisFrequencies.hz(new Assembly(file.design().platform().orElseThrow()));
    }

    @Test
    void the_unit_has_the_measured_corners_and_the_tuned_unit_the_wanted_ones() {
        BenchTuning t = BenchTuning.of(relay, new Vec(96.2, 95.8, 97.0), Vec.all(90));
        for (Axis a : Axis.ALL) {
            // readings and wishes within 0.1 %; equal corners on coupled axes split by some hundredths of a hertz
            assertThat(corners(t.unit()).get(a)).isCloseTo(t.measuredHz().get(a), within(0.1));
            assertThat(corners(t.tuned()).get(a)).isCloseTo(90, within(0.1));
        }
        assertThat(t.ballast()).isBetween(28e-3, 33e-3);
    }

    @Test
    void ballast_alone_serves_a_unit_that_is_too_stiff_by_the_same_on_every_axis() {
        Vec own = corners(relay);
        BenchTuning t = BenchTuning.of(relay, own.times(1.05), Vec.all(Double.NaN));
        // corners go with one over the root of the mass: 10.25 % of 210 g
        assertThat(t.ballast()).isCloseTo(0.21 * 0.1025, within(0.06e-3));
        assertThat(t.rate().x()).isEqualTo(1);
        assertThat(corners(t.tuned()).z()).isCloseTo(own.z(), within(0.002 * own.z()));
    }

    @Test
    void a_unit_that_is_too_soft_gets_rates_and_no_ballast() {
        BenchTuning t = BenchTuning.of(relay, new Vec(71.2, 69.8, 84.0), Vec.all(Double.NaN));
        assertThat(t.ballast()).isZero();
        assertThat(t.rate().y()).isBetween(1.4, 1.9);
    }

    @Test
    void readings_that_no_rates_give_are_refused_with_what_to_check() {
        ModelFile tall = relay.withValue("platform.springs.corners.at",
            "[{x: 2 mm, y: 2 mm, z: 30 mm}, {x: -2 mm, y: 2 mm, z: 30 mm}, "
            + "{x: 0 mm, y: -2 mm, z: 30 mm}]");
        assertThatThrownBy(() -> BenchTuning.of(tall, new Vec(300, 20, 20), Vec.all(Double.NaN)))
            .isInstanceOf(ImpossibleRequestException.class)
            .hasMessageContaining("which axis");
    }

    /** A weight written into the model by other arithmetic than the program's: integrals about the new centre, edge by edge. */
    private static ModelFile weighed(ModelFile file, Vec at) {
        Platform p = file.design().platform().orElseThrow();
        double m = p.mass();
        double extra = 0.5e-3;
        Vec c = p.centreOfGravity().times(m).plus(at.times(extra)).times(1 / (m + extra));
        Vec body = p.centreOfGravity().minus(c);
        Vec point = at.minus(c);
        double[] square = new double[6];
        int[][] pairs = {{1, 2}, {0, 2}, {0, 1}, {0, 1}, {0, 2}, {1, 2}};
        double[] own = {p.inertia().xx(), p.inertia().yy(), p.inertia().zz(), p.inertia().xy(), p.inertia().xz(),
            p.inertia().yz()};
        for (int i = 0; i < 6; i++) {
            int a = pairs[i][0];
            int b = pairs[i][1];
            square[i] = own[i] + (i < 3 ? m * (body.get(a) * body.get(a) + body.get(b) * body.get(b))
                + extra * (point.get(a) * point.get(a) + point.get(b) * point.get(b))
                : m * body.get(a) * body.get(b) + extra * point.get(a) * point.get(b));
        }
        Map<String, String> pieces = new LinkedHashMap<>();
        pieces.put("platform.mass", String.format(Locale.ROOT, "%.12g kg", m + extra));
        pieces.put("platform.centre_of_gravity", String.format(Locale.ROOT, "{x: %.15e m, y: %.15e m, z: %.15e m}",
            c.x(), c.y(), c.z()));
        pieces.put("platform.inertia", String.format(Locale.ROOT,
            "{xx: %.15e kg*m^2, yy: %.15e kg*m^2, zz: %.15e kg*m^2, xy: %.15e kg*m^2, "
            + "xz: %.15e kg*m^2, yz: %.15e kg*m^2}", square[0], square[1], square[2], square[3], square[4], square[5]));
        return file.withValues(pieces);
    }

    @Test
    void the_shift_table_is_what_assess_says_of_the_changed_model() {
        ModelFile unit = BenchTuning.of(relay, new Vec(96.2, 93.8, 99.0), Vec.all(90)).unit();
        List<BenchTuning.Shift> shifts = BenchTuning.shifts(unit.design());
        assertThat(shifts).hasSize(6 * (8 + 4));
        List<ModeProperties> before = Assessor.assess(unit.design()).modes();
        for (int place : new int[] {0, 3, 6}) {
            List<ModeProperties> after = Assessor.assess(weighed(unit, shifts.get(6 * place).at()).design()).modes();
            for (int n = 0; n < 6; n++) {
                double shift = after.get(n).frequencyHz() - before.get(n).frequencyHz();
                BenchTuning.Shift told = shifts.get(6 * place + n);
                // asked for: 2 % of the shift
                assertThat(told.toHz() - told.fromHz()).as(told.change() + " mode " + n).isCloseTo(shift,
                    within(0.02 * Math.abs(shift) + 1e-9));
            }
        }
        ModelFile stiffer = unit.withQuantities(unit.design().quantities()
            .changed(List.of(new quietband.model.quantity.NumberChange(
            "platform.springs.corners[2].stiffness", quietband.model.quantity.NumberChange.Act.SCALE, 0.01))));
        List<ModeProperties> after = Assessor.assess(stiffer.design()).modes();
        for (int n = 0; n < 6; n++) {
            BenchTuning.Shift told = shifts.get(6 * (8 + 1) + n);
            double shift = after.get(n).frequencyHz() - before.get(n).frequencyHz();
            assertThat(told.toHz() - told.fromHz()).as(told.change()).isCloseTo(shift, within(0.02 * shift));
        }
    }
}

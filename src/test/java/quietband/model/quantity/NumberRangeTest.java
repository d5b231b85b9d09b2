package quietband.model.quantity;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import quietband.model.Design;
import quietband.response.Models;
import quietband.units.Dimension;

/** Ranges in words, paths as a person writes them, and changes that act in order. */
class NumberRangeTest {

    @ParameterizedTest
    @CsvSource({"0, false", "1e-300, true", "-1, false", "NaN, false"})
    void above_zero_leaves_zero_out(double value, boolean holds) {
        assertThat(NumberRange.POSITIVE.holds(value)).isEqualTo(holds);
        assertThat(NumberRange.NOT_NEGATIVE.holds(value)).isEqualTo(holds || value == 0);
    }

    @Test
    void a_range_says_in_its_unit_what_would_do() {
        assertThat(NumberRange.POSITIVE.words(Dimension.MASS)).isEqualTo("must be above 0");
        assertThat(NumberRange.NOT_NEGATIVE.words(Dimension.MASS)).isEqualTo("must be at least 0");
        assertThat(NumberRange.whole(1, 20).words(Dimension.NUMBER)).isEqualTo("must be a whole number from 1 to 20");
        assertThat(NumberRange.between(-2, 3).words(Dimension.NUMBER)).isEqualTo("must be from -2 to 3");
        assertThat(new NumberRange(0, true, 0.02, false).words(Dimension.LENGTH)).isEqualTo("must be above 0 and at most 20 mm");
        assertThat(NumberRange.whole(1, 20).holds(2.5)).isFalse();
        assertThat(NumberRange.whole(1, 20).holds(20)).isTrue();
        assertThat(NumberRange.whole(1, 20).holds(21)).isFalse();
        assertThat(NumberRange.ANY.holds(-1e300)).isTrue();
    }

    @Test
    void a_path_splits_into_names_and_numbers() {
        assertThat(NumberAddress.tokens("platform.springs.corners[2].at.x")).containsExactly(new NumberAddress.Token("platform", 0),
            new NumberAddress.Token("springs", 0), new NumberAddress.Token("corners", 2), new NumberAddress.Token("at", 0),
            new NumberAddress.Token("x", 0));
        for (String bad : List.of("", ".a", "a.", "a[", "a[x]", "a[1]b", "a..b")) {
            assertThat(NumberAddress.tokens(bad)).as(bad).isNull();
        }
        assertThat(NumberAddress.family("pads", "pads-12")).isTrue();
        assertThat(NumberAddress.family("pads", "pads-x")).isFalse();
        assertThat(NumberAddress.family("pads", "padsy-1")).isFalse();
        NumberAddress at = NumberAddress.ROOT.key("platform").key("springs").entry("pads", 1, 3).key("at").tail("z");
        assertThat(at.toString()).isEqualTo("platform.springs.pads[3].at.z");
        assertThat(at.quantity()).isEqualTo("platform.springs.at");
        assertThat(at.leaf()).isEqualTo("platform.springs.pads.at");
        assertThat(at.allAxes()).isEqualTo("platform.springs.pads[3].at");
    }

    private static Design design() {
        return Models.of(Models.oscillator("") + Models.platform("stiffness: {x: 10 N/mm, y: 20 N/mm, z: 30 N/mm}", "")
            + "requirement: {phase_noise: [{offset: 10 Hz, limit: -70 dBc/Hz}]}\n");
    }

    // (10e3 (1 + 0.5) + 200) (1 - 0.1): one after the other, not summed; rounding
    @Test
    void changes_act_in_the_order_in_which_they_stand() {
        Quantities q = design().quantities().changed(List.of(
            new NumberChange("platform.springs.four.stiffness.x", NumberChange.Act.SCALE, 0.5),
            new NumberChange("platform.springs.four[2].stiffness", NumberChange.Act.ADD, 200),
            new NumberChange("platform.springs.stiffness", NumberChange.Act.SCALE, -0.1)));
        assertThat(q.valueOf("platform.springs.four[1].stiffness.x")).isCloseTo(13500, within(1e-8));
        assertThat(q.valueOf("platform.springs.four[2].stiffness.x")).isCloseTo(15200 * 0.9, within(1e-8));
        assertThat(q.valueOf("platform.springs.four[2].stiffness.z")).isCloseTo(30200 * 0.9, within(1e-8));
        assertThat(q.valueOf("platform.springs.four[3].stiffness.z")).isCloseTo(27000, within(1e-8));
        assertThat(q.with("platform.mass", q.valueOf("platform.mass")).values()).isEqualTo(q.values());
    }

    @Test
    void a_number_out_of_its_range_is_named_with_what_would_do() {
        Quantities q = design().quantities();
        assertThat(q.outOfRange()).isEmpty();
        assertThat(q.with("platform.mass", -1).outOfRange()).contains("platform.mass must be above 0");
        assertThat(q.with("platform.mass", Double.POSITIVE_INFINITY).outOfRange()).isPresent();
        assertThat(q.with("platform.springs.four[2].damping.y", -3).outOfRange().orElseThrow())
            .startsWith("platform.springs.four[2].damping.y must be at least 0");
        int mass = q.slotOf("platform.mass");
        assertThat(q.with("platform.mass", 0).within(mass)).isFalse();
        assertThat(q.with("platform.mass", 1e-9).within(mass)).isTrue();
        assertThatThrownBy(() -> q.with(new double[3])).isInstanceOf(IllegalArgumentException.class).hasMessageContaining("3 numbers for");
        assertThatThrownBy(() -> design().with(q)).isInstanceOf(IllegalArgumentException.class).hasMessageContaining("another model's");
    }

    @Test
    void the_numbers_of_a_path_know_their_springs_and_their_dimension() {
        SelectedNumbers all = design().quantities().find("platform.springs.stiffness");
        assertThat(all.size()).isEqualTo(12);
        assertThat(all.springs()).isEqualTo(4);
        assertThat(all.dimension()).isEqualTo(Dimension.STIFFNESS);
        assertThat(design().quantities().find("platform.springs.four[2].stiffness").springs()).isEqualTo(1);
        assertThat(design().quantities().dimension("requirement.phase_noise.limit").difference()).isEqualTo(Dimension.DECIBEL);
    }
}

package quietband.tuning.cures;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import quietband.model.quantity.Quantities;
import quietband.response.Models;

/** Changes named by the shortest paths that say exactly them, and a number on its way to its ideal. */
class ShortestPathsTest {

    private final Quantities quantities = Models.of(Models.oscillator("") + Models.platform(
        "stiffness: {x: 10 N/mm, y: 10 N/mm, z: 20 N/mm}, damping: 1 N*s/m", "")
        .replace("}]}\n", "}, {name: cable, at: [{x: 1 mm}], stiffness: 1 N/mm}]}\n")).quantities();

    /** Each path as named, with what it becomes; every change doubles a number. */
    private List<String> named(String... paths) {
        List<ShortestPaths.Change> changes = new ArrayList<>();
        for (String path : paths) {
            for (int slot : quantities.find(path).slots()) {
                changes.add(new ShortestPaths.Change(slot, quantities.value(slot), 2 * quantities.value(slot)));
            }
        }
        return ShortestPaths.of(quantities, changes).stream().map(c -> c.of() + "=" + c.holds()).toList();
    }

    @Test
    void alike_numbers_of_a_group_are_one_setting_and_others_are_named_apart() {
        assertThat(named("platform.mass")).containsExactly("platform.mass=0.42");
        assertThat(named("platform.springs.four.damping")).containsExactly("platform.springs.four.damping=2.0");
        assertThat(named("platform.springs.four.stiffness")).containsExactly("platform.springs.four.stiffness.x=20000.0",
            "platform.springs.four.stiffness.y=20000.0", "platform.springs.four.stiffness.z=40000.0");
        assertThat(named("platform.springs.four.damping.z")).containsExactly("platform.springs.four.damping.z=2.0");
        assertThat(named("platform.springs.four[2].damping")).containsExactly("platform.springs.four[2].damping=2.0");
        assertThat(named("platform.springs.four[3].stiffness.y")).containsExactly("platform.springs.four[3].stiffness.y=20000.0");
        assertThat(named("oscillator.resonator.sensitivity")).hasSize(3)
            .allSatisfy(name -> assertThat(name).matches("oscillator.resonator.sensitivity.[xyz]=.*"));
    }

    /** Second road: the settings made on the design change what was to be changed, and nothing else. */
    @Test
    void the_settings_together_make_all_the_changes_and_no_other() {
        for (List<String> paths : List.of(List.of("platform.springs.four.stiffness", "platform.mass"),
            List.of("platform.springs.four[1].at", "platform.springs.stiffness.z"),
            List.of("platform.springs.damping", "platform.size.x"))) {
            double[] wanted = quantities.values();
            List<ShortestPaths.Change> changes = new ArrayList<>();
            for (String path : paths) {
                for (int slot : quantities.find(path).slots()) {
                    wanted[slot] = 1.5 * quantities.value(slot) + 1;
                    changes.add(new ShortestPaths.Change(slot, quantities.value(slot), wanted[slot]));
                }
            }
            Quantities made = quantities;
            for (ValueChange setting : ShortestPaths.of(quantities, changes)) {
                made = made.with(setting.of(), setting.holds());
            }
            assertThat(made.values()).containsExactly(wanted);
        }
    }

    // half way between 4 and 9: 6 by equal factors, 6.5 by equal steps
    @Test
    void a_number_moves_to_its_ideal_by_equal_factors_or_equal_steps() {
        PartialChange factors = new PartialChange(0, 4, 9, true);
        assertThat(factors.at(0)).isEqualTo(4);
        assertThat(factors.at(0.5)).isCloseTo(6, within(1e-12));
        assertThat(factors.at(1)).isCloseTo(9, within(1e-12));
        PartialChange steps = new PartialChange(0, 4, 9, false);
        assertThat(steps.at(0.5)).isEqualTo(6.5);
        assertThat(new PartialChange(0, -0.01, 0, false).at(0.75)).isCloseTo(-0.0025, within(1e-15));
        assertThat(new PartialChange(0, 5, 5, true).at(0.3)).isEqualTo(5);
    }
}

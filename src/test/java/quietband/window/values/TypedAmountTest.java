package quietband.window.values;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import quietband.units.Amounts;
import quietband.units.Dimension;

/** Amounts stepped by keys: percents of the value, four digits, and the unit as it was typed. */
class TypedAmountTest {

    @ParameterizedTest
    @CsvSource({"12 N/mm, 1, 12.12 N/mm", "12 N/mm, -1, 11.88 N/mm", "-0.4 ppb/g, 1, -0.396 ppb/g", "-0.4 ppb/g, -10, -0.44 ppb/g",
        "210 g, 100, 420 g", "0 mm, 1, 0.01 mm", "0 mm, -3, -0.03 mm", "3%, 10, 3.3%", "1e-10 1/g, 50, 1.5E-10 1/g",
        "99995 Hz, 0.001, 100000 Hz", "12.3456 mm, 0, 12.35 mm"})
    void a_step_is_a_percent_of_the_value_and_upwards_is_more(String typed, double steps, String text) {
        assertThat(TypedAmount.of(typed).orElseThrow().moved(steps).text()).isEqualTo(text);
    }

    @ParameterizedTest
    @CsvSource({"soft", "x: 1", "''", "-", "{x: 1 mm}"})
    void what_begins_with_no_number_is_not_stepped(String typed) {
        assertThat(TypedAmount.of(typed)).isEmpty();
    }

    /** However far it is stepped, what stands in the field reads as an amount. */
    @Test
    void a_stepped_amount_can_always_be_read() {
        TypedAmount up = TypedAmount.of("8 us").orElseThrow();
        TypedAmount down = up;
        for (int i = 0; i < 400; i++) {
            up = up.moved(7);
            down = down.moved(-7);
            double more = Amounts.read(up.text(), Dimension.TIME);
            double less = Amounts.read(down.text(), Dimension.TIME);
            // four digits of every step: 5e-4 each at the most
            assertThat(more / 8e-6).isBetween(Math.pow(1.069, i + 1), Math.pow(1.071, i + 1));
            assertThat(less / 8e-6).isBetween(Math.pow(0.929, i + 1), Math.pow(0.931, i + 1));
        }
    }
}

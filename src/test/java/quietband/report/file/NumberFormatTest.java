package quietband.report.file;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class NumberFormatTest {

    @ParameterizedTest
    @CsvSource({"0, 0.0", "1, 1.00000000000", "-72.5, -72.5000000000", "0.05, 0.0500000000000", "2000, 2000.00000000",
        "999999999999.6, 1.00000000000e12", "1e-7, 1.00000000000e-7", "123456789012345, 1.23456789012e14",
        "0.99999999999996, 1.00000000000", "-1e-300, -1.00000000000e-300"})
    void numbers_have_twelve_digits_and_a_point(double v, String text) {
        assertThat(NumberFormat.full(v)).isEqualTo(text);
    }

    @Test
    void what_rounds_to_zero_has_no_minus_sign() {
        assertThat(NumberFormat.text("%.3f deg of %d %%, %+.2f, %6.1f", -1e-9, 5, -0.001, -0.04))
            .isEqualTo("0.000 deg of 5 %, +0.00,    0.0");
        assertThat(NumberFormat.text("%.3f, a-0, 1e-0, %.0f", -0.0005, -1.0)).isEqualTo("-0.001, a-0, 1e-0, -1");
    }

    @Test
    void every_number_reads_back_to_twelve_digits() {
        Random random = new Random(1);
        for (int i = 0; i < 20_000; i++) {
            double v = (random.nextDouble() - 0.5) * Math.pow(10, random.nextInt(600) - 300);
            double back = Double.parseDouble(NumberFormat.full(v));
            // half a unit of the twelfth digit, at worst 5e-12 of the value, and rounding of the scale
            assertThat(Math.abs(back - v)).isLessThanOrEqualTo(5.001e-12 * Math.abs(v));
            assertThat(Double.parseDouble(NumberFormat.json(v))).isEqualTo(back);
        }
    }

    @Test
    void what_is_not_finite_is_an_empty_cell_and_null() {
        assertThat(NumberFormat.full(Double.NaN)).isEmpty();
        assertThat(NumberFormat.full(Double.NEGATIVE_INFINITY)).isEmpty();
        assertThat(NumberFormat.json(Double.POSITIVE_INFINITY)).isEqualTo("null");
        assertThat(NumberFormat.json(0.5)).isEqualTo("0.5");
        assertThat(NumberFormat.json(100)).isEqualTo("100");
    }
}

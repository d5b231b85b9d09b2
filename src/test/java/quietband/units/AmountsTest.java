package quietband.units;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.EnumSource;

class AmountsTest {

    /** Values on the right are the doubles nearest to the exact product, so equality is exact. */
    @ParameterizedTest
    @CsvSource({
        "62 mm, LENGTH, 0.062", "1 in, LENGTH, 0.0254", "3 um, LENGTH, 3e-6", "9 N/mm, STIFFNESS, 9000",
        "2 kN/m, STIFFNESS, 2000", "1 lbf/in, STIFFNESS, 175.126835", "1.8 N*s/m, DAMPING, 1.8",
        "210 g, MASS, 0.21", "3 mg, MASS, 3e-6", "6 N, FORCE, 6", "84 kg*mm^2, INERTIA, 84e-6",
        "84 g*cm^2, INERTIA, 84e-7", "84 g*mm^2, INERTIA, 84e-9", "10 MHz, FREQUENCY, 1e7", "1 GHz, FREQUENCY, 1e9",
        "90 deg, ANGLE, 1.5707963267948966", "180 deg, ANGLE, 3.141592653589793", "40 mrad, ANGLE, 0.04",
        "+30 %, RATIO, 0.3", "5%, RATIO, 0.05", "-0.05, RATIO, -0.05", "40, NUMBER, 40", "-3.5e-2 V, VOLTAGE, -0.035",
        "20 nV, VOLTAGE, 20e-9", "0.5 ppm/V, PER_VOLT, 5e-7", "2 ppb/V, PER_VOLT, 2e-9", "2 %/V, PER_VOLT, 0.02",
        "0.35 ppb/g, SENSITIVITY, 0.35e-9", "1 ppm/g, SENSITIVITY, 1e-6", "1e-10 1/g, SENSITIVITY, 1e-10",
        "20 g, ACCELERATION, 20", "9.80665 m/s^2, ACCELERATION, 1", "0.01 g^2/Hz, DENSITY, 0.01",
        "25 ug/rtHz, ACCELERATION_NOISE, 25e-6", "2 mg/rtHz, ACCELERATION_NOISE, 0.002",
        "20 nV/rtHz, VOLTAGE_NOISE, 20e-9", "3 dB, DECIBEL, 3", "-40 dBc, CARRIER_LEVEL, -40",
        "-138 dBc/Hz, PHASE_NOISE, -138", "8 us, TIME, 8e-6", "5 ns, TIME, 5e-9", "0, LENGTH, 0", "0.0, ANGLE, 0"})
    void everyAcceptedUnitGivesTheNearestDouble(String text, Dimension dimension, double expected) {
        assertThat(Amounts.read(text, dimension)).isEqualTo(expected);
    }

    @ParameterizedTest
    @CsvSource(delimiter = '|', value = {
        "12 N/kg | STIFFNESS | '12 N/kg' is an acceleration; expected a stiffness, e.g. 12 N/mm",
        "12 n/mm | STIFFNESS | '12 n/mm': unit 'n/mm' is not known; write 12 N/mm",
        "12,5 N/m | STIFFNESS | '12,5 N/m' has a comma; decimals take a point and thousands no mark, e.g. 12.5 N/m",
        "12 | STIFFNESS | '12' has no unit; expected a stiffness, e.g. 12 N/mm",
        "12 N/cm | STIFFNESS | '12 N/cm' is a stiffness in a unit that is not accepted; use N/m, N/mm, kN/m or lbf/in",
        "20 kg | ACCELERATION | '20 kg' is a mass; expected an acceleration, e.g. 2 g (g is standard gravity here)",
        "2 m/s^2 | MASS | '2 m/s^2' is an acceleration; expected a mass, e.g. 210 g (g is the gram here)",
        "90° | ANGLE | '90 °': unit '°' is not known; write 90 deg",
        "8 µs | TIME | '8 µs': unit 'µs' is not known; write 8 us",
        "25 ug/√Hz | ACCELERATION_NOISE | '25 ug/√Hz': unit 'ug/√Hz' is not known; write 25 ug/rtHz",
        "0 | DECIBEL | '0' has no unit; expected a ratio in decibels, e.g. 3 dB",
        ".nan | RATIO | '.nan' is not a finite number; expected a ratio, e.g. 2 %",
        "-.inf Hz | FREQUENCY | '-.inf Hz' is not a finite number; expected a frequency, e.g. 90 Hz",
        "0x10 | NUMBER | '0x10' is not a plain decimal number; expected a bare number, e.g. 2",
        "1e999 Hz | FREQUENCY | '1e999 Hz' is too large; expected a frequency, e.g. 90 Hz",
        "soft | STIFFNESS | 'soft' does not start with a number; expected a stiffness, e.g. 12 N/mm",
        "3 furlong | LENGTH | '3 furlong': unit 'furlong' is not known; expected a length, e.g. 24 mm",
        "3 mm/s | LENGTH | '3 mm/s' is not a length; expected a length, e.g. 24 mm",
        "5 % | NUMBER | '5%' has a unit; expected a bare number, e.g. 5"})
    void aWrongAmountIsExplained(String text, Dimension dimension, String message) {
        assertThatThrownBy(() -> Amounts.read(text, dimension)).isInstanceOf(WrongAmountException.class).hasMessage(message);
    }

    @ParameterizedTest
    @EnumSource(Dimension.class)
    void printedInAnyUnitEveryValueReadsBackTheSame(Dimension dimension) {
        Random random = new Random(7);
        for (int i = 0; i < 400; i++) {
            double value = (random.nextDouble() - 0.3) * Math.pow(10, random.nextInt(24) - 12);
            for (Unit unit : dimension.units()) {
                assertThat(Amounts.read(Amounts.print(value, unit), dimension)).isEqualTo(value);
            }
            assertThat(Amounts.read(Amounts.print(value, dimension), dimension)).isEqualTo(value);
        }
    }

    @Test
    void printsAsAPersonWouldWriteIt() {
        assertThat(Amounts.print(0.062, Dimension.LENGTH)).isEqualTo("62 mm");
        assertThat(Amounts.print(9000, Dimension.STIFFNESS)).isEqualTo("9 N/mm");
        assertThat(Amounts.print(0.35e-9, Dimension.SENSITIVITY)).isEqualTo("0.35 ppb/g");
        assertThat(Amounts.print(0, Dimension.MASS)).isEqualTo("0 kg");
        assertThat(Amounts.print(1.5)).isEqualTo("1.5");
        assertThat(Amounts.print(1e-12)).isEqualTo("1.0e-12");
    }
}

package quietband.model.compile;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.catchThrowableOfType;
import static org.assertj.core.api.Assertions.within;

import java.nio.charset.StandardCharsets;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import quietband.model.Axis;
import quietband.model.Cancellation;
import quietband.model.Design;
import quietband.model.Platform;
import quietband.model.quantity.Quantities;
import quietband.model.text.CsvTable;
import quietband.model.text.ModelException;
import quietband.model.text.TextFile;
import quietband.response.Models;

/** Filters from a file, their stability, and the numbers of a design that follow others. */
class FilterFileTest {

    private static final String HEADER = "sensor_axis,kind,index,b0,b1,b2,a1,a2";

    private static FilterFile read(String header, String rows) {
        return FilterFile.read(CsvTable.of(TextFile.of("f.csv", (header + "\n" + rows).getBytes(StandardCharsets.UTF_8))));
    }

    @Test
    void taps_stand_by_their_delay_and_sections_by_their_number_whatever_the_order_of_the_rows() {
        FilterFile file = read(HEADER + ",rate_hz", """
            x,section,2,5,6,7,0.1,0.2,
            x,tap,3,-0.5,,,,,48000
            x,tap,0,1.25,0,,,,
            x,section,1,1,2,3,-0.4,0.3,
            z,tap,7,2,,,,,
            """);
        assertThat(file.filters().get(0).tapIndex()).containsExactly(0, 3);
        assertThat(file.filters().get(0).taps()).containsExactly(1.25, -0.5);
        assertThat(file.filters().get(0).sections()).isDeepEqualTo(new double[][] {{1, 2, 3, -0.4, 0.3}, {5, 6, 7, 0.1, 0.2}});
        assertThat(file.filters().get(1).taps()).isEmpty();
        assertThat(file.filters().get(2).tapIndex()).containsExactly(7);
        assertThat(file.rates()).containsExactly(new FilterFile.Rate(48000, 3));
    }

    @ParameterizedTest
    @CsvSource(delimiter = '|', value = {
        "u,tap,0,1,,,, | f.csv:2: sensor_axis: 'u' is no axis; write x, y or z",
        "x,tap,-1,1,,,, | f.csv:2: index: '-1' is no index; write a whole number from 0",
        "x,tap,0.5,1,,,, | f.csv:2: index: '0.5' is no index",
        "x,fir,0,1,,,, | f.csv:2: kind: 'fir' is not known; write tap or section",
        "x,tap,0,1,2,,, | f.csv:2: b1: a tap has only b0; leave it empty or write 0",
        "x,tap,0,,,,, | f.csv:2: b0: has no number; write one",
        "x,section,1,1,0,0,1.5,0.4 | f.csv:2: a2: the section is unstable; |a2| < 1 and |a1| < 1 + a2 are due"})
    void a_wrong_row_is_told_with_its_line_and_column(String row, String said) {
        ModelException e = catchThrowableOfType(ModelException.class, () -> read(HEADER, row));
        assertThat(e.problems()).hasSize(1);
        assertThat(e.getMessage()).startsWith(said.strip());
        ModelException twice = catchThrowableOfType(ModelException.class, () -> read(HEADER, "y,tap,4,1,,,,\ny,tap,4,2,,,,"));
        assertThat(twice.getMessage()).isEqualTo("f.csv:3: index: is taken; number the taps of an axis apart");
    }

    /** Second road: the larger root of z^2 + a1 z + a2 in closed form. */
    @Test
    void a_section_is_stable_exactly_when_both_roots_lie_inside_the_unit_circle() {
        Random random = new Random(8);
        int stable = 0;
        for (int i = 0; i < 2000; i++) {
            double a1 = 5 * random.nextDouble() - 2.5;
            double a2 = 3 * random.nextDouble() - 1.5;
            double square = a1 * a1 / 4 - a2;
            double radius = square < 0 ? Math.sqrt(a2) : Math.abs(a1) / 2 + Math.sqrt(square);
            assertThat(FilterFile.stable(new double[] {1, 0, 0, a1, a2})).as("%s, %s", a1, a2).isEqualTo(radius < 1);
            stable += radius < 1 ? 1 : 0;
        }
        assertThat(stable).isBetween(400, 800);
    }

    private static Design follower() {
        return Models.of(Models.oscillator(", orientation: {axis: z, angle: 90 deg}")
            + Models.platform("stiffness: 10 N/mm", "") + "cancellation: {sensor: {place: housing}}\n");
    }

    // rounding: a ratio is taken and multiplied back
    @Test
    void weights_inertia_and_output_follow_what_they_are_made_of() {
        Design d = follower();
        Quantities q = d.quantities();
        Design other = d.with(q.with("oscillator.resonator.sensitivity.x", 2e-9).with("platform.size.z", 0.05)
            .with("platform.mass", 0.4).with("oscillator.carrier", 5e6));
        // x turned by 90 degrees about z is y
        assertThat(other.weightsPerG().y()).isCloseTo(2e-9, within(1e-22));
        assertThat(other.weightsPerG().x()).isCloseTo(0.4e-9, within(1e-22));
        Platform.Inertia j = other.platform().orElseThrow().inertia();
        assertThat(j.xx()).isCloseTo(0.4 * (0.062 * 0.062 + 0.05 * 0.05) / 12, within(1e-15));
        assertThat(j.zz()).isCloseTo(0.4 * 2 * 0.062 * 0.062 / 12, within(1e-15));
        assertThat(other.oscillator().outputHz()).isEqualTo(5e6);
    }

    @Test
    void a_followed_number_that_is_varied_itself_keeps_its_ratio_to_what_it_follows() {
        Design d = follower();
        Quantities q = d.quantities();
        double w = d.weightsPerG().get(Axis.Z);
        // 10 % more weight than the resonator has, on a resonator that has 25 % more: 1.1 x 1.25 of the nominal
        Design both = d.with(q.with("cancellation.weights.z", 1.1 * w).with("oscillator.resonator.sensitivity.z", 1.25 * 1.2e-9));
        assertThat(both.weightsPerG().z()).isCloseTo(1.1 * 1.25 * 1.2e-9, within(1e-22));
        Design heavier = d.with(q.with("platform.inertia.yy", 2 * d.platform().orElseThrow().inertia().yy()).with("platform.mass", 0.42));
        assertThat(heavier.platform().orElseThrow().inertia().yy())
            .isCloseTo(4 * d.platform().orElseThrow().inertia().yy(), within(1e-15));
    }

    @Test
    void a_unit_calibrated_to_the_design_keeps_its_nominal_weights() {
        String text = Models.oscillator("") + "cancellation: {calibrated: design, sensor: {place: housing}}\n";
        Design d = Models.of(text);
        Quantities drawn = d.quantities().with("oscillator.resonator.sensitivity.x", 0.33e-9);
        assertThat(d.unit(drawn).weightsPerG().x()).isEqualTo(0.3e-9);
        assertThat(d.unit(drawn).oscillator().resonator().mountedSensitivityPerG().x()).isEqualTo(0.33e-9);
        Design each = Models.of(text.replace("design", "each"));
        Quantities own = each.quantities().with("oscillator.resonator.sensitivity.x", 0.33e-9);
        assertThat(each.unit(own)
            .weightsPerG().x()).isEqualTo(0.33e-9);
        assertThat(each.cancellation().map(Cancellation::calibratedEach)).contains(true);
    }
}

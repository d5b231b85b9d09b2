package quietband.tuning.orient;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import quietband.model.Design;
import quietband.model.Stack;
import quietband.model.Vec;
import quietband.model.edit.ModelFile;
import quietband.model.text.ModelException;
import quietband.response.Models;
import quietband.response.ResidualResponse;

/** Supports of a blank from a table, put into a model, and the residual as a linear function of vector and weights. */
class SupportTableTest {

    private static final String HEAD = "support,points,x_frequency_hz,x_q,y_frequency_hz,y_q,z_frequency_hz,z_q,"
        + "relative_sensitivity,source\n";

    @TempDir
    Path directory;

    private List<SupportRow> read(String rows) throws IOException {
        return SupportTable.read(Files.writeString(directory.resolve("s.csv"), HEAD + rows));
    }

    @Test
    void a_support_brings_its_resonances_and_its_sensitivity_in_proportion() throws IOException {
        List<SupportRow> rows = read("four,4,6000,40,,,7000,50,1,measured\ntwo,2,1400,60,3100,50,720,70,2.5,Invented here\n"
            + "glued,9,,,,,,,0.5,measured\n");
        assertThat(rows).extracting(SupportRow::lowestHz).containsExactly(6000.0, 720.0, Double.POSITIVE_INFINITY);
        assertThat(rows).extracting(SupportRow::invented).containsExactly(false, true, false);
        assertThat(rows.get(0).resonance().on(1)).isFalse();
        String now = ", support: four, support_resonance: {frequency: 6 kHz, q: 9}";
        ModelFile file = ModelFile.parse(Path.of("m.yaml"), Models.oscillator(now));
        SupportRow own = SupportTable.find(rows, "four").orElseThrow();
        Design two = rows.get(1).in(file, own).design();
        // 2.5 times 0.3, -0.4 and 1.2 ppb/g
        assertThat(two.oscillator().resonator().sensitivityPerG().minus(new Vec(0.75e-9, -1e-9, 3e-9)).length()).isLessThan(1e-21);
        assertThat(two.oscillator().resonator().supportResonance().frequencyHz()).isEqualTo(new Vec(1400, 3100, 720));
        assertThat(two.oscillator().resonator().supportResonance().q()).isEqualTo(new Vec(60, 50, 70));
        assertThat(two.oscillator().resonator().support()).isEqualTo("two");
        // from one that is not in the table: as if it had a relative sensitivity of 1; from two to glued a fifth
        Design glued = rows.get(2).in(file, null).design();
        assertThat(glued.oscillator().resonator().sensitivityPerG().x()).isCloseTo(0.15e-9, within(1e-21));
        assertThat(glued.oscillator().resonator().supportResonance().on(0)).isFalse();
        Design fifth = rows.get(2).in(file, rows.get(1)).design();
        assertThat(fifth.oscillator().resonator().sensitivityPerG().z()).isCloseTo(0.24e-9, within(1e-21));
        assertThat(SupportTable.find(rows, "none")).isEmpty();
    }

    @ParameterizedTest
    @CsvSource(delimiter = '|', value = {
        "two points,2,1400,60,,,,,1,measured | s.csv:2: support: 'two points' is no name; a name of its own of letters, digits and hyphens",
        "two,2,-3,60,,,,,1,measured | s.csv:2: x_frequency_hz: '-3' is not above 0; write a number above 0",
        "two,2,1400,,,,,,1,measured | s.csv:2: x_q: has no number; write one",
        "two,2,,,,,,,1, | s.csv:2: source: has none; say where the row comes from, e.g. measured, or invented",
        "two,2,,,,,,,0,measured | s.csv:2: relative_sensitivity: '0' is not above 0"})
    void a_wrong_row_is_told_with_its_line_and_column(String row, String said) {
        assertThatThrownBy(() -> read(row + "\n")).isInstanceOf(ModelException.class)
            .satisfies(e -> assertThat(e.getMessage().replace(directory + "/", "")).contains(said));
    }

    @Test
    void a_name_that_stands_twice_and_an_empty_table_are_told() {
        assertThatThrownBy(() -> read("two,2,,,,,,,1,measured\ntwo,3,,,,,,,1,measured\n")).hasMessageContaining("s.csv:3: support: 'two' "
            + "stands twice");
        assertThatThrownBy(() -> read("")).hasMessageContaining("has no rows; write at least one support");
    }

    // second road: the residual of the design itself; y_j = sum R_ij G_i + sum S_ij w_i is linear, so that only rounding is left
    @Test
    void the_residual_is_a_linear_function_of_vector_and_weights() {
        Design d = Models.of(Models.oscillator(", position: {z: 4 mm}, support_resonance: {frequency: 3 kHz, q: 8}")
            + Models.platform("stiffness: 20 N/mm, damping: 2 N*s/m", ", centre_of_gravity: {x: 2 mm}")
            + "cancellation: {weights: {x: 0.2 ppb/g, z: 1.1 ppb/g}, sensor: {position: {y: 5 mm}, cross_axis: 1 %}, "
            + "path: {latency: 20 us}}\n");
        OrientedResidual oriented = new OrientedResidual(d);
        assertThat(oriented.follows()).isFalse();
        ResidualResponse response = new ResidualResponse(d);
        double[] g = {0.3e-9, -0.4e-9, 1.2e-9};
        double[] w = {0.2e-9, 0, 1.1e-9};
        double[] rs = new double[36];
        double[] re = new double[3];
        double[] im = new double[3];
        for (double f : new double[] {20, 97, 400}) {
            oriented.at(f, rs);
            response.at(f);
            response.residual(Stack.COMBINED, re, im);
            for (int j = 0; j < 3; j++) {
                double sumRe = 0;
                double sumIm = 0;
                for (int i = 0; i < 3; i++) {
                    sumRe += rs[6 * j + 2 * i] * g[i] + rs[18 + 6 * j + 2 * i] * w[i];
                    sumIm += rs[6 * j + 2 * i + 1] * g[i] + rs[18 + 6 * j + 2 * i + 1] * w[i];
                }
                assertThat(sumRe / 1e-9).isCloseTo(re[j] / 1e-9, within(1e-11));
                assertThat(sumIm / 1e-9).isCloseTo(im[j] / 1e-9, within(1e-11));
            }
        }
    }
}

package quietband.report.file;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.IOException;
import java.io.StringReader;
import java.io.StringWriter;
import java.util.List;
import java.util.Random;
import org.apache.commons.csv.CSVFormat;
import org.apache.commons.csv.CSVRecord;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import quietband.units.Dimension;

/** Tables and JSON that read back, numbers for people, and result directories after a process was killed. */
class TableTextTest {

    /** Any text comes back through a reader of the format; a number to twelve digits; what does not exist is an empty cell. */
    @Test
    void every_row_of_a_table_reads_back() throws IOException {
        Random random = new Random(2);
        String odd = "ab,\"'\n- #.x";
        StringWriter out = new StringWriter();
        CsvWriter csv = new CsvWriter(out, List.of("name", "value", "same"));
        String[] texts = new String[300];
        double[] values = new double[300];
        for (int i = 0; i < 300; i++) {
            StringBuilder text = new StringBuilder();
            for (int k = random.nextInt(6); k > 0; k--) {
                text.append(odd.charAt(random.nextInt(odd.length())));
            }
            texts[i] = text.toString();
            values[i] = i % 7 == 0 ? Double.NaN : random.nextGaussian() * Math.pow(10, random.nextInt(30) - 15);
            csv.cell(texts[i]).cell(values[i]).cell(values[i]).end();
        }
        List<CSVRecord> rows = CSVFormat.DEFAULT.builder().setRecordSeparator("\n").get().parse(new StringReader(out.toString()))
            .getRecords();
        assertThat(rows.get(0).values()).containsExactly("name", "value", "same");
        for (int i = 0; i < 300; i++) {
            CSVRecord row = rows.get(i + 1);
            assertThat(row.get(0)).isEqualTo(texts[i]);
            assertThat(row.get(2)).isEqualTo(row.get(1));
            if (Double.isNaN(values[i])) {
                assertThat(row.get(1)).isEmpty();
            } else {
                // half a unit of the twelfth digit
                assertThat(Math.abs(Double.parseDouble(row.get(1)) - values[i])).isLessThanOrEqualTo(5e-12 * Math.abs(values[i]));
            }
        }
    }

    @Test
    void a_row_with_a_cell_too_few_is_a_mistake_of_the_program() throws IOException {
        CsvWriter csv = new CsvWriter(new StringWriter(), List.of("a", "b"));
        csv.cell(1);
        assertThatThrownBy(csv::end).isInstanceOf(IllegalStateException.class).hasMessage("1 cells for 2 columns");
    }

    @Test
    void json_has_null_for_what_is_not_finite_and_escapes_its_texts() {
        Json json = new Json();
        json.object(() -> json.field("a", 0.1).field("b", Double.POSITIVE_INFINITY).field("c", "x\"\n").field("d", (String) null)
            .field("e", (Boolean) null).field("f", true).field("g", 7L)
            .array("h", () -> json.pair(1, 2.5).item("i")).object("j", () -> json.field("k", -1e-9)));
        assertThat(json.text().replaceAll("\\s", "")).isEqualTo("{\"a\":0.1,\"b\":null,\"c\":\"x\\\"\\n\",\"d\":null,\"e\":null,\"f\":true,"
            + "\"g\":7,\"h\":[[1,2.5],\"i\"],\"j\":{\"k\":-1.0e-9}}".replace("-1.0e-9", number(-1e-9)));
        assertThat(json.text()).endsWith("}\n");
    }

    private static String number(double v) {
        Json json = new Json();
        json.object(() -> json.field("v", v));
        return json.text().replaceAll("[^0-9eE.+-]", "");
    }

    @ParameterizedTest
    @CsvSource({"17, 17 Hz", "999.4, 999.4 Hz", "999.6, 0.9996 kHz", "2000, 2 kHz", "123456, 123.5 kHz"})
    void a_frequency_is_told_in_four_digits_and_its_unit(double f, String text) {
        assertThat(QuantityText.hz(f)).isEqualTo(text);
    }

    @Test
    void stretches_share_their_unit_where_they_can() {
        assertThat(QuantityText.range(10, 20)).isEqualTo("10 to 20 Hz");
        assertThat(QuantityText.range(90, 2000)).isEqualTo("90 Hz to 2 kHz");
        assertThat(QuantityText.ranges(List.of(), "nowhere")).isEqualTo("nowhere");
        assertThat(QuantityText.ranges(List.of(new double[] {10, 20}, new double[] {1000, 2000}), ""))
            .isEqualTo("10 to 20 Hz, 1 to 2 kHz");
        assertThat(QuantityText.ppb(0.35e-9)).isEqualTo("0.35");
        assertThat(QuantityText.db(-3.0103)).isEqualTo("-3.01 dB");
        assertThat(QuantityText.db(300)).isEqualTo("over 299 dB");
        assertThat(QuantityText.db(-300)).isEqualTo("below -299 dB");
        // in the unit that suits the other: 9 N/mm beside 12000 N/m
        assertThat(QuantityText.amount(9000, 12_000, Dimension.STIFFNESS, 3)).isEqualTo("9 N/mm");
        assertThat(QuantityText.amount(0.00025, 0.002, Dimension.LENGTH, 3)).isEqualTo("0.25 mm");
        assertThat(QuantityText.amount(3, 0, Dimension.NUMBER, 3)).isEqualTo("3");
    }
}

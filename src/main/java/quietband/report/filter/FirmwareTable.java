package quietband.report.filter;

import java.io.IOException;
import java.util.List;
import quietband.filter.fixedpoint.FixedDesign;
import quietband.filter.fixedpoint.FixedPoint;
import quietband.model.Axis;
import quietband.report.file.CsvWriter;

/** {@code firmware.csv}: filters in whole numbers. */
final class FirmwareTable {

    static final List<String> COLUMNS = List.of("sensor_axis", "kind", "index", "b0_int", "b1_int", "b2_int", "b_shift", "a1_int", "a2_int",
        "a_shift", "scale_log2", "word_bits", "rate_hz");

    private FirmwareTable() { }

    /**
     * Writes {@code firmware.csv}: whole numbers, coefficient = integer / 2^shift; the word behind a row stands for its value over
     * 2^scale_log2, which the shifts of b count in.
     */
    static void write(CsvWriter table, FixedDesign fixed, double rateHz) throws IOException {
        for (Axis axis : Axis.ALL) {
            FixedPoint p = fixed.filters().get(axis.ordinal());
            int[] index = p.rounded().tapIndex();
            for (int k = 0; k < index.length; k++) {
                row(table.cell(axis.letter()).cell("tap").whole(index[k]), new long[] {p.taps().integers()[k]},
                    p.taps().shift(), new long[0], 0);
                table.whole(p.tapScale()).whole(p.bits()).cell(rateHz).end();
            }
            for (int m = 0; m < p.stages().size(); m++) {
                FixedPoint.Stage s = p.stages().get(m);
                row(table.cell(axis.letter()).cell("section").whole(m), s.b().integers(), s.b().shift(),
                    s.a().integers(), s.a().shift());
                table.whole(s.scale()).whole(p.bits()).cell(rateHz).end();
            }
        }
    }

    private static void row(CsvWriter table, long[] b, int bShift, long[] a, int aShift) {
        for (int k = 0; k < 3; k++) {
            integer(table, b, k);
        }
        table.whole(bShift);
        for (int k = 0; k < 2; k++) {
            integer(table, a, k);
        }
        integer(table, new long[] {aShift}, a.length == 0 ? 1 : 0);
    }

    private static void integer(CsvWriter table, long[] values, int k) {
        if (k < values.length) {
            table.whole(values[k]);
        } else {
            table.cell(Double.NaN);
        }
    }
}

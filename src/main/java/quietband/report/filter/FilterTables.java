package quietband.report.filter;

import java.io.IOException;
import java.io.Writer;
import java.util.Map;
import quietband.cancellation.CancellationNoise;
import quietband.filter.allowed.AllowedErrors;
import quietband.filter.allowed.AllowedErrors.Kind;
import quietband.filter.allowed.AllowedErrors.Span;
import quietband.filter.allowed.Crossover;
import quietband.filter.design.FilterFacts;
import quietband.filter.fixedpoint.FixedDesign;
import quietband.filter.fixedpoint.FixedPoint;
import quietband.model.Axis;
import quietband.model.Cancellation;
import quietband.model.Design;
import quietband.report.file.CsvWriter;

/** Tables that go with a filter. */
final class FilterTables {

    private FilterTables() { }

    /** Writes {@code allowed.csv}: each error alone to the limit; empty where nothing limits it. */
    static void allowed(Writer writer, AllowedErrors allowed, double[] grid) throws IOException {
        CsvWriter table = new CsvWriter(writer, "frequency_hz", "axis", "gain_percent", "phase_deg", "delay_us");
        for (double f : grid) {
            for (Axis axis : Axis.ALL) {
                Map<Kind, Span> spans = allowed.at(axis, f);
                table.cell(f).cell(axis.letter()).cell(100 * spans.get(Kind.GAIN).nearest())
                    .cell(Math.toDegrees(spans.get(Kind.PHASE).nearest())).cell(1e6 * spans.get(Kind.DELAY).nearest()).end();
            }
        }
    }

    /** Writes {@code weights.csv}. */
    static void weights(Writer writer, Design design) throws IOException {
        CsvWriter table = new CsvWriter(writer, "axis", "ppb_per_g", "volts_per_g", "counts_per_g");
        for (Axis axis : Axis.ALL) {
            double w = design.weightsPerG().get(axis.ordinal());
            table.cell(axis.letter()).cell(1e9 * w).cell(volts(design, axis)).cell(counts(design, axis)).end();
        }
    }

    /** Volts at the port that move the frequency as much as 1 g; NaN without a slope. */
    static double volts(Design design, Axis axis) {
        double slope = design.cancellation().orElseThrow().tuning().slopePerV();
        return slope == 0 ? Double.NaN : design.weightsPerG().get(axis.ordinal()) / slope;
    }

    /** Counts of the sensor's converter per g; NaN without one. */
    static double counts(Design design, Axis axis) {
        Cancellation c = design.cancellation().orElseThrow();
        return c.path().converterBits() == 0 ? Double.NaN : 1 / CancellationNoise.quantiserStepG(c, axis.ordinal());
    }

    /**
     * Writes {@code firmware.csv}: whole numbers, coefficient = integer / 2^shift; the word behind a row stands for its value over
     * 2^scale_log2, which the shifts of b count in.
     */
    static void firmware(Writer writer, FixedDesign fixed, double rateHz) throws IOException {
        CsvWriter table = new CsvWriter(writer, "sensor_axis", "kind", "index", "b0_int", "b1_int", "b2_int", "b_shift", "a1_int", "a2_int",
            "a_shift", "scale_log2", "word_bits", "rate_hz");
        for (Axis axis : Axis.ALL) {
            FixedPoint p = fixed.filters().get(axis.ordinal());
            int[] index = p.rounded().tapIndex();
            for (int k = 0; k < index.length; k++) {
                row(table.cell(axis.letter()).cell("tap").cell(Integer.toString(index[k])), new long[] {p.taps().integers()[k]},
                    p.taps().shift(), new long[0], 0);
                table.cell(Integer.toString(p.tapScale())).cell(Integer.toString(p.bits())).cell(rateHz).end();
            }
            for (int m = 0; m < p.stages().size(); m++) {
                FixedPoint.Stage s = p.stages().get(m);
                row(table.cell(axis.letter()).cell("section").cell(Integer.toString(m)), s.b().integers(), s.b().shift(),
                    s.a().integers(), s.a().shift());
                table.cell(Integer.toString(s.scale())).cell(Integer.toString(p.bits())).cell(rateHz).end();
            }
        }
    }

    private static void row(CsvWriter table, long[] b, int bShift, long[] a, int aShift) {
        for (int k = 0; k < 3; k++) {
            integer(table, b, k);
        }
        table.cell(Integer.toString(bShift));
        for (int k = 0; k < 2; k++) {
            integer(table, a, k);
        }
        integer(table, new long[] {aShift}, a.length == 0 ? 1 : 0);
    }

    private static void integer(CsvWriter table, long[] values, int k) {
        if (k < values.length) {
            table.cell(Long.toString(values[k]));
        } else {
            table.cell(Double.NaN);
        }
    }

    /** Writes {@code hand_off.csv}. */
    static void handOff(Writer writer, FilterFacts facts) throws IOException {
        CsvWriter table = new CsvWriter(writer, "more_delay_us", "hand_off_hz", "correction_alone_holds_to_hz", "margin_db");
        for (Crossover h : facts.handOffs()) {
            table.cell(1e6 * h.delay()).cell(h.frequencyHz()).cell(h.holdsTo()).cell(h.marginDb()).end();
        }
    }
}

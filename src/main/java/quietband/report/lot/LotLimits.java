package quietband.report.lot;

import java.io.IOException;
import java.io.Writer;
import quietband.lot.BuildCount;
import quietband.lot.Proportion;
import quietband.lot.SortedLot;
import quietband.report.file.CsvWriter;

/** What other limits would give. */
final class LotLimits {

    private static final int STEPS = 40;

    private LotLimits() { }

    /** Limits from a twentieth of the largest of limit and median up to twice it, evenly. */
    static double[] limits(SortedLot sorted) {
        double[] v = sorted.rising();
        double top = 2 * Math.max(sorted.rule().limitPpbPerG(), v[v.length / 2]);
        double[] limits = new double[STEPS];
        for (int k = 0; k < STEPS; k++) {
            limits[k] = top * (k + 1) / STEPS;
        }
        return limits;
    }

    /** The table. */
    static void write(Writer writer, SortedLot sorted) throws IOException {
        CsvWriter table = new CsvWriter(writer, "limit_ppb_per_g", "share", "low", "high", "law_share", "law_standard_error",
            "built_per_good", "units_to_build");
        for (double limit : limits(sorted)) {
            Proportion p = sorted.shareWithin(limit);
            long n = BuildCount.of(sorted.rule().wanted(), p.estimate(), sorted.rule().confidence());
            table.cell(limit).cell(p.estimate()).cell(p.low()).cell(p.high()).cell(sorted.lawShare(limit)).cell(sorted.lawError(limit))
                .cell(1 / p.estimate()).cell(n < 0 ? Double.NaN : n).end();
        }
    }
}

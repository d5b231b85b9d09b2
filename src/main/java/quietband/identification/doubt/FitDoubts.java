package quietband.identification.doubt;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import quietband.identification.search.FitEstimate;
import quietband.identification.search.FreeValue;
import quietband.identification.search.MeasuredPoints;

/** What is doubtful about a fit, as sentences. */
public final class FitDoubts {

    private static final double ALIKE = 0.98;

    private FitDoubts() { }

    public static List<String> of(FitEstimate e, double[][] correlation, MeasuredPoints seen) {
        List<String> notes = new ArrayList<>();
        for (int i = 0; i < e.u().length; i++) {
            FreeValue v = e.free().get(i);
            for (int j = 0; j < i; j++) {
                if (Math.abs(correlation[i][j]) > ALIKE) {
                    notes.add(String.format(Locale.ROOT, "the data hardly tell %s and %s apart (correlation %.4f): believe what they do "
                        + "together, not each; hold one, or measure where they differ", e.free().get(j).of(), v.of(), correlation[i][j]));
                }
            }
            if (v.detail().quantity().equals("cancellation.error.gain") && e.value(i) < -1) {
                notes.add(v.of() + " came out below -100 %: the sign is reversed, and this cancellation adds where it should take away; "
                    + "is a sensor or cable the wrong way round?");
            }
            if (e.atBound()[i]) {
                notes.add(v.of() + " ended at the edge of what makes sense: the data ask for less, or the model lacks something");
            } else if (e.determined(i) && e.standardError(i) > Math.abs(e.value(i)) / 2 && v.log()) {
                notes.add(v.of() + " is hardly determined: its standard error is more than half of it");
            }
        }
        int out = 0;
        StringBuilder where = new StringBuilder();
        for (int i = 0; i < seen.size(); i++) {
            if (e.outlier()[i]) {
                out++;
                where.append(out > 6 ? "" : String.format(Locale.ROOT, "%s%.6g Hz (%s)", out > 1 ? ", " : "", seen.frequency()[i],
                    seen.series().get(seen.of()[i]).axis().letter()));
            }
        }
        if (out > 0) {
            notes.add(out + (out == 1 ? " outlier was" : " outliers were") + " left out, at " + where + (out > 6 ? ", ..." : "")
                + "; --keep-outliers counts all");
        }
        return notes;
    }
}

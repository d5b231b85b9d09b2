package quietband.report.page;

import quietband.report.file.Provenance;

/**
 * The top of any page.
 *
 * @param title   of the model; its file's name when it has none
 * @param verdict HOLDS, DOES NOT HOLD or NO VERDICT
 * @param kind    holds, fails or none: how the verdict looks
 * @param why     what is tightest or broken
 * @param from    where it comes from
 * @param date    of the report
 */
public record PageHead(String title, String verdict, String kind, String why, Provenance from, String date) {

    /** The first digits of the model's hash. */
    public String shortHash() {
        return from.modelHash().substring(0, Math.min(12, from.modelHash().length()));
    }
}

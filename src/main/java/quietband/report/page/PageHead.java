package quietband.report.page;

import java.time.LocalDate;
import java.time.ZoneId;
import java.time.format.DateTimeFormatter;
import java.util.Locale;
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

    private static final DateTimeFormatter DATE = DateTimeFormatter.ofPattern("d MMMM yyyy", Locale.ENGLISH);

    /** The day, as people write it. */
    public static String today() {
        return LocalDate.now(ZoneId.systemDefault()).format(DATE);
    }
}

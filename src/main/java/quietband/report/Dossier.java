package quietband.report;

import java.util.List;
import quietband.response.Assessment;
import quietband.response.FrequencyTable;
import quietband.tuning.Gap;

/**
 * All that the page of an assessment is made from.
 *
 * @param assessment the verdict
 * @param from       where it comes from
 * @param curves     the design on the program's own grid
 * @param gaps       with their causes and cures, the fullest stack first
 * @param yield      what is known of the share of good units, a sentence
 * @param date       of the report, as people write it
 * @param profile    name of the vibration profile; empty when it is written in the model
 * @param modelText  the model file
 */
public record Dossier(Assessment assessment, Provenance from, FrequencyTable curves, List<Gap> gaps, String yield,
                      String date, String profile, String modelText) {

    public Dossier {
        gaps = List.copyOf(gaps);
    }
}

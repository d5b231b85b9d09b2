package quietband.report.assess;

import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.time.LocalDate;
import java.time.ZoneId;
import java.time.format.DateTimeFormatter;
import java.util.List;
import java.util.Locale;
import java.util.stream.Collectors;
import quietband.model.edit.ModelFile;
import quietband.report.file.Provenance;
import quietband.response.FrequencyTable;
import quietband.response.verdict.Assessment;
import quietband.tuning.cures.CoverageGap;

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
public record AssessmentSources(Assessment assessment, Provenance from, FrequencyTable curves, List<CoverageGap> gaps, String yield,
                      String date, String profile, String modelText) {

    private static final DateTimeFormatter DATE = DateTimeFormatter.ofPattern("d MMMM yyyy", Locale.ENGLISH);

    public AssessmentSources {
        gaps = List.copyOf(gaps);
    }

    /**
     * Collects what a page needs.
     *
     * @param curves the design on the program's own grid
     * @param target where the result goes: a result of tolerance may stand beside it
     */
    static AssessmentSources of(ModelFile file, Assessment assessment, FrequencyTable curves, List<CoverageGap> gaps, Provenance from,
                      Path target) {
        String yield = YieldLine.of(target.resolveSibling("tolerance").resolve("summary.json"), from.modelHash());
        return new AssessmentSources(assessment, from, curves, gaps, yield, today(), profile(file), file.text());
    }

    /** The day, as people write it. */
    public static String today() {
        return LocalDate.now(ZoneId.systemDefault()).format(DATE);
    }

    /** Names of the vibration profiles the model refers to. */
    private static String profile(ModelFile file) {
        return file.files().entrySet().stream()
            .filter(e -> new String(e.getValue(), StandardCharsets.UTF_8).contains("density_g2_per_hz"))
            .map(e -> e.getKey().substring(e.getKey().lastIndexOf('/') + 1)).collect(Collectors.joining(", "));
    }
}

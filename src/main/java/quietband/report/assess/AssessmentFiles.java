package quietband.report.assess;

import java.nio.file.Path;
import java.util.List;
import quietband.model.edit.ModelFile;
import quietband.model.text.FileProblem;
import quietband.report.file.Provenance;
import quietband.report.file.ResultDirectory;
import quietband.response.FrequencyTable;
import quietband.response.verdict.Assessment;
import quietband.response.verdict.Assessor;
import quietband.tuning.cures.CoverageGap;
import quietband.tuning.cures.Cures;
import quietband.work.BackgroundParts;

/**
 * The whole result of an assessment: tables, summary, charts and report, written at once.
 *
 * @param assessment what was found, with what is odd in the file before the warnings
 * @param summary    as JSON
 * @param directory  where it is, committed
 */
public record AssessmentFiles(Assessment assessment, String summary, ResultDirectory directory) {

    /**
     * Assesses a model and writes the result.
     *
     * @param frequencies of the tables, Hz
     * @param threads     how many share the work; changes no figure
     * @param target      where the result goes
     */
    public static AssessmentFiles write(ModelFile file, double[] frequencies, int threads, Path target, Provenance from) {
        try (ResultDirectory directory = ResultDirectory.prepare(target, from.mark())) {
            AssessmentPage page = AssessmentPage.begin(file);
            Assessment assessment = Assessor.assess(file.design()).after(file.warnings().stream().map(FileProblem::toString).toList());
            BackgroundParts<List<CoverageGap>> cures = threads > 1 ? BackgroundParts.on("cures", Cures.parts(assessment)) : null;
            FrequencyTable table = FrequencyTable.of(file.design(), frequencies, threads);
            new AssessmentTables(assessment, table).writeTo(directory, threads);
            List<CoverageGap> gaps = cures == null ? Cures.of(assessment) : cures.finish().stream().flatMap(List::stream).toList();
            BackgroundParts<String> json = BackgroundParts.on("summary", List.of(() -> AssessmentSummary.json(assessment, from, gaps)));
            page.writeTo(directory, assessment, gaps, from);
            String summary = json.finish().get(0);
            directory.write("summary.json", w -> w.write(summary));
            directory.commit();
            return new AssessmentFiles(assessment, summary, directory);
        }
    }
}

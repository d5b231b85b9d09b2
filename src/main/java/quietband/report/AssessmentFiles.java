package quietband.report;

import java.nio.file.Path;
import java.util.List;
import quietband.model.ModelFile;
import quietband.model.Problem;
import quietband.response.Assessment;
import quietband.response.Assessor;
import quietband.response.FrequencyTable;
import quietband.spectrum.HeadStart;
import quietband.tuning.Cures;
import quietband.tuning.Gap;

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
            Assessment assessment = Assessor.assess(file.design()).after(file.warnings().stream().map(Problem::toString).toList());
            HeadStart<List<Gap>> cures = threads > 1 ? HeadStart.on("cures", Cures.parts(assessment)) : null;
            FrequencyTable table = FrequencyTable.of(file.design(), frequencies, threads);
            new AssessmentTables(assessment, table).writeTo(directory, threads);
            List<Gap> gaps = cures == null ? Cures.of(assessment) : cures.finish().stream().flatMap(List::stream).toList();
            HeadStart<String> json = HeadStart.on("summary", List.of(() -> AssessmentSummary.json(assessment, from, gaps)));
            page.writeTo(directory, assessment, gaps, from);
            String summary = json.finish().get(0);
            directory.write("summary.json", w -> w.write(summary));
            directory.commit();
            return new AssessmentFiles(assessment, summary, directory);
        }
    }
}

package quietband.study.assess;

import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.function.Supplier;
import java.util.stream.Stream;
import quietband.model.Design;
import quietband.model.edit.ModelFile;
import quietband.model.text.FileProblem;
import quietband.platform.Assembly;
import quietband.response.DesignGrid;
import quietband.response.Effort;
import quietband.response.FrequencyTable;
import quietband.response.verdict.Assessment;
import quietband.response.verdict.Assessor;
import quietband.tuning.cures.CoverageGap;
import quietband.tuning.cures.Cures;
import quietband.work.BackgroundParts;

/**
 * A design assessed.
 *
 * @param file       the model
 * @param assessment what was found, with what is odd in the file before the warnings
 * @param table      at the frequencies asked
 * @param curves     on the program's own grid
 * @param gaps       of the coverage, with their causes and cures, the fullest stack first
 * @param worst      what each cause leaves where the fullest stack is worst
 * @param yield      what is known of the share of good units; empty without a result of tolerance for this model
 */
public record DesignAssessment(ModelFile file, Assessment assessment, FrequencyTable table, FrequencyTable curves, List<CoverageGap> gaps,
                               FrequencyTable.Row worst, Optional<KnownYield> yield) {

    public DesignAssessment {
        gaps = List.copyOf(gaps);
    }

    /**
     * Assesses a model.
     *
     * @param frequencies of the table, Hz
     * @param threads     how many share the work; changes no figure
     * @param target      where the result goes: a result of tolerance may stand beside it
     */
    public static DesignAssessment of(ModelFile file, double[] frequencies, int threads, Path target) {
        Design design = file.design();
        Assembly assembly = design.platform().map(Assembly::new).orElse(null);
        double[] grid = DesignGrid.of(design, assembly, design.requirement().fromHz(), design.requirement().toHz());
        Supplier<FrequencyTable> onGrid = () -> FrequencyTable.of(design, assembly, grid, 1);
        BackgroundParts<FrequencyTable> curves = threads > 1 ? BackgroundParts.on("curves", List.of(onGrid))
            : BackgroundParts.none(List.of(onGrid));
        Assessment found = Assessor.assess(design, assembly, Effort.FULL);
        Assessment assessment = found.after(Stream.concat(file.warnings().stream().map(FileProblem::toString),
            Cures.notSearched(found).stream()).toList());
        BackgroundParts<List<CoverageGap>> cures = threads > 1 ? BackgroundParts.on("cures", Cures.parts(assessment, assembly))
            : BackgroundParts.none(Cures.parts(assessment, assembly));
        FrequencyTable table = FrequencyTable.of(design, assembly, frequencies, threads);
        double at = assessment.verdict(assessment.fullest()).worst().frequencyHz();
        FrequencyTable.Row worst = FrequencyTable.of(design, assembly, new double[] {at}, 1).rows().get(0);
        return new DesignAssessment(file, assessment, table, curves.finish().get(0), cures.finish().stream().flatMap(List::stream).toList(),
            worst, KnownYield.of(target.resolveSibling("tolerance").resolve("summary.json"), file.hash()));
    }
}

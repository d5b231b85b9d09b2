package quietband.cli;

import java.io.PrintWriter;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.Callable;
import java.util.concurrent.CompletableFuture;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;
import quietband.model.ModelFile;
import quietband.model.Problem;
import quietband.report.AssessmentPage;
import quietband.report.AssessmentSummary;
import quietband.report.AssessmentTables;
import quietband.report.AssessmentText;
import quietband.report.Provenance;
import quietband.report.ResultDirectory;
import quietband.response.Assessment;
import quietband.response.Assessor;
import quietband.response.FrequencyTable;
import quietband.spectrum.Parallel;
import quietband.tuning.Cures;
import quietband.tuning.Gap;

/** The main job: what a design leaves, where it holds, where not. */
@Command(name = "assess", mixinStandardHelpOptions = true,
    description = "Computes residual sensitivity, phase noise, coverage and verdict of a model.")
final class AssessCommand implements Callable<Integer> {

    @Parameters(paramLabel = "MODEL", description = "the model file")
    private Path model;

    @Mixin
    private OutputOptions output;

    @Mixin
    private FrequencyOptions frequencies;

    @Option(names = "--check", description = "end with status 1 when a requirement is not met")
    private boolean check;

    @Spec
    private CommandSpec spec;

    @Override
    public Integer call() {
        AssessmentPage.warmUp();
        ModelFile file = ModelFile.read(model);
        double[] f = frequencies.frequencies(file.design().requirement());
        Provenance from = output.provenance("assess", file);
        try (ResultDirectory directory = ResultDirectory.prepare(output.directory(model, "assess"), from.mark())) {
            AssessmentPage page = AssessmentPage.begin(file);
            Assessment assessment = withWarnings(Assessor.assess(file.design()),
                file.warnings().stream().map(Problem::toString).toList());
            CompletableFuture<List<Gap>> cures = output.threads() > 1
                ? CompletableFuture.supplyAsync(() -> Cures.of(assessment)) : null;
            FrequencyTable table = FrequencyTable.of(file.design(), f, output.threads());
            new AssessmentTables(assessment, table).writeTo(directory, output.threads());
            List<Gap> gaps = cures == null ? Cures.of(assessment) : Parallel.get(cures);
            String summary = AssessmentSummary.json(assessment, from, gaps);
            directory.write("summary.json", w -> w.write(summary));
            page.writeTo(directory, assessment, gaps, from);
            directory.commit();
            PrintWriter out = spec.commandLine().getOut();
            out.print(output.json() ? summary : AssessmentText.of(assessment, from));
            out.flush();
            Messages.resultAt(spec, directory);
            return check && !assessment.requirementMet().orElse(true) ? 1 : 0;
        }
    }

    private static Assessment withWarnings(Assessment a, List<String> more) {
        List<String> all = new ArrayList<>(more);
        all.addAll(a.warnings());
        return new Assessment(a.design(), a.verdicts(), a.requirements(), a.modes(), a.travel(), a.rmsG(), a.jitter(),
            a.tones(), all);
    }
}

package quietband.cli;

import java.io.PrintWriter;
import java.nio.file.Path;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;
import quietband.model.ModelFile;
import quietband.report.AssessmentFiles;
import quietband.report.AssessmentText;
import quietband.report.Provenance;

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

    private final Ahead ahead;

    AssessCommand(Ahead ahead) {
        this.ahead = ahead;
    }

    @Override
    public Integer call() {
        ModelFile file = ahead.model(model);
        double[] f = frequencies.frequencies(file.design().requirement());
        Provenance from = output.provenance("assess", file);
        AssessmentFiles files = AssessmentFiles.write(file, f, output.threads(), output.directory(model, "assess"), from);
        PrintWriter out = spec.commandLine().getOut();
        out.print(output.json() ? files.summary() : AssessmentText.of(files.assessment(), from));
        out.flush();
        Messages.resultAt(spec, files.directory());
        return check && !files.assessment().requirementMet().orElse(true) ? 1 : 0;
    }
}

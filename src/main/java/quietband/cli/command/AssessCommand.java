package quietband.cli.command;

import java.io.PrintWriter;
import java.nio.file.Path;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;
import quietband.cli.terminal.TerminalMessages;
import quietband.model.edit.ModelFile;
import quietband.report.assess.AssessmentFiles;
import quietband.report.assess.AssessmentText;
import quietband.report.file.Provenance;

/** The main job: what a design leaves, where it holds, where not. */
@Command(name = "assess", mixinStandardHelpOptions = true,
    description = "Computes residual sensitivity, phase noise, coverage and verdict of a model.")
public final class AssessCommand extends TableCommand implements Callable<Integer> {

    @Parameters(paramLabel = "MODEL", description = "the model file")
    private Path model;

    @Option(names = "--check", description = "end with status 1 when a requirement is not met")
    private boolean check;

    @Spec
    private CommandSpec spec;

    @Override
    public Integer call() {
        ModelFile file = ModelFile.read(model);
        double[] f = frequencies.frequencies(file.design().requirement());
        Provenance from = output.provenance("assess", file);
        AssessmentFiles files = AssessmentFiles.write(file, f, output.threads(), output.directory(model, "assess"), from);
        PrintWriter out = spec.commandLine().getOut();
        out.print(output.json() ? files.summary() : AssessmentText.of(files.assessment(), from));
        out.flush();
        TerminalMessages.resultAt(spec, files.directory());
        return check && !files.assessment().requirementMet().orElse(true) ? 1 : 0;
    }
}

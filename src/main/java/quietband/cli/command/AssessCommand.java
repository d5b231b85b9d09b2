package quietband.cli.command;

import java.io.PrintWriter;
import java.nio.file.Path;
import java.util.concurrent.Callable;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Model.OptionSpec;
import picocli.CommandLine.Model.PositionalParamSpec;
import quietband.cli.Ahead;
import quietband.cli.option.FrequencyOptions;
import quietband.cli.option.OutputOptions;
import quietband.cli.terminal.TerminalMessages;
import quietband.model.edit.ModelFile;
import quietband.report.assess.AssessmentFiles;
import quietband.report.assess.AssessmentText;
import quietband.report.file.Provenance;

/**
 * The main job: what a design leaves, where it holds, where not. It is run again and again, and its options are made here one by
 * one, since reading them from annotations takes a twentieth of the whole run.
 */
public final class AssessCommand implements Callable<Integer> {

    private final PositionalParamSpec path = PositionalParamSpec.builder().paramLabel("MODEL").type(Path.class)
        .description("the model file").build();
    private final OptionSpec check = OptionSpec.builder("--check").type(boolean.class).defaultValue("false")
        .description("end with status 1 when a requirement is not met").build();
    private final OutputOptions output = new OutputOptions();
    private final FrequencyOptions frequencies = new FrequencyOptions();
    private final Ahead ahead;
    private CommandSpec spec;

    public AssessCommand(Ahead ahead) {
        this.ahead = ahead;
    }

    /** The command with its options, for the command line. */
    public CommandSpec spec() {
        spec = CommandSpec.wrapWithoutInspection(this).name("assess").addPositional(path).addOption(check)
            .addMixin("output", output.spec()).addMixin("frequencies", frequencies.spec())
            .addOption(OptionSpec.builder("-h", "--help").usageHelp(true).description("Show this help message and exit.").build())
            .addOption(OptionSpec.builder("-V", "--version").versionHelp(true).description("Print version information and exit.")
                .build());
        spec.usageMessage().description("Computes residual sensitivity, phase noise, coverage and verdict of a model.");
        return spec;
    }

    @Override
    public Integer call() {
        Path model = path.getValue();
        ModelFile file = ahead.model(model);
        double[] f = frequencies.frequencies(file.design().requirement());
        Provenance from = output.provenance("assess", file);
        AssessmentFiles files = AssessmentFiles.write(file, f, output.threads(), output.directory(model, "assess"), from);
        PrintWriter out = spec.commandLine().getOut();
        out.print(output.json() ? files.summary() : AssessmentText.of(files.assessment(), from));
        out.flush();
        TerminalMessages.resultAt(spec, files.directory());
        return check.<Boolean>getValue() && !files.assessment().requirementMet().orElse(true) ? 1 : 0;
    }
}

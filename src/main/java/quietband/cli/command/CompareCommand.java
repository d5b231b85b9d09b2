package quietband.cli.command;

import java.io.PrintWriter;
import java.nio.file.Path;
import java.util.Locale;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;
import quietband.cli.terminal.InputErrorException;
import quietband.cli.terminal.TerminalMessages;
import quietband.identification.MeasuredResponse;
import quietband.model.Stack;
import quietband.model.edit.ModelFile;
import quietband.report.compare.ComparisonFiles;
import quietband.report.compare.DesignComparison;
import quietband.report.compare.MeasuredFiles;
import quietband.report.file.Provenance;
import quietband.report.file.ResultDirectory;

/** Two designs, or prediction and measurement, side by side. */
@Command(name = "compare", mixinStandardHelpOptions = true,
    description = "Compares two models, or a model with a measured response (a .csv file with frequency_hz and per axis "
        + "x_ppb_per_g, x_ratio or x_db, optional x_phase_deg and x_relative_error).")
public final class CompareCommand extends TableCommand implements Callable<Integer> {

    @Parameters(index = "0", paramLabel = "MODEL", description = "the model file")
    private Path model;

    @Parameters(index = "1", paramLabel = "MODEL-or-CSV", description = "another model file, or a measured response")
    private Path other;

    @Option(names = "--stack", paramLabel = "bare|isolated|cancelled|combined",
        description = "which stack was measured; default: the fullest of the model")
    private Stack stack;

    @Spec
    private CommandSpec spec;

    @Override
    public Integer call() {
        ModelFile file = ModelFile.read(model);
        Provenance from = output.provenance("compare", file);
        return other.toString().toLowerCase(Locale.ROOT).endsWith(".csv") ? measured(file, from) : designs(file, from);
    }

    private int designs(ModelFile first, Provenance from) {
        if (stack != null) {
            throw new InputErrorException("--stack names what was measured; two models are compared in every stack: leave it out");
        }
        ModelFile second = ModelFile.read(other);
        double[] f = frequencies.frequencies(first.design().requirement());
        try (ResultDirectory directory = ResultDirectory.prepare(output.directory(model, "compare"), from.mark())) {
            ComparisonFiles files = new ComparisonFiles(DesignComparison.of(first, second), from);
            files.writeTo(directory, f, output.threads());
            directory.commit();
            print(output.json() ? files.json() : files.text(), directory);
        }
        return 0;
    }

    private int measured(ModelFile file, Provenance from) {
        Stack which = stack == null ? Stack.fullest(file.design()) : stack;
        if (!Stack.of(file.design()).contains(which)) {
            throw new InputErrorException("--stack " + which.key() + ": this model has no such stack; it has "
                + String.join(", ", Stack.of(file.design()).stream().map(Stack::key).toList()));
        }
        MeasuredResponse response = MeasuredResponse.read(other);
        try (ResultDirectory directory = ResultDirectory.prepare(output.directory(model, "compare"), from.mark())) {
            MeasuredFiles files = new MeasuredFiles(file.design(), which, String.valueOf(other.getFileName()), response, from);
            files.writeTo(directory);
            directory.commit();
            print(output.json() ? files.json() : files.text(), directory);
        }
        return 0;
    }

    private void print(String text, ResultDirectory directory) {
        PrintWriter out = spec.commandLine().getOut();
        out.print(text);
        out.flush();
        TerminalMessages.resultAt(spec, directory);
    }
}

package quietband.cli.command;

import java.nio.file.Path;
import java.util.Locale;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import quietband.cli.terminal.InputErrorException;
import quietband.identification.MeasuredResponse;
import quietband.model.Stack;
import quietband.model.edit.ModelFile;
import quietband.report.compare.ComparisonReport;
import quietband.report.compare.MeasuredReport;
import quietband.report.file.Provenance;
import quietband.study.compare.DesignComparison;
import quietband.study.compare.MeasurementComparison;

/** Two designs, or prediction and measurement, side by side. */
@Command(name = "compare", mixinStandardHelpOptions = true,
    description = "Compares two models, or a model with a measured response (a .csv file with frequency_hz and per axis "
        + "x_ppb_per_g, x_ratio or x_db, optional x_phase_deg and x_relative_error).")
public final class CompareCommand extends TableCommand implements Runnable {

    @Parameters(index = "1", paramLabel = "MODEL-or-CSV", description = "another model file, or a measured response")
    private Path other;

    @Option(names = "--stack", paramLabel = "bare|isolated|cancelled|combined",
        description = "which stack was measured; default: the fullest of the model")
    private Stack stack;


    @Override
    public void run() {
        ModelFile file = ModelFile.read(model);
        Provenance from = output.provenance("compare", file);
        if (other.toString().toLowerCase(Locale.ROOT).endsWith(".csv")) {
            measured(file, from);
        } else {
            designs(file, from);
        }
    }

    private void designs(ModelFile first, Provenance from) {
        if (stack != null) {
            throw new InputErrorException("--stack names what was measured; two models are compared in every stack: leave it out");
        }
        ModelFile second = ModelFile.read(other);
        double[] f = frequencies.frequencies(first.design().requirement());
        write(model, from, () -> ComparisonReport.of(DesignComparison.of(first, second, f, output.threads()), from));
    }

    private void measured(ModelFile file, Provenance from) {
        Stack which = stack == null ? Stack.fullest(file.design()) : stack;
        if (!Stack.of(file.design()).contains(which)) {
            throw new InputErrorException("--stack " + which.key() + ": this model has no such stack; it has "
                + String.join(", ", Stack.of(file.design()).stream().map(Stack::key).toList()));
        }
        MeasuredResponse response = MeasuredResponse.read(other);
        write(model, from, () -> MeasuredReport.of(MeasurementComparison.of(file.design(), which, String.valueOf(other.getFileName()),
            response), from));
    }
}

package quietband.cli.command;

import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;
import quietband.cli.terminal.InputErrorException;
import quietband.model.Axis;
import quietband.model.edit.ModelFile;
import quietband.report.change.OrientReport;
import quietband.report.file.Provenance;
import quietband.study.orient.OrientStudy;
import quietband.tuning.orient.Orientation;
import quietband.tuning.orient.SupportRow;
import quietband.tuning.orient.SupportTable;

/** The best orientation of the resonator and the best support of its blank. */
@Command(name = "orient", mixinStandardHelpOptions = true,
    description = "Finds the best orientation of the resonator and writes the model with it; with a table of supports also "
        + "compares those.")
public final class OrientCommand extends TableCommand implements Runnable {

    @Option(names = "--goal", paramLabel = "axis|residual|noise", defaultValue = "residual",
        description = "what is made least: the largest component of the vector; the worst residual as seen through platform and "
            + "cancellation, over the limit where there is one; the integrated phase noise in the model's vibration; "
            + "default: ${DEFAULT-VALUE}")
    private Orientation.Goal goal;

    @Option(names = "--supports", paramLabel = "FILE.csv",
        description = "compare the supports of this table, each with its best orientation, e.g. models/supports.csv")
    private Path supports;

    @Option(names = "--support", paramLabel = "NAME", description = "write the model with this support of the table")
    private String support;


    @Override
    public void run() {
        ModelFile file = ModelFile.read(model);
        check(file);
        double[] f = frequencies.frequencies(file.design().requirement());
        List<SupportRow> table = supports == null ? List.of() : SupportTable.read(supports);
        Optional<SupportRow> chosen = support == null ? Optional.empty() : Optional.of(SupportTable.find(table, support)
            .orElseThrow(() -> new InputErrorException("--support " + support + ": " + (supports == null ? "name the table with --supports"
                : "the table has " + String.join(", ", table.stream().map(SupportRow::name).toList())))));
        Provenance from = output.provenance("orient", file);
        write(model, from, () -> OrientReport.of(OrientStudy.of(file, goal, table, chosen, f, output.threads()), from));
    }

    private void check(ModelFile file) {
        if (!(file.design().oscillator().resonator().sensitivityPerG().length() > 0)) {
            throw new InputErrorException(model + ": oscillator.resonator.sensitivity is 0 on every axis: there is nothing to turn");
        }
        boolean driven = Axis.ALL.stream().anyMatch(a -> file.design().vibration().drive(a).isPresent());
        if (goal == Orientation.Goal.NOISE && !driven) {
            throw new InputErrorException("--goal noise: " + model
                + " has no vibration.random that drives an axis; write one, or take --goal seen");
        }
    }
}

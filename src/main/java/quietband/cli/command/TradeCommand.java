package quietband.cli.command;

import java.util.List;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;
import quietband.cli.option.VaryOption;
import quietband.cli.terminal.InputErrorException;
import quietband.cli.terminal.RunProgress;
import quietband.model.edit.ModelFile;
import quietband.report.change.TradeReport;
import quietband.report.change.TradeSearchReport;
import quietband.report.file.Provenance;
import quietband.study.trade.DesignSearch;
import quietband.tuning.trade.TradeSweep;
import quietband.tuning.trade.VariedQuantity;
import quietband.units.Unit;

/** Quantities swept against each other, or searched for the best design. */
@Command(name = "trade", mixinStandardHelpOptions = true,
    description = "Sweeps one or two quantities and shows worst margin, coverage, jitter and travel; or, with "
        + "--search, finds within the "
        + "bounds of any number of quantities the design with the best worst margin or yield.")
public final class TradeCommand extends ModelCommand implements Runnable {

    private static final int MOST = 40_000;

    @Option(names = "--vary", required = true, paramLabel = "\"PATH = A to B, N steps\"",
        description = "a quantity and its values, e.g. "
        + "\"platform.springs.stiffness = 6 N/mm to 14 N/mm, 21 steps\"; 21 steps when not said")
    private List<String> vary;

    @Option(names = "--search", arity = "0..1", fallbackValue = "margin", paramLabel = "margin|yield",
        description = "find the best design within the bounds instead; margin when not said; yield goes on from the "
            + "best margin, drawing --units for each design it looks at, which takes a while")
    private DesignSearch.Goal search;

    @Option(names = "--units", paramLabel = "N", defaultValue = "500",
        description = "units drawn for each yield; default: ${DEFAULT-VALUE}")
    private long units;


    @Override
    public void run() {
        ModelFile file = ModelFile.read(model);
        List<VaryOption> options = vary.stream().map(text -> VaryOption.read(text, file.design())).toList();
        VaryOption.apart(options);
        List<VariedQuantity> axes = options.stream().map(VaryOption::vary).toList();
        List<Unit> shown = options.stream().map(VaryOption::unit).toList();
        Provenance from = output.provenance("trade", file);
        if (search == null) {
            sweep(file, axes, shown, from);
        } else {
            search(file, axes, shown, from);
        }
    }

    private void sweep(ModelFile file, List<VariedQuantity> axes, List<Unit> shown, Provenance from) {
        if (axes.size() > 2) {
            throw new InputErrorException("a sweep takes one --vary or two; --search takes any number");
        }
        long count = axes.stream().mapToLong(VariedQuantity::steps).reduce(1, (a, b) -> a * b);
        if (count > MOST) {
            throw new InputErrorException("--vary: " + count + " designs are too many; at most " + MOST + ", so fewer steps");
        }
        write(model, from, () -> {
            try (RunProgress progress = progress()) {
                return TradeReport.of(TradeSweep.of(file.design(), axes, output.threads(), progress::progress), shown, from);
            }
        });
    }

    private RunProgress progress() {
        return new RunProgress(spec.commandLine().getErr(), "trade");
    }

    private void search(ModelFile file, List<VariedQuantity> axes, List<Unit> shown, Provenance from) {
        if (search == DesignSearch.Goal.YIELD && units < 10) {
            throw new InputErrorException("--units " + units + ": at least 10");
        }
        write(model, from, () -> {
            try (RunProgress progress = progress()) {
                return TradeSearchReport.of(DesignSearch.of(file, axes, search, units, output.seed(), output.threads(), progress::judged),
                    shown, from);
            }
        });
    }
}

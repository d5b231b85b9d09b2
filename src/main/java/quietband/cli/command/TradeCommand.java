package quietband.cli.command;

import java.io.PrintWriter;
import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.concurrent.Callable;
import java.util.function.ToDoubleFunction;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;
import quietband.cli.option.VaryOption;
import quietband.cli.terminal.InputErrorException;
import quietband.cli.terminal.RunProgress;
import quietband.cli.terminal.TerminalMessages;
import quietband.model.Design;
import quietband.model.edit.ModelFile;
import quietband.report.change.TradeFiles;
import quietband.report.change.TradeSearchFiles;
import quietband.report.file.Provenance;
import quietband.report.file.ResultDirectory;
import quietband.tolerance.campaign.MonteCarlo;
import quietband.tolerance.campaign.MonteCarloResult;
import quietband.tolerance.judge.MonteCarloPlan;
import quietband.tuning.trade.TradeSearch;
import quietband.tuning.trade.TradeSweep;
import quietband.tuning.trade.VariedQuantity;
import quietband.units.Unit;

/** Quantities swept against each other, or searched for the best design. */
@Command(name = "trade", mixinStandardHelpOptions = true,
    description = "Sweeps one or two quantities and shows worst margin, coverage, jitter and travel; or, with "
        + "--search, finds within the "
        + "bounds of any number of quantities the design with the best worst margin or yield.")
public final class TradeCommand extends ResultCommand implements Callable<Integer> {

    /** What a search makes as large as it can. */
    enum Goal { MARGIN, YIELD }

    private static final int MOST = 40_000;

    @Parameters(paramLabel = "MODEL", description = "the model file")
    private Path model;

    @Option(names = "--vary", required = true, paramLabel = "\"PATH = A to B, N steps\"",
        description = "a quantity and its values, e.g. "
        + "\"platform.springs.stiffness = 6 N/mm to 14 N/mm, 21 steps\"; 21 steps when not said")
    private List<String> vary;

    @Option(names = "--search", arity = "0..1", fallbackValue = "margin", paramLabel = "margin|yield",
        description = "find the best design within the bounds instead; margin when not said; yield goes on from the "
            + "best margin, drawing --units for each design it looks at, which takes a while")
    private Goal search;

    @Option(names = "--units", paramLabel = "N", defaultValue = "500",
        description = "units drawn for each yield; default: ${DEFAULT-VALUE}")
    private long units;

    @Spec
    private CommandSpec spec;

    @Override
    public Integer call() {
        ModelFile file = ModelFile.read(model);
        List<VaryOption> options = vary.stream().map(text -> VaryOption.read(text, file.design())).toList();
        VaryOption.apart(options);
        List<VariedQuantity> axes = options.stream().map(VaryOption::vary).toList();
        List<Unit> shown = options.stream().map(VaryOption::unit).toList();
        Provenance from = output.provenance("trade", file);
        return search == null ? sweep(file, axes, shown, from) : search(file, axes, shown, from);
    }

    private int sweep(ModelFile file, List<VariedQuantity> axes, List<Unit> shown, Provenance from) {
        if (axes.size() > 2) {
            throw new InputErrorException("a sweep takes one --vary or two; --search takes any number");
        }
        long count = axes.stream().mapToLong(VariedQuantity::steps).reduce(1, (a, b) -> a * b);
        if (count > MOST) {
            throw new InputErrorException("--vary: " + count + " designs are too many; at most " + MOST + ", so fewer steps");
        }
        try (ResultDirectory directory = ResultDirectory.prepare(output.directory(model, "trade"), from.mark());
            RunProgress progress = new RunProgress(spec.commandLine().getErr(), "trade")) {
            TradeSweep trade = TradeSweep.of(file.design(), axes, output.threads(), progress::progress);
            TradeFiles files = new TradeFiles(trade, shown, from);
            files.writeTo(directory);
            directory.commit();
            print(output.json() ? files.json() : files.text(), directory);
        }
        return 0;
    }

    private int search(ModelFile file, List<VariedQuantity> axes, List<Unit> shown, Provenance from) {
        Optional<ToDoubleFunction<Design>> yield = Optional.empty();
        if (search == Goal.YIELD) {
            if (units < 10) {
                throw new InputErrorException("--units " + units + ": at least 10");
            }
            // fails at once with its own message where there is nothing to draw
            new MonteCarloPlan(file.design(), output.seed());
            yield = Optional.of(this::yield);
        }
        try (ResultDirectory directory = ResultDirectory.prepare(output.directory(model, "trade"), from.mark())) {
            TradeSearch found = found(file.design(), axes, yield);
            ModelFile changed = file.withQuantities(found.after().design().quantities());
            TradeSearchFiles files = new TradeSearchFiles(found, changed, shown, search.name()
                .toLowerCase(Locale.ROOT), from);
            files.writeTo(directory);
            directory.commit();
            print(output.json() ? files.json() : files.text(), directory);
        }
        return 0;
    }

    private TradeSearch found(Design design, List<VariedQuantity> axes, Optional<ToDoubleFunction<Design>> yield) {
        try (RunProgress progress = new RunProgress(spec.commandLine().getErr(), "trade")) {
            return TradeSearch.run(design, axes, output.seed(), output.threads(), yield, progress::judged);
        }
    }

    private double yield(Design design) {
        MonteCarloResult outcome = new MonteCarlo(new MonteCarloPlan(design, output.seed()), new double[] {design.requirement().fromHz(),
            design.requirement().toHz()}, 1).run(units, () -> false, done -> { });
        return (double) outcome.met(0) / outcome.units();
    }

    private void print(String text, ResultDirectory directory) {
        PrintWriter out = spec.commandLine().getOut();
        out.print(text);
        out.flush();
        TerminalMessages.resultAt(spec, directory);
    }
}

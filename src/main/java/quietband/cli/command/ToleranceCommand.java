package quietband.cli.command;

import java.io.BufferedWriter;
import java.io.IOException;
import java.io.PrintWriter;
import java.io.UncheckedIOException;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.Callable;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.TimeUnit;
import java.util.function.Supplier;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;
import quietband.cli.terminal.InputErrorException;
import quietband.cli.terminal.ProgressLine;
import quietband.cli.terminal.TerminalMessages;
import quietband.model.edit.ModelBundle;
import quietband.model.edit.ModelFile;
import quietband.report.file.Provenance;
import quietband.report.file.ResultDirectory;
import quietband.report.tolerance.ToleranceCurves;
import quietband.report.tolerance.ToleranceFiles;
import quietband.report.tolerance.ToleranceTables;
import quietband.tolerance.campaign.MonteCarlo;
import quietband.tolerance.campaign.MonteCarloResult;
import quietband.tolerance.campaign.UnitReplay;
import quietband.tolerance.influence.LikeliestFailure;
import quietband.tolerance.influence.ToleranceInfluence;
import quietband.tolerance.influence.ToleranceResult;
import quietband.tolerance.judge.MonteCarloPlan;
import quietband.work.BackgroundParts;

/** What yield the design has, and which tolerance costs it. */
@Command(name = "tolerance", mixinStandardHelpOptions = true,
    description = "Draws units from the model's tolerances and judges each in every condition: yield, influence of each "
        + "tolerance, likeliest failing unit. Ctrl-C keeps the units done so far, marked partial.")
public final class ToleranceCommand extends TableCommand implements Callable<Integer> {

    @Parameters(paramLabel = "MODEL", description = "the model file")
    private Path model;

    @Option(names = "--units", paramLabel = "N", defaultValue = "20000",
        description = "how many units are drawn; default: ${DEFAULT-VALUE}")
    private long units;

    @Option(names = "--confidence", paramLabel = "SHARE", defaultValue = "0.95",
        description = "confidence of the intervals; default: ${DEFAULT-VALUE}")
    private double confidence;

    @Option(names = "--replay", paramLabel = "N", description = "write the model of this unit instead, numbered as in units.csv")
    private Long replay;

    @Option(names = "--check", description = "end with status 1 when the required yield is not demonstrated")
    private boolean check;

    @Spec
    private CommandSpec spec;

    private volatile boolean stopped;

    @Override
    public Integer call() {
        if (units < 1 || !(confidence > 0 && confidence < 1)) {
            throw new InputErrorException(units < 1 ? "--units " + units + ": at least 1" : "--confidence " + confidence
                + ": between 0 and 1, e.g. 0.95");
        }
        ModelFile file = ModelFile.read(model);
        return replay == null ? draw(file) : replay(file);
    }

    private int replay(ModelFile file) {
        if (replay < 1) {
            throw new InputErrorException("--replay " + replay + ": units are numbered from 1, as in units.csv");
        }
        Provenance from = output.provenance("tolerance", file);
        Path place = output.directory(model, "tolerance-unit-" + replay);
        try (ResultDirectory directory = ResultDirectory.prepare(place, from.mark())) {
            MonteCarloPlan plan = new MonteCarloPlan(file.design(), output.seed());
            ToleranceFiles.write(directory, "", UnitReplay.model(file, plan, UnitReplay.unit(plan, replay - 1)).bundle());
            directory.commit();
            TerminalMessages.resultAt(spec, directory);
        }
        return 0;
    }

    private int draw(ModelFile file) {
        double[] f = frequencies.frequencies(file.design().requirement());
        Provenance from = output.provenance("tolerance", file);
        CountDownLatch finished = new CountDownLatch(1);
        try (ResultDirectory directory = ResultDirectory.prepare(output.directory(model, "tolerance"), from.mark())) {
            MonteCarloPlan plan = new MonteCarloPlan(file.design(), output.seed());
            directory.whenInterrupted(() -> {
                stopped = true;
                await(finished);
            });
            Drawn drawn = units(plan, f, directory);
            boolean whole = !drawn.outcome().partial();
            // what is required of the units is independent of each other
            BackgroundParts<Optional<ToleranceInfluence>> influence = beside("influence",
                () -> whole ? Optional.of(ToleranceInfluence.of(plan, drawn.outcome(), confidence, output.threads())) : Optional.empty());
            BackgroundParts<Optional<Failing>> failing = beside("likeliest", () -> whole ? LikeliestFailure.of(plan, drawn.outcome())
                .map(l -> new Failing(l, UnitReplay.model(file, plan, l.unit()).bundle())) : Optional.empty());
            ToleranceCurves curves = new ToleranceCurves(plan.nominal(), drawn.outcome());
            Optional<Failing> likeliest = failing.finish().get(0);
            ToleranceResult findings = new ToleranceResult(plan, drawn.outcome(), influence.finish().get(0),
                likeliest.map(Failing::failure),
                confidence, drawn.seconds());
            ToleranceFiles files = new ToleranceFiles(findings, curves, from);
            files.writeTo(directory);
            likeliest.ifPresent(l -> ToleranceFiles.write(directory, "likeliest/", l.model()));
            directory.commit();
            PrintWriter out = spec.commandLine().getOut();
            out.print(output.json() ? files.json() : files.text());
            out.flush();
            TerminalMessages.resultAt(spec, directory);
            return check && !findings.yieldMet().orElse(true) ? 1 : 0;
        } finally {
            finished.countDown();
        }
    }

    /** The likeliest failing unit, and its model. */
    private record Failing(LikeliestFailure failure, ModelBundle model) { }

    /** What became of the units, and how long they took. */
    private record Drawn(MonteCarloResult outcome, double seconds) { }

    private <T> BackgroundParts<T> beside(String name, Supplier<T> part) {
        return output.threads() > 1 ? BackgroundParts.on(name, List.of(part)) : BackgroundParts.none(List.of(part));
    }

    private Drawn units(MonteCarloPlan plan, double[] f, ResultDirectory directory) {
        ProgressLine progress = new ProgressLine(spec.commandLine().getErr(), units);
        MonteCarloResult[] outcome = new MonteCarloResult[1];
        long start = System.nanoTime();
        directory.write("units.csv", writer -> outcome[0] = run(plan, f, progress, writer));
        double seconds = (System.nanoTime() - start) / 1e9;
        progress.end();
        if (outcome[0].units() == 0) {
            throw new InputErrorException("stopped before the first unit was judged: nothing is written");
        }
        return new Drawn(outcome[0], seconds);
    }

    private MonteCarloResult run(MonteCarloPlan plan, double[] f, ProgressLine progress, BufferedWriter writer) throws IOException {
        ToleranceTables.Units table = new ToleranceTables.Units(writer, plan.conditionNames());
        return new MonteCarlo(plan, f, output.threads()).run(units, () -> stopped, progress::at, table::made, rows -> {
            try {
                rows.writeTo(writer);
            } catch (IOException e) {
                throw new UncheckedIOException(e);
            }
        });
    }

    private static void await(CountDownLatch finished) {
        try {
            if (!finished.await(60, TimeUnit.SECONDS)) {
                Thread.currentThread().interrupt();
            }
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
        }
    }
}

package quietband.cli.command;

import java.io.BufferedWriter;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Path;
import java.util.concurrent.Callable;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.TimeUnit;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;
import quietband.cli.terminal.InputErrorException;
import quietband.cli.terminal.RunProgress;
import quietband.model.edit.ModelFile;
import quietband.report.file.Provenance;
import quietband.report.file.ResultDirectory;
import quietband.report.page.Report;
import quietband.report.tolerance.ToleranceReport;
import quietband.report.tolerance.UnitTable;
import quietband.study.tolerance.ToleranceStudy;
import quietband.tolerance.campaign.MonteCarlo;
import quietband.tolerance.campaign.MonteCarloResult;
import quietband.tolerance.judge.MonteCarloPlan;

/** What yield the design has, and which tolerance costs it. */
@Command(name = "tolerance", mixinStandardHelpOptions = true,
    description = "Draws units from the model's tolerances and judges each in every condition: yield, influence of each "
        + "tolerance, likeliest failing unit. Ctrl-C keeps the units done so far, marked partial.")
public final class ToleranceCommand extends TableCommand implements Callable<Integer> {

    private static final long MOST_UNITS = 100_000_000;

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


    private volatile boolean stopped;

    @Override
    public Integer call() {
        if (units < 1 || !(confidence > 0 && confidence < 1)) {
            throw new InputErrorException(units < 1 ? "--units " + units + ": at least 1" : "--confidence " + confidence
                + ": between 0 and 1, e.g. 0.95");
        }
        if (units > MOST_UNITS) {
            throw new InputErrorException("--units " + units + ": at most " + MOST_UNITS + ", whose table has some 20 GB already");
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
        output.write(spec, place, from, directory -> new Report("", from)
            .model("", ToleranceStudy.replayed(file, output.seed(), replay - 1)));
        return 0;
    }

    private int draw(ModelFile file) {
        double[] f = frequencies.frequencies(file.design().requirement());
        Provenance from = output.provenance("tolerance", file);
        CountDownLatch finished = new CountDownLatch(1);
        ToleranceStudy[] study = new ToleranceStudy[1];
        try {
            output.write(spec, output.directory(model, "tolerance"), from, directory -> {
                MonteCarloPlan plan = new MonteCarloPlan(file.design(), output.seed());
                directory.whenInterrupted(() -> {
                    stopped = true;
                    await(finished);
                });
                study[0] = ToleranceStudy.of(file, plan, units(plan, f, directory), confidence, output.threads(),
                    () -> stopped);
                return ToleranceReport.of(study[0], from);
            });
        } finally {
            finished.countDown();
        }
        return check && !study[0].result().yieldMet().orElse(true) ? 1 : 0;
    }

    private ToleranceStudy.Drawn units(MonteCarloPlan plan, double[] f, ResultDirectory directory) {
        MonteCarloResult[] outcome = new MonteCarloResult[1];
        long start = System.nanoTime();
        try (RunProgress progress = new RunProgress(spec.commandLine().getErr(), "units")) {
            directory.write("units.csv", writer -> outcome[0] = run(plan, f, progress, writer));
        }
        double seconds = (System.nanoTime() - start) / 1e9;
        if (outcome[0].units() == 0) {
            throw new InputErrorException("stopped before the first unit was judged: nothing is written");
        }
        return new ToleranceStudy.Drawn(outcome[0], seconds);
    }

    private MonteCarloResult run(MonteCarloPlan plan, double[] f, RunProgress progress, BufferedWriter writer) throws IOException {
        UnitTable table = new UnitTable(writer, plan.conditionNames());
        return new MonteCarlo(plan, f, output.threads()).run(units, () -> stopped, done -> progress.units(done, units), table::made,
            rows -> {
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

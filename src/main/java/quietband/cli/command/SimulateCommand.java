package quietband.cli.command;

import java.io.PrintWriter;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;
import quietband.cli.option.DriveOptions;
import quietband.cli.terminal.InputErrorException;
import quietband.cli.terminal.RunProgress;
import quietband.cli.terminal.TerminalMessages;
import quietband.model.Axis;
import quietband.model.Design;
import quietband.model.edit.ModelFile;
import quietband.motion.drive.MotionRecord;
import quietband.motion.drive.MotionRecordFile;
import quietband.motion.run.Dwell;
import quietband.motion.run.LossError;
import quietband.motion.run.SineSweep;
import quietband.motion.run.VibrationRun;
import quietband.report.file.Provenance;
import quietband.report.file.ResultDirectory;
import quietband.report.motion.DwellFiles;
import quietband.report.motion.SweepFiles;
import quietband.report.motion.VibrationFiles;
import quietband.report.page.Caution;
import quietband.tuning.orient.BlankShock;

/** The design as it moves. */
@Command(name = "simulate", mixinStandardHelpOptions = true,
    description = "Steps platform, crystal, sensors and cancellation through time under a sweep, a dwell, random vibration, a "
        + "shock or recorded motion, all stacks at once.")
public final class SimulateCommand extends TableCommand implements Callable<Integer> {

    private static final int ROWS = 200_000;
    private static final double DWELL_SECONDS = 2;

    @Parameters(paramLabel = "MODEL", description = "the model file")
    private Path model;

    @Mixin
    private DriveOptions drive;

    @Spec
    private CommandSpec spec;

    @Override
    public Integer call() {
        ModelFile file = ModelFile.read(model);
        drive.check();
        PrintWriter err = spec.commandLine().getErr();
        file.warnings().forEach(w -> err.println("warning: " + w));
        Provenance from = output.provenance("simulate", file);
        if (drive.kind() == DriveOptions.Kind.SHOCK || drive.kind() == DriveOptions.Kind.DWELL) {
            err.println(Caution.TEXT);
        }
        try (ResultDirectory directory = ResultDirectory.prepare(output.directory(model, "simulate"), from.mark())) {
            Printed printed = switch (drive.kind()) {
                case DWELL -> dwell(file.design(), from, directory);
                case SWEEP -> sweep(file.design(), from, directory);
                case RANDOM -> random(file.design(), from, directory);
                case SHOCK -> shock(file.design(), from, directory);
                case RECORD -> record(file.design(), from, directory);
            };
            directory.commit();
            PrintWriter out = spec.commandLine().getOut();
            out.print(output.json() ? printed.json : printed.text);
            out.flush();
            TerminalMessages.resultAt(spec, directory);
            return 0;
        }
    }

    /** What goes to standard output. */
    private record Printed(String json, String text) { }

    private RunProgress progress(String what) {
        return new RunProgress(spec.commandLine().getErr(), what);
    }

    private Printed dwell(Design design, Provenance from, ResultDirectory directory) {
        double seconds = drive.duration() > 0 ? drive.duration() : DWELL_SECONDS;
        Dwell.Request request = new Dwell.Request(drive.dwellAxis(design), drive.dwellFrequency(design), drive.peakG(design),
            seconds, drive.linear());
        DwellFiles files = new DwellFiles(design, request, Dwell.traced(design, request, ROWS), from);
        files.writeTo(directory);
        return new Printed(files.json(), files.text());
    }

    private Printed sweep(Design design, Provenance from, ResultDirectory directory) {
        double[] f = frequencies.frequencies(design.requirement());
        SineSweep.Request request = new SineSweep.Request(drive.axes(design, true), f, drive.peakG(design), drive.linear(), drive.rate(),
            output.threads());
        RunProgress progress = progress("sweep");
        long start = System.nanoTime();
        SineSweep.Result result = SineSweep.run(design, request, progress::progress);
        SweepFiles files = new SweepFiles(design, request, result, (System.nanoTime() - start) * 1e-9, from);
        files.writeTo(directory);
        return new Printed(files.json(), files.text());
    }

    private VibrationRun.Options options() {
        return new VibrationRun.Options(drive.linear(), drive.duration(), drive.fullRate(), ROWS, drive.gridHz());
    }

    private Printed random(Design design, Provenance from, ResultDirectory directory) {
        List<Axis> axes = drive.axes(design, false).stream()
            .filter(a -> design.vibration().random().get(a.ordinal()).isPresent()).toList();
        if (axes.isEmpty()) {
            throw new InputErrorException("no profile to drive with: add vibration.random, e.g. random: {points: "
                + "[{frequency: 20 Hz, density: "
                + "0.01 g^2/Hz}, {frequency: 2 kHz, density: 0.01 g^2/Hz}]}");
        }
        boolean together = design.vibration().together() && !drive.oneAxis();
        List<List<Axis>> groups = together ? List.of(axes) : axes.stream().map(List::of).toList();
        List<VibrationRun.Result> rides = new ArrayList<>();
        for (List<Axis> group : groups) {
            rides.add(VibrationRun.random(design, group, drive.densityFactor(), output.seed(), options(), progress("random "
                + (together ? "all" : group.get(0).letter()))));
        }
        LossError loss = LossError.of(design, axes, VibrationRun.topHz(design, axes));
        return ride(design, new VibrationFiles.Asked("random", drive.linear(), drive.densityFactor(), Optional.of(loss), List.of()), rides,
            from, directory);
    }

    private Printed shock(Design design, Provenance from, ResultDirectory directory) {
        List<VibrationRun.Result> rides = new ArrayList<>();
        List<BlankShock> blanks = new ArrayList<>();
        for (Axis axis : drive.axes(design, false)) {
            blanks.add(BlankShock.along(design, axis, drive.shock(design)));
            rides.add(VibrationRun.shock(design, axis, drive.shock(design), options(), progress("shock " + axis.letter())));
        }
        return ride(design, new VibrationFiles.Asked("shock", drive.linear(), 1, Optional.empty(), blanks), rides, from, directory);
    }

    private Printed record(Design design, Provenance from, ResultDirectory directory) {
        MotionRecord recording = MotionRecordFile.read(drive.record(), design.requirement().fromHz());
        VibrationRun.Result ride = VibrationRun.recorded(design, recording, options(), progress("record"));
        return ride(design, new VibrationFiles.Asked("record", drive.linear(), 1, Optional.empty(), List.of()), List.of(ride),
            from, directory);
    }

    private static Printed ride(Design design, VibrationFiles.Asked asked, List<VibrationRun.Result> rides, Provenance from,
                                ResultDirectory directory) {
        VibrationFiles files = new VibrationFiles(design, asked, rides, from);
        files.writeTo(directory);
        return new Printed(files.json(), files.text());
    }
}

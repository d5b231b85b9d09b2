package quietband.cli.command;

import java.io.PrintWriter;
import java.util.List;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import quietband.cli.option.DriveOptions;
import quietband.cli.terminal.InputErrorException;
import quietband.cli.terminal.RunProgress;
import quietband.model.Axis;
import quietband.model.Design;
import quietband.model.edit.ModelFile;
import quietband.motion.drive.MotionRecordFile;
import quietband.motion.run.Dwell;
import quietband.motion.run.SineSweep;
import quietband.motion.run.VibrationRun;
import quietband.report.file.Provenance;
import quietband.report.motion.DwellReport;
import quietband.report.motion.SweepReport;
import quietband.report.motion.VibrationReport;
import quietband.report.page.Caution;
import quietband.study.motion.DwellStudy;
import quietband.study.motion.SweepStudy;
import quietband.study.motion.VibrationStudy;

/** The design as it moves. */
@Command(name = "simulate", mixinStandardHelpOptions = true,
    description = "Steps platform, crystal, sensors and cancellation through time under a sweep, a dwell, random vibration, a "
        + "shock or recorded motion, all stacks at once.")
public final class SimulateCommand extends TableCommand implements Runnable {

    private static final int MOST_STEPS = 20_000;
    private static final double DWELL_SECONDS = 2;

    @Mixin
    private DriveOptions drive;


    @Override
    public void run() {
        ModelFile file = ModelFile.read(model);
        drive.check();
        PrintWriter err = spec.commandLine().getErr();
        file.warnings().forEach(w -> err.println("warning: " + w));
        Provenance from = output.provenance("simulate", file);
        if (drive.kind() == DriveOptions.Kind.SHOCK || drive.kind() == DriveOptions.Kind.DWELL) {
            err.println(Caution.TEXT);
        }
        Design design = file.design();
        write(model, from, () -> switch (drive.kind()) {
            case DWELL -> DwellReport.of(DwellStudy.of(design, new Dwell.Request(drive.dwellAxis(design), drive.dwellFrequency(design),
                drive.peakG(design), drive.duration() > 0 ? drive.duration() : DWELL_SECONDS, drive.linear())), from);
            case SWEEP -> SweepReport.of(SweepStudy.of(design, new SineSweep.Request(drive.axes(design, true),
                points(design), drive.peakG(design), drive.linear(), drive.rate(), output.threads()),
                progress("sweep")::progress), from);
            case RANDOM -> VibrationReport.of(random(design), from);
            case SHOCK -> VibrationReport.of(VibrationStudy.shock(design, drive.axes(design, false), drive.shock(design), options(),
                this::progress), from);
            case RECORD -> VibrationReport.of(VibrationStudy.recorded(design, MotionRecordFile.read(drive.record(),
                design.requirement().fromHz()), options(), progress("record")), from);
        });
    }

    private double[] points(Design design) {
        double[] f = frequencies.frequencies(design.requirement());
        if (f.length > MOST_STEPS) {
            throw new InputErrorException("--points " + f.length + ": a sweep stops at each of them; at most " + MOST_STEPS);
        }
        return f;
    }

    private RunProgress progress(String what) {
        return new RunProgress(spec.commandLine().getErr(), what);
    }

    private VibrationRun.Options options() {
        return VibrationStudy.options(drive.linear(), drive.duration(), drive.fullRate(), drive.gridHz());
    }

    private VibrationStudy random(Design design) {
        List<Axis> axes = drive.axes(design, false).stream()
            .filter(a -> design.vibration().random().get(a.ordinal()).isPresent()).toList();
        if (axes.isEmpty()) {
            throw new InputErrorException("no profile to drive with: add vibration.random, e.g. random: {points: "
                + "[{frequency: 20 Hz, density: 0.01 g^2/Hz}, {frequency: 2 kHz, density: 0.01 g^2/Hz}]}");
        }
        return VibrationStudy.random(design, axes, design.vibration().together() && !drive.oneAxis(), drive.densityFactor(),
            output.seed(), options(), this::progress);
    }
}

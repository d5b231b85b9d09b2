package quietband.cli.command;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Collectors;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import quietband.cli.option.OptionAmount;
import quietband.cli.terminal.InputErrorException;
import quietband.identification.shaker.ShakerAnalysis;
import quietband.identification.shaker.ShakerFile;
import quietband.identification.shaker.ShakerReading;
import quietband.identification.shaker.ShakerRules;
import quietband.identification.shaker.TestPlan;
import quietband.model.edit.ModelFile;
import quietband.report.file.ContentHash;
import quietband.report.file.Provenance;
import quietband.report.shaker.PlanReport;
import quietband.report.shaker.ShakerReport;
import quietband.units.Dimension;

/** Readings of finished resonators to their sensitivity. */
@Command(name = "shaker", mixinStandardHelpOptions = true,
    description = "Turns sideband readings (axis,frequency_hz,peak_g or rms_g,sideband_dbc; optional serial, phase_deg, floor_dbc, "
        + "uncertainty_db, cross_x_g, cross_y_g, cross_z_g) or 2 g tip-over readings (axis,sense,output_hz; optional serial, time_s) into "
        + "the sensitivity along each axis; with --plan prints a test plan for a model.")
public final class ShakerCommand extends ResultCommand implements Runnable {

    private static final double FURTHEST = 1e6;

    @Parameters(paramLabel = "RUN.csv", arity = "0..*", description = "one or more files of readings, taken together")
    private final List<Path> runs = new ArrayList<>();

    @Option(names = "--carrier", paramLabel = "FREQ", description = "frequency of the oscillator, e.g. \"10 MHz\"")
    private String carrier;

    @Option(names = "--multiplier", paramLabel = "N", defaultValue = "1",
        description = "what the carrier is multiplied by before sidebands and output are read; default: ${DEFAULT-VALUE}")
    private double multiplier;

    @Option(names = "--floor", paramLabel = "LEVEL",
        description = "noise floor of the readings, e.g. \"-130 dBc\"; a column floor_dbc goes before it")
    private String floor;

    @Option(names = "--floor-margin", paramLabel = "DB", defaultValue = "6 dB",
        description = "sidebands less than this above the floor do not count; default: ${DEFAULT-VALUE}")
    private String floorMargin;

    @Option(names = "--calibration", paramLabel = "SHARE", defaultValue = "0",
        description = "standard uncertainty of the shaker's acceleration, the same for all readings; default: ${DEFAULT-VALUE}")
    private String calibration;

    @Option(names = "--plan", paramLabel = "MODEL", description = "print a test plan for a model instead; no file of readings is due")
    private Path plan;

    @Option(names = "--max-level", paramLabel = "ACCEL", defaultValue = "1 g",
        description = "with --plan: highest peak level, where nothing else limits it; default: ${DEFAULT-VALUE}")
    private String maxLevel;

    @Option(names = "--stroke", paramLabel = "LENGTH", defaultValue = "5 mm",
        description = "with --plan: peak displacement of the shaker; default: ${DEFAULT-VALUE}")
    private String stroke;


    @Override
    public void run() {
        if (!(multiplier >= 1 / FURTHEST && multiplier <= FURTHEST)) {
            throw new InputErrorException("--multiplier " + multiplier + ": above 0, at most " + FURTHEST);
        }
        if (plan != null) {
            plan();
            return;
        }
        if (runs.isEmpty()) {
            throw new InputErrorException("name a file of readings, or a model with --plan");
        }
        ShakerRules rules = rules();
        List<ShakerReading> readings = new ArrayList<>();
        for (Path run : runs) {
            readings.addAll(ShakerFile.read(run));
        }
        String names = runs.stream().map(r -> String.valueOf(r.getFileName())).collect(Collectors.joining(", "));
        Provenance from = output.provenance("shaker", names, ContentHash.of(runs));
        write(runs.get(0), from, () -> ShakerReport.of(ShakerAnalysis.of(readings, rules), rules, from));
    }

    private void plan() {
        if (!runs.isEmpty()) {
            throw new InputErrorException("--plan makes a plan from a model, readings are not used: leave out " + runs.get(0));
        }
        double level = OptionAmount.read("--max-level", maxLevel, Dimension.ACCELERATION);
        double travel = OptionAmount.read("--stroke", stroke, Dimension.LENGTH);
        if (!(level > 0) || !(travel > 0)) {
            throw new InputErrorException(level > 0 ? "--stroke " + stroke + ": above 0" : "--max-level " + maxLevel + ": above 0");
        }
        ModelFile file = ModelFile.read(plan);
        Provenance from = output.provenance("shaker", file);
        double readHz = multiplier * (carrier == null ? file.design().oscillator().carrierHz()
            : carrierHz());
        write(plan, from, () -> PlanReport.of(file.design(), TestPlan.of(file.design(), level, travel, readHz), from));
    }

    private double carrierHz() {
        double hz = OptionAmount.read("--carrier", carrier, Dimension.FREQUENCY);
        if (!(hz > 0 && hz <= 1e15)) {
            throw new InputErrorException("--carrier " + carrier + ": above 0 Hz, at most 1e15 Hz");
        }
        return hz;
    }

    private ShakerRules rules() {
        if (carrier == null) {
            throw new InputErrorException("--carrier is missing: the frequency of the oscillator, e.g. --carrier \"10 MHz\"");
        }
        double hz = carrierHz();
        double margin = OptionAmount.read("--floor-margin", floorMargin, Dimension.DECIBEL);
        double share = OptionAmount.read("--calibration", calibration, Dimension.RATIO);
        if (!(margin >= 0) || !(share >= 0)) {
            throw new InputErrorException(margin < 0 ? "--floor-margin " + floorMargin + ": at least 0 dB" : "--calibration " + calibration
                + ": at least 0");
        }
        double noise = floor == null ? Double.NaN : OptionAmount.read("--floor", floor, Dimension.CARRIER_LEVEL);
        return new ShakerRules(hz, multiplier, noise, margin, share);
    }
}

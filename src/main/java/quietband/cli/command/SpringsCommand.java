package quietband.cli.command;

import java.nio.file.Path;
import java.util.Optional;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;
import quietband.cli.option.OptionAmount;
import quietband.cli.option.SpringOptions;
import quietband.cli.terminal.InputErrorException;
import quietband.cli.terminal.RunProgress;
import quietband.model.Vec;
import quietband.model.edit.ModelFile;
import quietband.report.file.Provenance;
import quietband.report.springs.BenchReport;
import quietband.report.springs.SpringReport;
import quietband.tuning.parts.SpringCatalogue;
import quietband.tuning.parts.SpringRequest;
import quietband.tuning.springs.BenchTuning;
import quietband.tuning.springs.SpringAnswer;
import quietband.tuning.springs.SpringPlanner;
import quietband.units.Dimension;

/** From what is wanted of the platform to springs that can be ordered and a box that closes. */
@Command(name = "springs", mixinStandardHelpOptions = true,
    description = "Finds rates, damping, places and parts of the springs for a wanted natural frequency, reduction or "
        + "requirement, and writes the "
        + "changed model, a parts list and a sketch.")
public final class SpringsCommand extends ModelCommand implements Callable<Integer> {

    @Option(names = "--natural-frequency", paramLabel = "FREQ",
        description = "natural frequency wanted on every axis, e.g. \"90 Hz\", or by axis, e.g. \"x=80 Hz, "
        + "y=80 Hz, z=95 Hz\"")
    private String naturalFrequency;

    @Option(names = "--reduction", paramLabel = "\"DB at FREQ\"",
        description = "least reduction by the platform, e.g. \"20 dB at 300 Hz\"")
    private String reduction;

    @Option(names = "--hold", description = "meet the whole requirement together with the cancellation as it stands")
    private boolean hold;

    @Option(names = "--measured", paramLabel = "FREQ,FREQ,FREQ",
        description = "bench tuning: natural frequencies measured on a unit along x, y and z, e.g. "
        + "\"71.2, 69.8, 84.0 Hz\"; answers with ballast and rates that bring them to --natural-frequency (default: the model's own)")
    private String measured;

    @Option(names = "--parts", paramLabel = "suited|rates|coil|elastomer|catalogue", defaultValue = "suited",
        description = "what the springs are made of; suited: elastomer where the model's springs have a loss factor "
            + "of 5 %% or more, else "
            + "coils; default: ${DEFAULT-VALUE}")
    private SpringRequest.Kind parts;

    @Option(names = "--catalogue", paramLabel = "FILE.csv",
        description = "available springs; implies --parts catalogue")
    private Path catalogue;

    @Option(names = "--damping", paramLabel = "RATIO", description = "damping ratio wanted, e.g. 0.2; default: as it was")
    private String damping;

    @Option(names = "--keep-places", description = "leave the springs' places where they are")
    private boolean keepPlaces;

    @Option(names = "--check", description = "end with status 1 when a target or check is not met")
    private boolean check;


    @Override
    public Integer call() {
        if (measured != null) {
            return bench();
        }
        SpringRequest wish = wish();
        ModelFile file = ModelFile.read(model);
        Provenance from = output.provenance("springs", file);
        SpringAnswer[] answer = new SpringAnswer[1];
        write(model, from, () -> {
            answer[0] = planned(file, wish);
            return SpringReport.of(answer[0], from);
        });
        return check && !answer[0].met() ? 1 : 0;
    }

    private SpringAnswer planned(ModelFile file, SpringRequest wish) {
        try (RunProgress progress = new RunProgress(spec.commandLine().getErr(), "springs")) {
            return SpringPlanner.plan(file, wish, output.threads(), progress::judged);
        }
    }

    private int bench() {
        if (reduction != null || hold) {
            throw new InputErrorException("--measured goes with --natural-frequency, or alone: leave " + (hold ? "--hold"
                : "--reduction") + " out");
        }
        if (damping != null || catalogue != null) {
            throw new InputErrorException("--measured changes mass and rates alone: leave "
                + (damping != null ? "--damping" : "--catalogue")
                + " out");
        }
        Vec found = SpringOptions.measured(measured);
        Vec wanted = naturalFrequency == null ? Vec.all(Double.NaN) : SpringOptions.naturalFrequency(naturalFrequency);
        ModelFile file = ModelFile.read(model);
        Provenance from = output.provenance("springs", file);
        write(model, from, () -> BenchReport.of(BenchTuning.of(file, found, wanted), from));
        return 0;
    }

    private SpringRequest wish() {
        int asked = (naturalFrequency == null ? 0 : 1) + (reduction == null ? 0 : 1) + (hold ? 1 : 0);
        if (asked != 1) {
            throw new InputErrorException((asked == 0 ? "nothing is wanted" : "more than one thing is wanted")
                + ": give one of --natural-frequency \"90 Hz\", "
                + "--reduction \"20 dB at 300 Hz\" and --hold");
        }
        if (hold && damping != null) {
            throw new InputErrorException("--hold chooses the damping itself: leave --damping out, or give --natural-frequency "
                + "or --reduction instead");
        }
        Optional<SpringCatalogue> listed = Optional.ofNullable(catalogue).map(SpringCatalogue::read);
        SpringRequest.Kind kind = listed.isPresent() ? SpringRequest.Kind.CATALOGUE : parts;
        if (kind == SpringRequest.Kind.CATALOGUE && listed.isEmpty()) {
            throw new InputErrorException("--parts catalogue needs --catalogue FILE.csv");
        }
        return new SpringRequest(Optional.ofNullable(naturalFrequency).map(SpringOptions::naturalFrequency), Optional.ofNullable(reduction)
            .map(SpringOptions::reduction), hold, kind, Optional.ofNullable(damping).map(SpringsCommand::ratio),
            !keepPlaces, listed,
            output.seed());
    }

    private static double ratio(String text) {
        double z = OptionAmount.read("--damping", text, Dimension.RATIO);
        if (!(z > 0 && z < 2)) {
            throw new InputErrorException("--damping: '" + text.strip() + "' is not between 0 and 2");
        }
        return z;
    }
}

package quietband.cli.option;

import java.nio.file.Path;
import java.util.List;
import picocli.CommandLine.Option;
import quietband.cli.terminal.InputErrorException;
import quietband.model.edit.ModelFile;
import quietband.study.filter.TrimStudy;

/** Trimming a cancellation that is built, in place of designing its filter. */
public final class TrimOptions {

    @Option(names = "--trim", arity = "2", paramLabel = "RUN.csv",
        description = "instead of a design: gain, phase and delay errors and new weights, per serial and sensor, from two shaker runs, "
            + "first with the cancellation off, then on, both with "
            + "[serial,]axis,frequency_hz,ppb_per_g,phase_deg[,relative_error][,weight_ppb_per_g]; "
            + "relative_error is one standard uncertainty, the weight that of the run (default: the model's)")
    private List<Path> runs = List.of();

    @Option(names = "--bolted", description = "with --trim: the units stood on the shaker without their platform")
    private boolean bolted;

    public boolean asked() {
        if (bolted && runs.isEmpty()) {
            throw new InputErrorException("--bolted goes with --trim OFF.csv ON.csv");
        }
        return !runs.isEmpty();
    }

    /** Trims. */
    public TrimStudy study(ModelFile file) {
        if (runs.size() != 2) {
            throw new InputErrorException("--trim takes two files, once: the run with the cancellation off, then on");
        }
        return TrimStudy.of(file, runs.get(0), runs.get(1), bolted);
    }
}

package quietband.cli.option;

import java.nio.file.Path;
import java.util.List;
import picocli.CommandLine.Option;
import quietband.cli.terminal.InputErrorException;
import quietband.identification.trim.PathTrim;
import quietband.model.edit.ModelFile;
import quietband.report.file.Provenance;
import quietband.report.file.ResultDirectory;
import quietband.report.filter.TrimFiles;

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

    /** Writes the result; returns what is to be printed. */
    public String run(ModelFile file, Provenance from, ResultDirectory directory, boolean json) {
        if (runs.size() != 2) {
            throw new InputErrorException("--trim takes two files, once: the run with the cancellation off, then on");
        }
        TrimFiles files = new TrimFiles(PathTrim.of(file, runs.get(0), runs.get(1), bolted), from);
        files.writeTo(directory);
        return json ? files.json() : files.text();
    }
}

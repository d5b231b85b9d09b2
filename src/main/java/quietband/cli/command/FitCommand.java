package quietband.cli.command;

import java.io.PrintWriter;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import quietband.cli.terminal.InputErrorException;
import quietband.identification.MeasuredFile;
import quietband.identification.MeasuredResponse;
import quietband.identification.RecordResponse;
import quietband.identification.doubt.DampingKind;
import quietband.identification.fit.FitResult;
import quietband.identification.fit.ModelFit;
import quietband.model.Axis;
import quietband.model.Requirement;
import quietband.model.Stack;
import quietband.model.edit.ModelFile;
import quietband.report.file.Provenance;
import quietband.report.fit.FitReport;

/** From a measurement back to the model's numbers. */
@Command(name = "fit", mixinStandardHelpOptions = true,
    description = "Finds numbers of the model from measured responses by weighted least squares, with standard errors, and "
        + "writes the changed model.")
public final class FitCommand extends ModelCommand implements Runnable {

    /** Which kind of damping to take. */
    enum Choice { VISCOUS, LOSS, RELAXATION, MODAL, BEST }

    @Parameters(index = "1..*", arity = "1..*", paramLabel = "MEASURED.csv", description = "measured responses: frequency_hz and per axis "
        + "x_ratio, x_db or x_ppb_per_g, optional x_phase_deg and x_relative_error (one standard uncertainty)")
    private List<Path> measured;

    @Option(names = "--measured", required = true, split = ",", paramLabel = "transmissibility|sensitivity|path",
        description = "what the files hold: one word for all, or one for each, separated by commas")
    private List<MeasuredFile.Asked> asked;

    @Option(names = "--free", required = true, split = ",", paramLabel = "PATH",
        description = "the numbers to be found, e.g. platform.springs.stiffness,platform.springs.damping; each axis by itself, all "
            + "places of a spring group together")
    private List<String> free;

    @Option(names = "--stack", paramLabel = "bare|isolated|cancelled|combined",
        description = "which stack a sensitivity was measured on; default: the fullest of the model")
    private Stack stack;

    @Option(names = "--damping", paramLabel = "viscous|loss|relaxation|modal|best",
        description = "take this kind of damping in place of the one that is free; best: by Akaike's criterion")
    private Choice damping;

    @Option(names = "--axis", split = ",", paramLabel = "x|y|z",
        description = "along which a record over time (time_s,drive_g,response_g or response_ppb) was driven: one for all, or one for each")
    private List<Axis> axis = List.of();

    @Option(names = "--keep-outliers", description = "count every point, however far off")
    private boolean keepOutliers;


    @Override
    public void run() {
        ModelFile file = ModelFile.read(model);
        Provenance from = output.provenance("fit", file);
        Optional<DampingKind> kind = Optional.ofNullable(damping)
            .map(d -> d == Choice.BEST ? DampingKind.AS_FREED : DampingKind.valueOf(d.name()));
        FitResult fitted = ModelFit.of(file, sources(file), free.stream().map(String::strip).toList(),
            new ModelFit.Settings(!keepOutliers, true, kind));
        fitted.notes().forEach(this::note);
        write(model, from, () -> FitReport.of(fitted, from));
    }

    private List<MeasuredFile> sources(ModelFile file) {
        if (asked.size() != 1 && asked.size() != measured.size()) {
            throw new InputErrorException("--measured names " + asked.size() + " kinds for " + measured.size()
                + " files; name one for all, or one for each: " + asked.stream().map(a -> a.name().toLowerCase(Locale.ROOT)).toList());
        }
        Stack which = stack == null ? Stack.fullest(file.design()) : stack;
        List<MeasuredFile> sources = new ArrayList<>();
        int records = 0;
        for (int i = 0; i < measured.size(); i++) {
            Path path = measured.get(i);
            String name = String.valueOf(path.getFileName());
            MeasuredFile.Asked what = asked.get(asked.size() == 1 ? 0 : i);
            if (!RecordResponse.isRecord(path)) {
                sources.add(MeasuredFile.of(name, MeasuredResponse.read(path), what, which));
                continue;
            }
            if (axis.isEmpty() || axis.size() != 1 && records >= axis.size()) {
                throw new InputErrorException(name + " is a record over time: say with --axis x, y or z along which it was driven"
                    + (axis.isEmpty() ? "" : ", one for all records or one for each"));
            }
            Requirement band = file.design().requirement();
            RecordResponse record = RecordResponse.read(path, axis.get(axis.size() == 1 ? 0 : records++), band.fromHz(), band.toHz());
            record.notes().forEach(this::note);
            sources.add(MeasuredFile.of(name, record, what, which));
        }
        return sources;
    }

    private void note(String note) {
        PrintWriter err = spec.commandLine().getErr();
        err.println("note: " + note);
        err.flush();
    }
}

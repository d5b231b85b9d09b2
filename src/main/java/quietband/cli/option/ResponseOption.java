package quietband.cli.option;

import java.io.PrintWriter;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.Optional;
import picocli.CommandLine.Option;
import quietband.filter.MeasuredPath;
import quietband.identification.MeasuredResponse;
import quietband.model.Axis;
import quietband.model.Design;

/** A measured response of the cancellation in place of the model's path. */
public final class ResponseOption {

    @Option(names = "--response", paramLabel = "FILE.csv",
        description = "design for this measured response from sensor to frequency, in place of the model's path: frequency_hz and "
            + "for each of "
            + "x, y, z x_ppb_per_g (weight times P; or x_ratio, x_db: P alone) and x_phase_deg, over the whole band, taken with a digital "
            + "filter that passes everything; positive is what the cancellation takes off")
    private Path file;

    public boolean asked() {
        return file != null;
    }

    /** The measured path; what is odd about it goes to {@code err}. */
    public Optional<MeasuredPath> path(Design design, PrintWriter err) {
        if (file == null) {
            return Optional.empty();
        }
        MeasuredResponse response = MeasuredResponse.read(file);
        double[][] magnitude = new double[3][];
        double[][] phase = new double[3][];
        boolean perG = response.kind().perG();
        response.axes().forEach((axis, curve) -> {
            double weight = perG ? 1 : design.weightsPerG().get(axis);
            double turn = weight < 0 ? Math.PI : 0;
            magnitude[axis.ordinal()] = Arrays.stream(curve.magnitude()).map(m -> m * Math.abs(weight)).toArray();
            phase[axis.ordinal()] = curve.phase().map(p -> Arrays.stream(p).map(v -> v + turn).toArray()).orElse(null);
        });
        MeasuredPath path = MeasuredPath.of(String.valueOf(file.getFileName()), response.frequencyHz(), magnitude, phase);
        for (Axis axis : path.opposite(design)) {
            err.println("note: axis " + axis.letter() + " of " + file.getFileName() + " has the sign opposite to the model's weight: the "
                + "filter comes out negative; positive is what the cancellation takes off, so check polarity and convention");
        }
        err.flush();
        return Optional.of(path);
    }
}

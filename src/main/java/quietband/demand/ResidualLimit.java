package quietband.demand;

import java.util.Optional;
import quietband.model.Axis;
import quietband.model.Design;
import quietband.spectrum.LogCurve;

/** The limit of residual sensitivity over frequency: as written, or derived from the phase-noise limit. */
final class ResidualLimit {

    private final Optional<LogCurve> line;
    private final PhaseNoise phaseNoise;

    /** For one design. */
    ResidualLimit(Design design) {
        line = design.requirement().residual();
        phaseNoise = design.requirement().fromPhaseNoise() ? new PhaseNoise(design) : null;
    }

    /** Whether there is a limit at all. */
    boolean asked() {
        return line.isPresent() || phaseNoise != null;
    }

    /** The limit for an axis at f in Hz, 1/g; infinite where nothing limits it. */
    double at(Axis axis, double f) {
        if (line.isPresent()) {
            return line.get().at(f);
        }
        double least = Double.POSITIVE_INFINITY;
        if (phaseNoise != null) {
            for (PhaseNoise.Row row : phaseNoise.rows()) {
                if (row.axes().contains(axis)) {
                    least = Math.min(least, phaseNoise.allowedPerG(row, f));
                }
            }
        }
        return least;
    }

    /** The limit for the vector sum: the least over the axes, 1/g. */
    double vector(double f) {
        return Math.min(at(Axis.X, f), Math.min(at(Axis.Y, f), at(Axis.Z, f)));
    }
}

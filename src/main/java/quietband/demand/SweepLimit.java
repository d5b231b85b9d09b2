package quietband.demand;

import java.util.EnumSet;
import java.util.Set;
import quietband.cancellation.CancellationNoise;
import quietband.model.Axis;
import quietband.model.Design;
import quietband.oscillator.Sidebands;
import quietband.spectrum.LogCurve;

/** The limit that a sweep is judged by: as written, or what the phase-noise limit leaves for the vibration. */
public final class SweepLimit {

    private final Design design;
    private final CancellationNoise noise;

    public SweepLimit(Design design) {
        this.design = design;
        this.noise = design.cancellation().map(c -> new CancellationNoise(c, design.weightsPerG())).orElse(null);
    }

    public boolean asked() {
        return design.requirement().residual().isPresent() || fromNoise();
    }

    private boolean fromNoise() {
        return design.requirement().fromPhaseNoise() && design.requirement().phaseNoise().isPresent();
    }

    /** For an axis at f in Hz, 1/g; infinite where nothing limits it. */
    public double at(Axis axis, double f) {
        if (design.requirement().residual().isPresent()) {
            return design.requirement().residual().get().at(f);
        }
        if (!fromNoise() || !design.vibration().axes().contains(axis)) {
            return Double.POSITIVE_INFINITY;
        }
        Set<Axis> sharing = design.vibration().together() ? EnumSet.allOf(Axis.class) : EnumSet.of(axis);
        double density = 0;
        for (Axis a : sharing) {
            density += design.vibration().drive(a).map(c -> c.at(f)).orElse(0.0);
        }
        double left = allowedFrequencyDensity(f) - floor(f);
        if (left <= 0) {
            return 0;
        }
        return density > 0 ? Math.sqrt(left / density) : Double.POSITIVE_INFINITY;
    }

    /** The limit for the vector sum: the least over the axes, 1/g. */
    public double vector(double f) {
        return Math.min(at(Axis.X, f), Math.min(at(Axis.Y, f), at(Axis.Z, f)));
    }

    private double allowedFrequencyDensity(double f) {
        double dbc = design.requirement().phaseNoise().orElseThrow().at(f);
        return Sidebands.frequencyDensity(Math.pow(10, dbc / 10), design.oscillator().outputHz(), f);
    }

    private double floor(double f) {
        double quiet = design.oscillator().staticPhaseNoise().map((LogCurve q) ->
            Sidebands.frequencyDensity(Math.pow(10, q.at(f) / 10), design.oscillator().carrierHz(), f)).orElse(0.0);
        return noise == null ? quiet : quiet + noise.sensor(f) + noise.tuning(f);
    }
}

package quietband.filter;

import java.util.List;
import quietband.cancellation.CancellationPath;
import quietband.cancellation.NoiseSources;
import quietband.demand.PhaseNoise;
import quietband.model.Axis;
import quietband.model.Cancellation;
import quietband.model.Design;
import quietband.model.Stack;
import quietband.oscillator.Sidebands;

/** Phase noise at the output as it depends on the three filters, power ratios per Hz. */
public final class NoiseTerms {

    private final Cancellation correction;
    private final CancellationPath path;
    private final PhaseNoise noise;
    private final PathResponse source;
    private final boolean measured;
    private final double outputHz;
    private final NoiseSources sources;

    public NoiseTerms(Design design, PathResponse source, boolean measured) {
        this.correction = design.cancellation().orElseThrow().withoutFilter();
        this.path = new CancellationPath(correction);
        this.noise = new PhaseNoise(design);
        this.source = source;
        this.measured = measured;
        this.outputHz = design.oscillator().outputHz();
        this.sources = new NoiseSources(correction, design.weightsPerG());
    }

    public List<PhaseNoise.Row> rows() {
        return noise.rows();
    }

    /** Weight of |y_j|^2 in a row at f. */
    public double vibration(Axis axis, double f) {
        return Sidebands.phaseNoise(noise.density(axis, f), outputHz, f);
    }

    /** Weight of |F_i|^2: sensor and converter. */
    public double sensor(int i, double f) {
        double sensor = sources.sensor(i, path.afterSensorPower(i, f));
        if (measured) {
            double through = source.weighted(i, f).norm();
            sensor = NoiseSources.sensor(correction, i, through * through);
        }
        double sum = sensor + sources.converter(i, path.digitalPower(i, f));
        return Sidebands.phaseNoise(sum, outputHz, f);
    }

    /** What no filter changes: the oscillator at rest and the port. */
    public double fixed(double f) {
        return noise.staticNoise(f) + noise.tuning(f);
    }

    /** Total of a row without cancellation. */
    public double without(PhaseNoise.Row row, double f, double[] plainSquared) {
        return noise.vibration(row, f, plainSquared) + noise.floor(Stack.BARE, f);
    }
}

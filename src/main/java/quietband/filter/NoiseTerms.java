package quietband.filter;

import java.util.List;
import org.hipparchus.complex.Complex;
import quietband.cancellation.CancellationNoise;
import quietband.cancellation.CancellationPath;
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
    private final double[] weight;

    public NoiseTerms(Design design, PathResponse source, boolean measured) {
        this.correction = design.cancellation().orElseThrow().withoutFilter();
        this.path = new CancellationPath(correction);
        this.noise = new PhaseNoise(design);
        this.source = source;
        this.measured = measured;
        this.outputHz = design.oscillator().outputHz();
        this.weight = design.weightsPerG().toArray();
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
        Complex through = measured ? source.weighted(i, f) : path.afterSensor(i, f).multiply(path.gain(i) * weight[i]);
        double n = correction.sensor().noiseGPerRtHz().get(i);
        double sum = through.norm() * through.norm() * n * n;
        if (correction.path().converterBits() > 0) {
            double q = CancellationNoise.quantiserStepG(correction, i);
            double digital = path.filterAndHold(i, f).multiply(path.tuningPole(f)).norm() * weight[i] * path.gain(i);
            sum += digital * digital * q * q / (6 * correction.path().sampleRateHz());
        }
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

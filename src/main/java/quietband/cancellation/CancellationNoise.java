package quietband.cancellation;

import quietband.model.Cancellation;
import quietband.model.Vec;

/**
 * Noise that the cancellation adds to an oscillator, as one-sided density of fractional frequency S_y in 1/Hz.
 */
public final class CancellationNoise {

    private final CancellationPath path;
    private final NoiseSources sources;

    /**
     * For one cancellation.
     *
     * @param weightsPerG the weights in use, 1/g
     */
    public CancellationNoise(Cancellation cancellation, Vec weightsPerG) {
        this.path = new CancellationPath(cancellation);
        this.sources = new NoiseSources(cancellation, weightsPerG);
    }

    /** Sensor and converter of all axes. */
    public double sensor(double f) {
        double sum = 0;
        for (int i = 0; i < 3; i++) {
            sum += sources.sensor(i, path.afterSensorPower(i, f)) + sources.converter(i, path.digitalPower(i, f));
        }
        return sum;
    }

    /** Port. */
    public double tuning(double f) {
        return sources.port(path.tuningPower(f));
    }

    /** Step of the converter, q = 2 range/2^bits, in g. */
    public static double quantiserStepG(Cancellation cancellation, int axis) {
        return Math.scalb(2 * cancellation.sensor().rangeG().get(axis), -cancellation.path().converterBits());
    }
}

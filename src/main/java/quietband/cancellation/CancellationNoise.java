package quietband.cancellation;

import quietband.model.Cancellation;
import quietband.model.Cancellation.Sensor;
import quietband.model.Vec;

/**
 * Noise that the cancellation adds to an oscillator, as one-sided density of fractional frequency S_y in 1/Hz.
 */
public final class CancellationNoise {

    private final Cancellation cancellation;
    private final CancellationPath path;
    private final Vec weightsPerG;
    private final double[] step = new double[3];

    /**
     * For one cancellation.
     *
     * @param weightsPerG the weights in use, 1/g
     */
    public CancellationNoise(Cancellation cancellation, Vec weightsPerG) {
        this.cancellation = cancellation;
        this.path = new CancellationPath(cancellation);
        this.weightsPerG = weightsPerG;
        for (int i = 0; i < 3; i++) {
            step[i] = quantiserStepG(cancellation, i);
        }
    }

    /**
     * Sensor and converter: sum w_i^2 |P_i/sensor_i|^2 n_a^2 + sum w_i^2 |(1 + gain_i) filter_i hold tuning|^2 q^2/(6 fs).
     * The quantiser's step is q = 2 range/2^bits; its variance q^2/12 spreads evenly up to fs/2.
     */
    public double sensor(double f) {
        Sensor sensor = cancellation.sensor();
        double sum = 0;
        for (int i = 0; i < 3; i++) {
            double w = weightsPerG.get(i) * path.gain(i);
            double n = sensor.noiseGPerRtHz().get(i);
            sum += w * w * path.afterSensorPower(i, f) * n * n;
            if (cancellation.path().converterBits() > 0) {
                double q = step[i];
                sum += w * w * path.digitalPower(i, f) * q * q / (6 * cancellation.path().sampleRateHz());
            }
        }
        return sum;
    }

    /** Port: |slope|^2 |tuning|^2 e_n^2. */
    public double tuning(double f) {
        double port = cancellation.tuning().slopePerV() * cancellation.tuning().noiseVPerRtHz();
        return port * port * path.tuningPower(f);
    }

    /** Step of the converter, q = 2 range/2^bits, in g. */
    public static double quantiserStepG(Cancellation cancellation, int axis) {
        return Math.scalb(2 * cancellation.sensor().rangeG().get(axis), -cancellation.path().converterBits());
    }
}

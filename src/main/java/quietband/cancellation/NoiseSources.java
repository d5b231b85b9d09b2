package quietband.cancellation;

import quietband.model.Cancellation;
import quietband.model.Vec;

/**
 * The cancellation's sources of noise where they come in, as one-sided densities of fractional frequency in 1/Hz: each still to be
 * multiplied by the power |.|^2 of what follows.
 * <pre>
 *   sensor     w_i^2 (1 + gain_i)^2 n_i^2            |after the sensor|^2
 *   converter  w_i^2 (1 + gain_i)^2 q_i^2/(6 fs)     |filter hold tuning|^2
 *   port       slope^2 e_n^2                         |tuning|^2
 * </pre>
 * A converter's step is q = 2 range/2^bits; its variance q^2/12 spreads evenly up to fs/2 (W. R. Bennett, Bell Syst. Tech. J.
 * 27(3) 446-472 (1948), from memory).
 */
public final class NoiseSources {

    private final double[] sensor = new double[3];
    private final double[] converter = new double[3];
    private final double port;

    /**
     * Of one cancellation.
     *
     * @param weightsPerG the weights in use, 1/g
     */
    public NoiseSources(Cancellation c, Vec weightsPerG) {
        for (int i = 0; i < 3; i++) {
            double w = weightsPerG.get(i) * (1 + c.error().gain().get(i));
            sensor[i] = sensor(c, i, w * w);
            if (c.path().converterBits() > 0) {
                double q = CancellationNoise.quantiserStepG(c, i);
                converter[i] = w * w * q * q / (6 * c.path().sampleRateHz());
            }
        }
        double noise = c.tuning().slopePerV() * c.tuning().noiseVPerRtHz();
        port = noise * noise;
    }

    /** A sensor's n^2 times the power of all that follows, weight and gain counted. */
    public static double sensor(Cancellation c, int axis, double power) {
        double n = c.sensor().noiseGPerRtHz().get(axis);
        return power * n * n;
    }

    /** Sensor of an axis. */
    public double sensor(int axis, double afterPower) {
        return sensor[axis] * afterPower;
    }

    /** Converter of an axis; 0 without one. */
    public double converter(int axis, double digitalPower) {
        return converter[axis] * digitalPower;
    }

    /** Port. */
    public double port(double tuningPower) {
        return port * tuningPower;
    }

    /** Adds all of them to a density on n frequencies, from the powers by axis and frequency. */
    public void addTo(double[] density, double[][] afterPower, double[][] digitalPower, double[] tuningPower, int n) {
        for (int i = 0; i < 3; i++) {
            add(density, sensor[i], afterPower[i], n);
            add(density, converter[i], digitalPower[i], n);
        }
        add(density, port, tuningPower, n);
    }

    private static void add(double[] density, double source, double[] power, int n) {
        for (int t = 0; source != 0 && t < n; t++) {
            density[t] += source * power[t];
        }
    }
}

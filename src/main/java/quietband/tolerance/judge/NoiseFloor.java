package quietband.tolerance.judge;

import quietband.cancellation.CancellationNoise;
import quietband.model.Cancellation;
import quietband.model.Design;
import quietband.model.Stack;
import quietband.model.Vec;
import quietband.tolerance.kernel.FrequencyBlock;

/** Phase noise of one unit without vibration, in its fullest stack, as power ratio per Hz. */
final class NoiseFloor {

    private final double[] analog = new double[3];
    private final double[] digital = new double[3];
    private double port;
    private boolean corrected;

    void fill(Design unit, Vec weights) {
        corrected = unit.cancellation().isPresent() && Stack.fullest(unit).corrected();
        if (!corrected) {
            return;
        }
        Cancellation c = unit.cancellation().orElseThrow();
        for (int i = 0; i < 3; i++) {
            double w = weights.get(i) * (1 + c.error().gain().get(i));
            double n = c.sensor().noiseGPerRtHz().get(i);
            analog[i] = w * w * n * n;
            digital[i] = 0;
            if (c.path().converterBits() > 0) {
                double q = CancellationNoise.quantiserStepG(c, i);
                digital[i] = w * w * q * q / (6 * c.path().sampleRateHz());
            }
        }
        double slope = c.tuning().slopePerV() * c.tuning().noiseVPerRtHz();
        port = slope * slope;
    }

    /** Writes the floor at every frequency of a block. */
    void at(FrequencyBlock b, double[] floor) {
        if (corrected) {
            first(floor, b.staticNoise, port, b.port2, analog[0], b.after2[0], analog[1], b.after2[1], b.n);
            rest(floor, analog[2], b.after2[2], digital[0], b.digital2[0], digital[1], b.digital2[1], digital[2], b.digital2[2], b.n);
        } else {
            System.arraycopy(b.staticNoise, 0, floor, 0, b.n);
        }
    }

    private static void first(double[] z, double[] w, double a, double[] x, double b, double[] y, double c, double[] v, int n) {
        for (int t = 0; t < n; t++) {
            z[t] = w[t] + a * x[t] + b * y[t] + c * v[t];
        }
    }

    private static void rest(double[] z, double a, double[] w, double b, double[] x, double c, double[] y, double d, double[] v,
                             int n) {
        for (int t = 0; t < n; t++) {
            z[t] += a * w[t] + b * x[t] + (c * y[t] + d * v[t]);
        }
    }
}

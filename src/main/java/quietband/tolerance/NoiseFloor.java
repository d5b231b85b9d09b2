package quietband.tolerance;

import quietband.cancellation.CorrectionNoise;
import quietband.model.Cancellation;
import quietband.model.Design;
import quietband.model.Stack;
import quietband.model.Vec;

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
                double q = CorrectionNoise.quantiserStepG(c, i);
                digital[i] = w * w * q * q / (6 * c.path().sampleRateHz());
            }
        }
        double slope = c.tuning().slopePerV() * c.tuning().noiseVPerRtHz();
        port = slope * slope;
    }

    /** Writes the floor at every frequency of a block. */
    void at(Block b, double[] floor) {
        for (int t = 0; t < b.n; t++) {
            double sum = 0;
            if (corrected) {
                sum = port * b.port2[t];
                for (int i = 0; i < 3; i++) {
                    sum += analog[i] * b.after2[i][t] + digital[i] * b.digital2[i][t];
                }
            }
            floor[t] = b.quiet[t] + b.toPhase[t] * sum;
        }
    }
}

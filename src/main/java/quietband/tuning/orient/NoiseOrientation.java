package quietband.tuning.orient;

import java.util.Arrays;
import java.util.List;
import quietband.cancellation.CancellationNoise;
import quietband.demand.PhaseNoise;
import quietband.model.Axis;
import quietband.model.Cancellation;
import quietband.model.Design;
import quietband.model.Requirement;
import quietband.model.Stack;
import quietband.model.Vec;
import quietband.oscillator.Sidebands;
import quietband.response.DesignGrid;
import quietband.spectrum.FrequencyQuadrature;

/**
 * Integrated phase noise at the output in the model's vibration, rad rms, of the worst row (an axis, or all together). For each row
 * it is 2 times a quadratic form in (G, w), integrated once: v^T Q v with v = (G, w), and what sensor, port and oscillator at rest add.
 */
final class NoiseOrientation implements OrientationGoal {

    private static final int SIZE = 6;
    private static final int FORM = SIZE * SIZE;

    private final double[][] form;
    private final double floor;

    NoiseOrientation(Design design) {
        OrientedResidual map = new OrientedResidual(design);
        PhaseNoise noise = new PhaseNoise(design);
        List<PhaseNoise.Row> rows = noise.rows();
        Requirement r = design.requirement();
        double from = r.jitter().map(Requirement.Jitter::fromHz).orElse(r.fromHz());
        double to = r.jitter().map(Requirement.Jitter::toHz).orElse(r.toHz());
        boolean corrected = Stack.fullest(design).corrected();
        CancellationNoise[] sensor = new CancellationNoise[3];
        for (Axis axis : Axis.ALL) {
            Cancellation c = design.cancellation().orElse(null);
            sensor[axis.ordinal()] = c == null ? null : new CancellationNoise(c, Vec.ZERO.with(axis, 1));
        }
        double[] m = new double[36];
        double outputHz = design.oscillator().outputHz();
        double[] sums = FrequencyQuadrature.integrate(DesignGrid.of(design, from, to), rows.size() * FORM + 1, (f, into) -> {
            map.at(f, m);
            double scale = Sidebands.phaseNoise(1, outputHz, f);
            for (int k = 0; k < rows.size(); k++) {
                quadratic(into, k * FORM, m, rows.get(k), noise, f, scale);
                for (int i = 0; corrected && i < 3; i++) {
                    into[k * FORM + (3 + i) * SIZE + 3 + i] += scale * sensor[i].sensor(f);
                }
            }
            into[rows.size() * FORM] = noise.staticNoise(f) + (corrected ? noise.tuning(f) : 0);
        });
        form = new double[rows.size()][];
        for (int k = 0; k < rows.size(); k++) {
            form[k] = Arrays.copyOfRange(sums, k * FORM, (k + 1) * FORM);
        }
        floor = sums[rows.size() * FORM];
    }

    private static void quadratic(double[] into, int at, double[] m, PhaseNoise.Row row, PhaseNoise noise, double f, double scale) {
        for (int a = 0; a < SIZE; a++) {
            for (int b = 0; b < SIZE; b++) {
                double sum = 0;
                for (Axis axis : row.axes()) {
                    int p = (a < 3 ? 0 : 18) + 6 * axis.ordinal() + 2 * (a % 3);
                    int q = (b < 3 ? 0 : 18) + 6 * axis.ordinal() + 2 * (b % 3);
                    sum += noise.density(axis, f) * (m[p] * m[q] + m[p + 1] * m[q + 1]);
                }
                into[at + a * SIZE + b] = scale * sum;
            }
        }
    }

    @Override
    public double of(Vec g, Vec weights, double enough) {
        double[] v = {g.x(), g.y(), g.z(), weights.x(), weights.y(), weights.z()};
        double worst = 0;
        for (double[] q : form) {
            double sum = floor;
            for (int a = 0; a < SIZE; a++) {
                for (int b = 0; b < SIZE; b++) {
                    sum += v[a] * q[a * SIZE + b] * v[b];
                }
            }
            worst = Math.max(worst, sum);
        }
        return Sidebands.jitterRad(worst);
    }
}

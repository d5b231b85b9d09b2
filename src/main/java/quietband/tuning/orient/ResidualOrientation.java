package quietband.tuning.orient;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import quietband.demand.ResidualDemand;
import quietband.model.Design;
import quietband.model.Vec;
import quietband.response.DesignGrid;

/**
 * The largest residual over the band as seen through platform and cancellation: over the limit where there is one (a ratio), else
 * in 1/g; the worst axis or the vector, as the requirement judges. Frequencies that could be worst come first, so that most of the
 * others need not be looked at: |sum_i m_i g_i| is at most |m| |g|.
 */
final class ResidualOrientation implements OrientationGoal {

    private static final int PARTS = 4;

    private final List<Line> lines = new ArrayList<>();
    private final boolean follows;
    private final boolean limited;

    /** Rows of R and S of one frequency: one axis, or all three for the vector; already over the limit. */
    private record Line(double frequencyHz, int axis, double[] matrix, double most, double mostWeights) { }

    ResidualOrientation(Design design) {
        OrientedResidual map = new OrientedResidual(design);
        follows = map.follows();
        ResidualDemand demand = new ResidualDemand(design, 1);
        limited = demand.asked();
        for (double f : dense(DesignGrid.of(design, design.requirement().fromHz(), design.requirement().toHz()))) {
            double[] m = new double[36];
            map.at(f, m);
            for (int row = 0; row < demand.rows(); row++) {
                int[] axes = demand.axes(row);
                double[] of = new double[12 * axes.length];
                for (int k = 0; k < axes.length; k++) {
                    System.arraycopy(m, 6 * axes[k], of, 6 * k, 6);
                    System.arraycopy(m, 18 + 6 * axes[k], of, 6 * (axes.length + k), 6);
                }
                add(f, demand.judged(row), of, demand.limit(row, f));
            }
        }
        lines.sort(Comparator.comparingDouble((Line l) -> l.most() + l.mostWeights()).reversed());
    }

    /** Each step of a grid in four: what a maximum between two points is missed by is then below 0.02 %. */
    private static double[] dense(double[] f) {
        double[] all = new double[PARTS * (f.length - 1) + 1];
        for (int k = 0; k + 1 < f.length; k++) {
            for (int part = 0; part < PARTS; part++) {
                all[PARTS * k + part] = f[k] * StrictMath.pow(f[k + 1] / f[k], (double) part / PARTS);
            }
        }
        all[all.length - 1] = f[f.length - 1];
        return all;
    }

    private void add(double f, int axis, double[] m, double limit) {
        if (!Double.isFinite(limit)) {
            return;
        }
        int half = m.length / 2;
        double own = 0;
        double weights = 0;
        for (int k = 0; k < half; k++) {
            m[k] /= limit;
            m[half + k] /= limit;
            double together = m[k] + m[half + k];
            own += follows ? together * together : m[k] * m[k];
            weights += follows ? 0 : m[half + k] * m[half + k];
        }
        lines.add(new Line(f, axis, m, Math.sqrt(own), Math.sqrt(weights)));
    }

    /** Whether figures are over a limit. */
    boolean limited() {
        return limited;
    }

    @Override
    public double of(Vec g, Vec weights, double enough) {
        double[] v = {g.x(), g.y(), g.z()};
        double[] w = {weights.x(), weights.y(), weights.z()};
        double length = g.length();
        double weight = weights.length();
        boolean together = follows && weights.equals(g);
        double worst = 0;
        for (Line l : lines) {
            if (together && l.most() * length <= worst) {
                break;
            }
            if (!together && !follows && l.most() * length + l.mostWeights() * weight <= worst) {
                continue;
            }
            worst = Math.max(worst, size(l, v, w));
            if (worst > enough) {
                break;
            }
        }
        return worst;
    }

    private static double size(Line l, double[] v, double[] w) {
        double[] m = l.matrix();
        int half = m.length / 2;
        double sum = 0;
        for (int row = 0; row < half; row += 6) {
            double re = 0;
            double im = 0;
            for (int i = 0; i < 3; i++) {
                re += m[row + 2 * i] * v[i] + m[half + row + 2 * i] * w[i];
                im += m[row + 2 * i + 1] * v[i] + m[half + row + 2 * i + 1] * w[i];
            }
            sum += re * re + im * im;
        }
        return Math.sqrt(sum);
    }
}

package quietband.motion.platform;

import java.util.ArrayList;
import java.util.List;
import java.util.TreeMap;
import org.hipparchus.complex.Complex;
import quietband.platform.Assembly;

/**
 * Springs with mass as oscillators. The elastic line between housing and platform moves as the straight line between its
 * ends plus its standing waves between fixed ends, sin(n pi xi); per unit mass of the line, with kappa = k/m_s:
 * <pre>
 *   psi_n'' + (n pi)^2 kappa psi_n = -(sqrt2/(n pi)) [ (-1)^(n+1) b r'' + (1 - (-1)^n) b T a ]
 *   force on the platform, inertial part: 1/3 b r'' + sum (sqrt2/(n pi)) (-1)^(n+1) psi_n'' + 1/2 b T a
 * </pre>
 * which is the expansion of k b cot b and k b/sin b in partial fractions. Waves above the ones kept enter as one odd and one even
 * oscillator of the same value and slope over frequency. Lines of one kappa and loss factor share their waves: only the rank of their
 * directions counts.
 */
final class LineModes {

    /**
     * One oscillator of modal mass 1.
     *
     * @param row    direction, scaled by the root of the lines' mass (length 6)
     * @param platform coupling to the acceleration of the platform along the row
     * @param housing  coupling to the acceleration of the housing along the row
     * @param omega2   natural frequency squared, rad^2/s^2
     * @param loss     loss factor
     */
    record Oscillator(double[] row, double platform, double housing, double omega2, double loss) { }

    private static final double WANTED = 2e-7;
    private static final double WANTED_OVER_BAND = 2e-5;
    private static final int MOST = 200;
    private static final int TAIL = 3000;

    private final List<double[]> rows = new ArrayList<>();
    private final List<Oscillator> oscillators = new ArrayList<>();
    private final boolean single;
    private double error;

    /**
     * Expands all lines of a platform.
     *
     * @param topHz  frequency up to which the expansion follows the line, Hz
     * @param single whether only that very frequency counts
     */
    LineModes(Assembly assembly, double topHz, boolean single) {
        this.single = single;
        TreeMap<Double, TreeMap<Double, double[]>> groups = new TreeMap<>();
        for (Assembly.Line line : assembly.lines()) {
            double[] s = groups.computeIfAbsent(line.stiffness() / line.mass(), k -> new TreeMap<>())
                .computeIfAbsent(line.loss(), l -> new double[36]);
            Assembly.addRank1(s, line.row(), 0, line.mass());
        }
        groups.forEach((kappa, byLoss) -> byLoss.forEach((loss, s) ->
            expand(kappa, loss, RankRows.of(s, assembly.mass()), 2 * Math.PI * topHz)));
    }

    private void expand(double kappa, double loss, List<double[]> group, double w) {
        rows.addAll(group);
        double around = single ? w * w : w * w / 2;
        int kept = (int) Math.floor(w / Math.sqrt(kappa) / Math.PI);
        List<Oscillator> one = waves(kappa, loss, kept, around);
        double off = off(kappa, loss, one, w);
        while (off > (single ? WANTED : WANTED_OVER_BAND) && kept < MOST) {
            kept++;
            one = waves(kappa, loss, kept, around);
            off = off(kappa, loss, one, w);
        }
        error = Math.max(error, off);
        for (double[] row : group) {
            one.forEach(o -> oscillators.add(new Oscillator(row, o.platform, o.housing, o.omega2, loss)));
        }
    }

    /** The lowest waves and one oscillator each for the odd and the even rest, as it is around w = sqrt(around). */
    private static List<Oscillator> waves(double kappa, double loss, int kept, double around) {
        List<Oscillator> list = new ArrayList<>();
        for (int n = 1; n <= kept; n++) {
            list.add(oscillator(n % 2 == 1, weight(n), omega2(n, kappa), loss));
        }
        for (int first : new int[] {kept + 1, kept + 2}) {
            // sum of A_n/(omega_n^2 - w^2) and its derivative by w^2
            double value = 0;
            double slope = 0;
            for (int n = first + 2 * TAIL; n >= first; n -= 2) {
                double d = 1 / (omega2(n, kappa) - around);
                value += weight(n) * d;
                slope += weight(n) * d * d;
            }
            list.add(oscillator(first % 2 == 1, value * value / slope, around + value / slope, loss));
        }
        return list;
    }

    private static double weight(int n) {
        return 2 / (n * Math.PI * n * Math.PI);
    }

    private static double omega2(int n, double kappa) {
        return n * Math.PI * n * Math.PI * kappa;
    }

    private static Oscillator oscillator(boolean odd, double weight, double omega2, double loss) {
        double c = Math.sqrt(weight);
        return new Oscillator(new double[6], odd ? c : -c, odd ? 2 * c : 0, omega2, loss);
    }

    /** Relative error of the direct and of the carried part, lossy, at w. */
    private static double off(double kappa, double loss, List<Oscillator> waves, double w) {
        Complex stiff = new Complex(1, loss).multiply(kappa);
        Complex b = stiff.reciprocal().sqrt().multiply(w);
        Complex direct = stiff.multiply(b).divide(b.tan());
        Complex carried = b.multiply(0.5).tan().divide(b);
        Complex direct2 = stiff.subtract(w * w / 3);
        Complex carried2 = new Complex(0.5);
        for (Oscillator o : waves) {
            Complex d = new Complex(1, loss).multiply(o.omega2).subtract(w * w).reciprocal();
            direct2 = direct2.subtract(d.multiply(StrictMath.pow(w, 4) * o.platform * o.platform));
            carried2 = carried2.add(d.multiply(w * w * o.platform * o.housing));
        }
        return direct2.subtract(direct).norm() / (direct.norm() + w * w)
            + carried2.subtract(carried).norm() / (carried.norm() + 0.5);
    }

    /** Directions of the lines' own mass, scaled by its root: m_s/3 of each moves with the platform. */
    List<double[]> rows() {
        return rows;
    }

    List<Oscillator> oscillators() {
        return oscillators;
    }

    /** Largest relative error at the top frequency. */
    double error() {
        return error;
    }
}

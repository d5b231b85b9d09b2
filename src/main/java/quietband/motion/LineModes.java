package quietband.motion;

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
 * oscillator with the same first two moments. Lines of one kappa and loss factor share their waves: only the rank of their
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

    private static final double WANTED = 1e-8;
    private static final int MOST = 60;
    private static final int TAIL = 4000;

    private final List<double[]> rows = new ArrayList<>();
    private final List<Oscillator> oscillators = new ArrayList<>();
    private double error;

    /**
     * Expands all lines of a platform.
     *
     * @param topHz frequency up to which the expansion follows the line, Hz
     */
    LineModes(Assembly assembly, double topHz) {
        TreeMap<Double, TreeMap<Double, double[]>> groups = new TreeMap<>();
        for (Assembly.Line line : assembly.lines()) {
            double[] s = groups.computeIfAbsent(line.stiffness() / line.mass(), k -> new TreeMap<>())
                .computeIfAbsent(line.loss(), l -> new double[36]);
            for (int i = 0; i < 6; i++) {
                for (int j = 0; j < 6; j++) {
                    s[6 * i + j] += line.mass() * line.row()[i] * line.row()[j];
                }
            }
        }
        groups.forEach((kappa, byLoss) -> byLoss.forEach((loss, s) ->
            expand(kappa, loss, RankRows.of(s, assembly.mass()), 2 * Math.PI * topHz)));
    }

    private void expand(double kappa, double loss, List<double[]> group, double w) {
        rows.addAll(group);
        int kept = 0;
        List<Oscillator> one = waves(kappa, loss, kept);
        double off = off(kappa, loss, one, w);
        while (off > WANTED && kept < MOST) {
            kept += kept < 8 ? 1 : 4;
            one = waves(kappa, loss, kept);
            off = off(kappa, loss, one, w);
        }
        error = Math.max(error, off);
        for (double[] row : group) {
            one.forEach(o -> oscillators.add(new Oscillator(row, o.platform, o.housing, o.omega2, loss)));
        }
    }

    private static List<Oscillator> waves(double kappa, double loss, int kept) {
        List<Oscillator> list = new ArrayList<>();
        for (int n = 1; n <= kept; n++) {
            list.add(oscillator(n % 2 == 1, 2 / (n * Math.PI * n * Math.PI), n * Math.PI * n * Math.PI * kappa, loss));
        }
        for (int first : new int[] {kept + 1, kept + 2}) {
            double s4 = 0;
            double s6 = 0;
            for (int n = first + 2 * TAIL; n >= first; n -= 2) {
                double n2 = (double) n * n;
                s4 += 1 / (n2 * n2);
                s6 += 1 / (n2 * n2 * n2);
            }
            // sum over the tail of A_n/omega_n^2 and A_n/omega_n^4 with A_n = 2/(n pi)^2
            double m1 = 2 * s4 / (StrictMath.pow(Math.PI, 4) * kappa);
            double m2 = 2 * s6 / (StrictMath.pow(Math.PI, 6) * kappa * kappa);
            list.add(oscillator(first % 2 == 1, m1 * m1 / m2, m1 / m2, loss));
        }
        return list;
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

package quietband.filter.sections;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import org.hipparchus.complex.Complex;
import quietband.model.DigitalFilter;
import quietband.numerics.PolynomialRoots;

/** Second-order sections from one numerator in z^-1 and the denominators: zeros go to the poles they are nearest to. */
public final class SectionFactors {

    private final double[] q;
    private final double[] a;
    private final double middle;

    private SectionFactors(double[] q, double[] a, double middle) {
        this.q = q;
        this.a = a;
        this.middle = middle;
    }

    /**
     * The filter.
     *
     * @param q      numerator in e = 1 - z^-1, where zeros near 1 keep their digits: q[k] e^k
     * @param a      denominators {a1, a2, ..}
     * @param middle where sections have equal gains, rad per sample
     */
    public static DigitalFilter of(double[] q, double[] a, double middle) {
        return Arrays.stream(q).allMatch(v -> v == 0) ? new DigitalFilter(new int[] {0}, new double[1], new double[0][])
            : new SectionFactors(q, a, middle).filter();
    }

    private DigitalFilter filter() {
        List<double[]> zeros = pairs(PolynomialRoots.of(q));
        List<double[]> poles = new ArrayList<>();
        for (int m = 0; m < a.length; m += 2) {
            poles.add(new double[] {a[m], a[m + 1]});
        }
        poles.sort(Comparator.comparingDouble(p -> -radius(p)));
        double[][] sections = new double[poles.size()][];
        for (int m = 0; m < sections.length; m++) {
            double[] p = poles.get(m);
            double[] nearest = {1, 0, 0};
            double least = Double.POSITIVE_INFINITY;
            for (double[] z : zeros) {
                double d = distance(z, p);
                if (d < least) {
                    least = d;
                    nearest = z;
                }
            }
            double[] taken = nearest;
            zeros.removeIf(z -> z == taken);
            sections[m] = new double[] {taken[0], taken[1], taken[2], p[0], p[1]};
        }
        scale(sections);
        return new DigitalFilter(new int[0], new double[0], sections);
    }

    /** Numerators {b0, b1, b2} of second order, the last one of first when their number is odd. */
    private static List<double[]> pairs(List<Complex> roots) {
        List<double[]> pairs = new ArrayList<>();
        List<Double> real = new ArrayList<>();
        for (Complex r : roots) {
            if (r.getImaginary() == 0) {
                real.add(r.getReal());
            } else if (r.getImaginary() > 0) {
                pairs.add(numerator(2 * r.getReal(), r.norm() * r.norm()));
            }
        }
        real.sort(Comparator.comparingDouble(Math::abs));
        for (int k = 0; k + 1 < real.size(); k += 2) {
            pairs.add(numerator(real.get(k) + real.get(k + 1), real.get(k) * real.get(k + 1)));
        }
        if (real.size() % 2 == 1) {
            double r = real.get(real.size() - 1);
            double size = Math.max(1, Math.abs(r));
            pairs.add(new double[] {(1 - r) / size, -1 / size, 0});
        }
        return pairs;
    }

    /** e^2 - sum e + product with e = 1 - z^-1. */
    private static double[] numerator(double sum, double product) {
        double size = Math.max(1, Math.abs(product));
        return new double[] {(1 - sum + product) / size, (sum - 2) / size, 1 / size};
    }

    private static double radius(double[] p) {
        double d = p[0] * p[0] / 4 - p[1];
        return d < 0 ? Math.sqrt(p[1]) : Math.abs(p[0]) / 2 + Math.sqrt(d);
    }

    /** How far numerator and denominator are apart as curves over a log frequency axis up to half the rate. */
    private static double distance(double[] z, double[] p) {
        double least = Double.POSITIVE_INFINITY;
        double most = Double.NEGATIVE_INFINITY;
        for (double w = Math.PI; w > 1e-5; w /= 2) {
            double c = Math.cos(w);
            double s = Math.sin(w);
            double c2 = Math.cos(2 * w);
            double s2 = Math.sin(2 * w);
            double up = Math.hypot(z[0] + z[1] * c + z[2] * c2, z[1] * s + z[2] * s2);
            double down = Math.hypot(1 + p[0] * c + p[1] * c2, p[0] * s + p[1] * s2);
            double gain = Math.log(Math.max(1e-300, up / down));
            least = Math.min(least, gain);
            most = Math.max(most, gain);
        }
        return most - least;
    }

    /** Equal gain of all sections at the middle, whole gain and sign as the numerator has them. */
    private void scale(double[][] sections) {
        double whole = 1;
        for (double[] s : sections) {
            double g = Math.hypot(s[0] + s[1] * Math.cos(middle) + s[2] * Math.cos(2 * middle), s[1] * Math.sin(middle)
                + s[2] * Math.sin(2 * middle)) / Math.hypot(1 + s[3] * Math.cos(middle) + s[4] * Math.cos(2 * middle),
                s[3] * Math.sin(middle) + s[4] * Math.sin(2 * middle));
            if (g > 0) {
                s[0] /= g;
                s[1] /= g;
                s[2] /= g;
            }
        }
        double best = -1;
        for (double e : new double[] {1, 2, 1e-2, 0.5, 1.5}) {
            double value = 0;
            double sum = 0;
            for (int k = q.length - 1; k >= 0; k--) {
                value = value * e + q[k];
                sum = sum * e + Math.abs(q[k]);
            }
            if (Math.abs(value) / sum > best) {
                best = Math.abs(value) / sum;
                whole = value;
                for (double[] s : sections) {
                    whole /= s[0] + (1 - e) * (s[1] + (1 - e) * s[2]);
                }
            }
        }
        double share = Math.pow(Math.abs(whole), 1.0 / sections.length);
        for (int m = 0; m < sections.length; m++) {
            double g = m == 0 && whole < 0 ? -share : share;
            for (int k = 0; k < 3; k++) {
                sections[m][k] *= g;
            }
        }
    }
}

package quietband.platform;

import java.util.ArrayList;
import java.util.List;
import org.hipparchus.linear.Array2DRowRealMatrix;
import org.hipparchus.linear.EigenDecompositionSymmetric;

/**
 * Every natural frequency of the platform in a band, standing waves of massive springs included, with its width.
 *
 * <p>The undamped system is counted by the rule of Wittrick and Williams (Quart. J. Mech. Appl. Math. 24 (1971) 263,
 * from memory): the number of natural frequencies below w is the number of negative eigenvalues of the real D(w) plus, for each line,
 * the number of its own fixed-fixed frequencies below w. Bisection on that count misses none, however close they are.
 * A relaxing branch is counted once as absent and once as stiff.
 */
public final class Resonances {

    /** A peak to be expected: frequency and full half-power width, Hz. */
    public record Peak(double frequencyHz, double widthHz) { }

    /** Most peaks that are told one by one; what counts more is no platform with springs but a medium of its own. */
    private static final int MOST = 500;

    private final Assembly assembly;
    private final DynamicStiffness damped;
    private final List<Assembly.LineGroup> lines;
    private final List<Peak> peaks = new ArrayList<>();

    private Resonances(Assembly assembly) {
        this.assembly = assembly;
        this.damped = new DynamicStiffness(assembly);
        this.lines = assembly.lineGroups();
    }

    /**
     * The peaks between two frequencies in Hz, up to {@link #countedTo} only.
     */
    public static List<Peak> between(Assembly assembly, double fromHz, double toHz) {
        Resonances r = new Resonances(assembly);
        double end = countedTo(assembly, fromHz, toHz);
        r.search(false, 2 * Math.PI * fromHz, 2 * Math.PI * end);
        if (!assembly.relaxing().isEmpty()) {
            r.search(true, 2 * Math.PI * fromHz, 2 * Math.PI * end);
        }
        r.addLines(fromHz, end);
        return r.peaks;
    }

    /** Up to where there are at most some 500 natural frequencies from a frequency on, Hz; where there are no more, the upper end. */
    public static double countedTo(Assembly assembly, double fromHz, double toHz) {
        Resonances r = new Resonances(assembly);
        long below = r.count(2 * Math.PI * fromHz, false);
        double low = fromHz;
        double high = toHz;
        if (r.count(2 * Math.PI * toHz, false) - below <= MOST) {
            return toHz;
        }
        while (high - low > 1e-3 * high) {
            double middle = Math.sqrt(low * high);
            boolean more = r.count(2 * Math.PI * middle, false) - below > MOST;
            low = more ? low : middle;
            high = more ? middle : high;
        }
        return low;
    }

    private void search(boolean stiffBranches, double from, double to) {
        bisect(stiffBranches, from, count(from, stiffBranches), to, count(to, stiffBranches));
    }

    private void bisect(boolean stiff, double lo, long below, double hi, long upTo) {
        if (upTo <= below) {
            return;
        }
        if (hi - lo <= 1e-11 * hi) {
            double w = Math.sqrt(lo * hi);
            peaks.add(new Peak(w / (2 * Math.PI), width(w, stiff) / (2 * Math.PI)));
            return;
        }
        double middle = Math.sqrt(lo * hi);
        long n = count(middle, stiff);
        bisect(stiff, lo, below, middle, n);
        bisect(stiff, middle, n, hi, upTo);
    }

    private long count(double w, boolean stiff) {
        long count = negativeEigenvalues(undamped(w, stiff));
        for (Assembly.LineGroup line : lines) {
            count += line.count() * (long) Math.floor(w * Math.sqrt(line.mass() / line.stiffness()) / Math.PI);
        }
        return count;
    }

    /** Real D(w) without damping and loss. */
    private double[] undamped(double w, boolean stiff) {
        double[] d = new double[36];
        for (int i = 0; i < 36; i++) {
            d[i] = assembly.plainStiffness()[i] - w * w * assembly.mass()[i];
        }
        if (stiff) {
            for (Assembly.Relaxing r : assembly.relaxing()) {
                for (int i = 0; i < 36; i++) {
                    d[i] += r.stiffness()[i];
                }
            }
        }
        for (Assembly.LineGroup line : lines) {
            double b = w * Math.sqrt(line.mass() / line.stiffness());
            double direct = line.stiffness() * b / StrictMath.tan(b);
            for (int i = 0; i < 36; i++) {
                d[i] += direct * line.outer()[i];
            }
        }
        return d;
    }

    /** Sylvester's law: the negative pivots of the LDL^T factors. */
    private static int negativeEigenvalues(double[] d) {
        int negative = 0;
        for (int p = 0; p < 6; p++) {
            double pivot = d[7 * p];
            if (pivot < 0) {
                negative++;
            }
            if (pivot == 0) {
                continue;
            }
            for (int i = p + 1; i < 6; i++) {
                double f = d[6 * i + p] / pivot;
                for (int j = p; j < 6; j++) {
                    d[6 * i + j] -= f * d[6 * p + j];
                }
            }
        }
        return negative;
    }

    /** Full width at half power: twice the imaginary part of phi^T D phi over the slope of its real part; rad/s. */
    private double width(double w, boolean stiff) {
        double[] scale = new double[6];
        for (int i = 0; i < 6; i++) {
            scale[i] = 1 / Math.sqrt(assembly.mass()[7 * i]);
        }
        double[] phi = nullVector(undamped(w, stiff), scale);
        damped.at(w);
        double lost = quadratic(damped.dIm(), phi);
        double step = 1e-7 * w;
        double slope = (quadratic(undamped(w + step, stiff), phi) - quadratic(undamped(w - step, stiff), phi)) / (2 * step);
        double width = 2 * lost / Math.abs(slope);
        return width > 0 && width < w ? width : 1e-3 * w;
    }

    private static double[] nullVector(double[] d, double[] scale) {
        double[][] a = new double[6][6];
        for (int i = 0; i < 6; i++) {
            for (int j = 0; j < 6; j++) {
                a[i][j] = (d[6 * i + j] + d[6 * j + i]) / 2 * scale[i] * scale[j];
            }
        }
        EigenDecompositionSymmetric eigen = new EigenDecompositionSymmetric(new Array2DRowRealMatrix(a, false));
        int least = 0;
        for (int n = 1; n < 6; n++) {
            least = Math.abs(eigen.getEigenvalue(n)) < Math.abs(eigen.getEigenvalue(least)) ? n : least;
        }
        double[] phi = eigen.getEigenvector(least).toArray();
        for (int i = 0; i < 6; i++) {
            phi[i] *= scale[i];
        }
        return phi;
    }

    private static double quadratic(double[] d, double[] phi) {
        double sum = 0;
        for (int i = 0; i < 6; i++) {
            for (int j = 0; j < 6; j++) {
                sum += phi[i] * d[6 * i + j] * phi[j];
            }
        }
        return sum;
    }

    /** The fixed-fixed frequencies of every line, f = n/2 sqrt(k/m_s), as wide as its loss factor makes them. */
    private void addLines(double fromHz, double toHz) {
        for (Assembly.LineGroup line : lines) {
            double first = Math.sqrt(line.stiffness() / line.mass()) / 2;
            int low = (int) Math.max(1, Math.ceil(fromHz / first));
            for (int n = low; n * first <= toHz; n++) {
                peaks.add(new Peak(n * first, n * first * Math.max(line.loss(), 1e-6)));
            }
        }
    }
}

package quietband.identification.search;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.stream.IntStream;
import org.hipparchus.distribution.continuous.ChiSquaredDistribution;

/**
 * What a prediction leaves of the measurement: how uncertain each point is, which points are outliers. A point is one when it
 * is farther off than one in a hundred such data sets would have by chance (Bonferroni), measured by the spread of the
 * others; more than a fifth of a curve are no outliers but a model that does not fit.
 */
public final class ResidualScatter {

    private static final double CHANCE = 0.01;
    private static final double MOST = 0.2;

    private final MeasuredPoints seen;
    private final double[] sigma;
    private final boolean[] outlier;
    private final boolean[] stated;
    private final List<String> noise = new ArrayList<>();
    private final List<String> notes = new ArrayList<>();
    private int numbers;
    private double likelihood;

    /**
     * Looks at what is left.
     *
     * @param outliers points that another fit left out; null to choose
     * @param robust   whether outliers are looked for
     */
    ResidualScatter(MeasuredPoints seen, double[] re, double[] im, boolean[] outliers, boolean robust) {
        this.seen = seen;
        int n = seen.size();
        sigma = new double[n];
        outlier = outliers == null ? new boolean[n] : outliers.clone();
        stated = new boolean[n];
        double[] size = new double[n];
        double[] square = new double[n];
        for (int i = 0; i < n; i++) {
            size[i] = Math.max(Math.hypot(re[i], im[i]), 1e-3 * seen.magnitude()[i]);
            square[i] = square(seen, i, re[i], im[i]);
        }
        for (int s = 0; s < seen.series().size(); s++) {
            series(s, size, square, robust && outliers == null);
        }
    }

    /** Squared difference of a point, summed over its real numbers. */
    public static double square(MeasuredPoints seen, int i, double re, double im) {
        double m = seen.magnitude()[i];
        if (!seen.phased(i)) {
            double d = Math.hypot(re, im) - m;
            return d * d;
        }
        double a = re - m * Math.cos(seen.phase()[i]);
        double b = im - m * Math.sin(seen.phase()[i]);
        return a * a + b * b;
    }

    private void series(int s, double[] size, double[] square, boolean choose) {
        int[] at = IntStream.range(0, seen.size()).filter(i -> seen.of()[i] == s).toArray();
        int count = seen.series().get(s).phased() ? 2 : 1;
        double[] f = pick(seen.frequency(), at);
        double[] h = pick(size, at);
        double[] q = pick(square, at);
        boolean known = seen.series().get(s).stated();
        boolean[] used = new boolean[at.length];
        for (int k = 0; k < at.length; k++) {
            used[k] = !outlier[at[k]];
        }
        if (choose) {
            chosen(s, at, h, q, count, used);
        }
        double[] own;
        if (known) {
            own = IntStream.range(0, at.length).mapToDouble(k -> seen.stated()[at[k]] * h[k]).toArray();
            noise.add(seen.series().get(s).label() + ": as stated");
        } else {
            CurveNoise estimated = CurveNoise.of(f, h, q, count, used);
            own = estimated.sigma();
            numbers += estimated.numbers();
            noise.add(seen.series().get(s).label() + ": " + estimated.words());
        }
        if (choose && !known) {
            flag(at, own, q, count, used, 1);
            own = CurveNoise.of(f, h, q, count, used).sigma();
        }
        for (int k = 0; k < at.length; k++) {
            sigma[at[k]] = own[k];
            outlier[at[k]] = !used[k];
            stated[at[k]] = known;
            if (used[k]) {
                likelihood += 2 * count * Math.log(own[k]) + q[k] / (own[k] * own[k]) + count * Math.log(2 * Math.PI);
            }
        }
    }

    /** A first look, by the median of what is left: as a share of the magnitude, or of what was stated. */
    private void chosen(int s, int[] at, double[] h, double[] q, int count, boolean[] used) {
        boolean known = seen.series().get(s).stated();
        double[] own = new double[at.length];
        double[] z = new double[at.length];
        for (int k = 0; k < at.length; k++) {
            own[k] = (known ? seen.stated()[at[k]] : 1) * h[k];
            z[k] = q[k] / (own[k] * own[k]);
        }
        double[] sorted = z.clone();
        Arrays.sort(sorted);
        double middle = sorted[sorted.length / 2] / new ChiSquaredDistribution(count).inverseCumulativeProbability(0.5);
        Arrays.fill(used, true);
        flag(at, own, q, count, used, known ? Math.max(1, middle) : Math.max(middle, 1e-30));
        long out = count(used);
        if (out > MOST * at.length) {
            Arrays.fill(used, true);
            notes.add(String.format(Locale.ROOT, "%s: %d of %d points are far off; that many are no outliers: the model with these "
                + "numbers free does not describe them", seen.series().get(s).label(), out, at.length));
        }
    }

    private static long count(boolean[] used) {
        long out = 0;
        for (boolean u : used) {
            out += u ? 0 : 1;
        }
        return out;
    }

    private void flag(int[] at, double[] own, double[] q, int count, boolean[] used, double scale) {
        double limit = new ChiSquaredDistribution(count).inverseCumulativeProbability(1 - CHANCE / Math.max(at.length, 1));
        boolean[] now = new boolean[at.length];
        for (int k = 0; k < at.length; k++) {
            now[k] = q[k] / (own[k] * own[k]) <= limit * scale;
        }
        if (count(now) <= MOST * at.length) {
            System.arraycopy(now, 0, used, 0, now.length);
        }
    }

    private static double[] pick(double[] from, int[] at) {
        return Arrays.stream(at).mapToDouble(i -> from[i]).toArray();
    }

    double[] sigma() {
        return sigma;
    }

    boolean[] outlier() {
        return outlier;
    }

    boolean stated(int i) {
        return stated[i];
    }

    /** How many numbers describe the noise. */
    int numbers() {
        return numbers;
    }

    double likelihood() {
        return likelihood;
    }

    List<String> noise() {
        return noise;
    }

    List<String> notes() {
        return notes;
    }
}

package quietband.filter.sections;

import quietband.filter.goal.FilterBasis;

/**
 * Responses that span all numerators of degree 2n over given denominators of n sections: 1, and for each section (1 + z^-1)/A
 * and (1 - z^-1)/A behind the all-passes of those before it, each over its own peak: orthogonal over the whole circle (Kautz;
 * from memory), so that what the band does not see stays small elsewhere.
 */
public final class SectionBasis {

    private static final double LOWEST = 1e-8;
    private static final double STEP = 1.03;

    private final double[] a;
    private final double[] scale;

    /** For denominators {a1, a2, ..}. */
    public SectionBasis(double[] a) {
        this.a = a.clone();
        this.scale = new double[a.length];
        for (int m = 0; m < a.length; m += 2) {
            double plus = 2 / Math.abs(1 + a[m] + a[m + 1]);
            double minus = 2 / Math.abs(1 - a[m] + a[m + 1]);
            for (double w = Math.PI; w > LOWEST; w /= STEP) {
                double[] d = denominator(m, Math.cos(w), -Math.sin(w));
                double size = Math.hypot(d[0], d[1]);
                plus = Math.max(plus, 2 * Math.cos(w / 2) / size);
                minus = Math.max(minus, 2 * Math.sin(w / 2) / size);
            }
            scale[m] = 1 / plus;
            scale[m + 1] = 1 / minus;
        }
    }

    /** How many there are. */
    public int size() {
        return a.length + 1;
    }

    /** As functions of frequency at a rate. */
    public FilterBasis.Plain at(double sampleRateHz) {
        return (f, re, im) -> write(2 * Math.PI * f / sampleRateHz, re, im);
    }

    /** Writes all of them at w rad per sample (length {@link #size}, modified). */
    public void write(double w, double[] re, double[] im) {
        double zr = StrictMath.cos(w);
        double zi = -StrictMath.sin(w);
        double[] r = {1, 0};
        re[0] = 1;
        im[0] = 0;
        for (int m = 0; m < a.length; m += 2) {
            double[] d = denominator(m, zr, zi);
            double size = d[0] * d[0] + d[1] * d[1];
            multiply(r, d[0] / size, -d[1] / size);
            double br = r[0] * zr - r[1] * zi;
            double bi = r[0] * zi + r[1] * zr;
            re[m + 1] = scale[m] * (r[0] + br);
            im[m + 1] = scale[m] * (r[1] + bi);
            re[m + 2] = scale[m + 1] * (r[0] - br);
            im[m + 2] = scale[m + 1] * (r[1] - bi);
            // a2 + a1 z^-1 + z^-2
            multiply(r, a[m + 1] + a[m] * zr + zr * zr - zi * zi, a[m] * zi + 2 * zr * zi);
        }
    }

    /** Numerator in e = 1 - z^-1, q[k] e^k, over the product of all denominators of a combination of them. */
    public double[] numerator(double[] x) {
        double[] q = new double[a.length + 1];
        double[] before = {1};
        for (int m = 0; m < a.length; m += 2) {
            double plus = scale[m] * x[m + 1];
            double minus = scale[m + 1] * x[m + 2];
            double[] p = times(before, new double[] {2 * plus, minus - plus});
            for (int l = m + 2; l < a.length; l += 2) {
                p = times(p, shifted(1, a[l], a[l + 1]));
            }
            add(q, p, 1);
            before = times(before, shifted(a[m + 1], a[m], 1));
        }
        double[] whole = {1};
        for (int m = 0; m < a.length; m += 2) {
            whole = times(whole, shifted(1, a[m], a[m + 1]));
        }
        add(q, whole, x[0]);
        return q;
    }

    /** c0 + c1 z^-1 + c2 z^-2 in e; the sums are exact where poles are near 1. */
    private static double[] shifted(double c0, double c1, double c2) {
        return new double[] {c0 + c1 + c2, -(c1 + 2 * c2), c2};
    }

    private static void add(double[] into, double[] p, double factor) {
        for (int k = 0; k < p.length; k++) {
            into[k] += factor * p[k];
        }
    }

    private static double[] times(double[] p, double[] q) {
        double[] r = new double[p.length + q.length - 1];
        for (int i = 0; i < p.length; i++) {
            for (int j = 0; j < q.length; j++) {
                r[i + j] += p[i] * q[j];
            }
        }
        return r;
    }

    private double[] denominator(int m, double zr, double zi) {
        return new double[] {1 + a[m] * zr + a[m + 1] * (zr * zr - zi * zi), a[m] * zi + 2 * a[m + 1] * zr * zi};
    }

    private static void multiply(double[] r, double re, double im) {
        double x = r[0] * re - r[1] * im;
        r[1] = r[0] * im + r[1] * re;
        r[0] = x;
    }
}

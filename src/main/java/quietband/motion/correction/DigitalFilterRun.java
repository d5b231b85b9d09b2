package quietband.motion.correction;

import quietband.model.DigitalFilter;
import quietband.motion.signal.SteadyState;

/** A digital filter of one axis, sample by sample: taps, then sections (transposed direct form II). */
final class DigitalFilterRun {

    private final int[] index;
    private final double[] tap;
    private final double[][] section;
    private final double[] past;
    private final double[] s1;
    private final double[] s2;
    private int at;

    DigitalFilterRun(DigitalFilter filter) {
        index = filter.tapIndex();
        tap = filter.taps();
        section = filter.sections();
        int longest = 0;
        for (int i : index) {
            longest = Math.max(longest, i);
        }
        past = new double[powerAbove(longest)];
        s1 = new double[section.length];
        s2 = new double[section.length];
    }

    private static int powerAbove(int n) {
        int p = 1;
        while (p <= n) {
            p *= 2;
        }
        return p;
    }

    /** The next output. */
    double next(double u) {
        double v = u;
        if (tap.length > 0) {
            int mask = past.length - 1;
            past[at & mask] = u;
            v = 0;
            for (int i = 0; i < tap.length; i++) {
                v += tap[i] * past[(at - index[i]) & mask];
            }
            at++;
        }
        for (int i = 0; i < section.length; i++) {
            double[] s = section[i];
            double y = s[0] * v + s1[i];
            s1[i] = s[1] * v - s[3] * y + s2[i];
            s2[i] = s[2] * v - s[4] * y;
            v = y;
        }
        return v;
    }

    /**
     * Starts in the periodic state: the next input will be the real part of re + j im, turning by theta a sample. Tells the
     * complex amplitude of the next output.
     */
    double[] settle(double re, double im, double theta) {
        double vr = re;
        double vi = im;
        if (tap.length > 0) {
            int mask = past.length - 1;
            for (int i = 1; i < past.length; i++) {
                past[(at - i) & mask] = re * Math.cos(theta * i) + im * Math.sin(theta * i);
            }
            vr = 0;
            vi = 0;
            for (int i = 0; i < tap.length; i++) {
                double c = tap[i] * Math.cos(theta * index[i]);
                double s = -tap[i] * Math.sin(theta * index[i]);
                vr += re * c - im * s;
                vi += re * s + im * c;
            }
        }
        for (int i = 0; i < section.length; i++) {
            double[] s = section[i];
            double b1 = s[1] - s[3] * s[0];
            double b2 = s[2] - s[4] * s[0];
            double[] xr = {b1 * vr, b2 * vr};
            double[] xi = {b1 * vi, b2 * vi};
            SteadyState.solve(new double[][] {{-s[3], 1}, {-s[4], 0}}, theta, xr, xi);
            s1[i] = xr[0];
            s2[i] = xr[1];
            vr = s[0] * vr + xr[0];
            vi = s[0] * vi + xi[0];
        }
        return new double[] {vr, vi};
    }
}

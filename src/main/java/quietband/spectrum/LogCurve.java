package quietband.spectrum;

import java.util.Arrays;

/**
 * A line through points over a logarithmic frequency axis: a limit, a noise floor or a vibration profile.
 * The value is either logarithmic too (log-log, for g^2/Hz and ppb/g) or already in decibels (linear in dB over log f).
 */
public final class LogCurve {

    /** What the line is outside its points. */
    public enum Outside { CONSTANT, ZERO }

    private final double[] frequency;
    private final double[] value;
    private final boolean decibel;
    private final Outside outside;

    private LogCurve(double[] frequency, double[] value, boolean decibel, Outside outside) {
        if (frequency.length == 0 || frequency.length != value.length) {
            throw new IllegalArgumentException("a curve needs as many values as frequencies, and one at least");
        }
        for (int i = 0; i < frequency.length; i++) {
            boolean rises = i == 0 ? frequency[0] > 0 : frequency[i] > frequency[i - 1];
            if (!rises || Double.isNaN(value[i])) {
                throw new IllegalArgumentException("frequencies must rise strictly from above zero, values be numbers");
            }
        }
        this.frequency = frequency.clone();
        this.value = value.clone();
        this.decibel = decibel;
        this.outside = outside;
    }

    /**
     * A line straight on log-log paper. A segment with a zero at either end is zero between its ends.
     *
     * @param frequency in Hz, rising strictly, above zero; copied
     * @param value     at least zero; copied
     */
    public static LogCurve logLog(double[] frequency, double[] value, Outside outside) {
        return new LogCurve(frequency, value, false, outside);
    }

    /**
     * Levels in dB, linear over log f, constant outside.
     *
     * @param frequency in Hz, rising strictly, above zero; copied
     * @param level     in dB; copied
     */
    public static LogCurve decibel(double[] frequency, double[] level) {
        return new LogCurve(frequency, level, true, Outside.CONSTANT);
    }

    /** The value (or level) at a frequency in Hz; the end points belong to the curve. */
    public double at(double f) {
        int last = frequency.length - 1;
        if (f < frequency[0] || f > frequency[last]) {
            return outside == Outside.ZERO ? 0 : value[f < frequency[0] ? 0 : last];
        }
        int i = Arrays.binarySearch(frequency, f);
        if (i >= 0) {
            return value[i];
        }
        int hi = -i - 1;
        int lo = hi - 1;
        double t = StrictMath.log(f / frequency[lo]) / StrictMath.log(frequency[hi] / frequency[lo]);
        if (decibel) {
            return value[lo] + t * (value[hi] - value[lo]);
        }
        if (value[lo] <= 0 || value[hi] <= 0) {
            return 0;
        }
        return value[lo] * StrictMath.pow(value[hi] / value[lo], t);
    }

    /** The frequencies of the points in Hz; a copy. */
    public double[] frequencies() {
        return frequency.clone();
    }

    /** The values of the points; a copy. */
    public double[] values() {
        return value.clone();
    }

    /** The same line with every value multiplied (not for levels in dB). */
    public LogCurve scaled(double factor) {
        if (decibel) {
            throw new IllegalStateException("levels in dB are shifted, not scaled");
        }
        double[] scaled = Arrays.stream(value).map(v -> v * factor).toArray();
        return new LogCurve(frequency, scaled, false, outside);
    }

    /**
     * The integral over frequency between two limits, exact per segment: for a segment of slope p,
     * {@code S(f) = S1 (f/f1)^p}, the integral is {@code S1 f1 ((f2/f1)^(p+1) - 1)/(p+1)}, stable near p = -1.
     * For densities: the mean square.
     */
    public double integral(double from, double to) {
        if (decibel) {
            throw new IllegalStateException("levels in dB have no integral here");
        }
        double sum = 0;
        double first = frequency[0];
        double end = frequency[frequency.length - 1];
        if (outside == Outside.CONSTANT) {
            sum += value[0] * Math.max(0, Math.min(to, first) - from);
            sum += value[value.length - 1] * Math.max(0, to - Math.max(from, end));
        }
        for (int i = 1; i < frequency.length; i++) {
            double lo = Math.max(from, frequency[i - 1]);
            double hi = Math.min(to, frequency[i]);
            if (hi > lo) {
                sum += segment(lo, at(lo), hi, at(hi));
            }
        }
        return sum;
    }

    private static double segment(double f1, double s1, double f2, double s2) {
        if (s1 <= 0 || s2 <= 0) {
            return 0;
        }
        double logRatio = StrictMath.log(f2 / f1);
        double u = StrictMath.log(s2 / s1) + logRatio;
        double mean = Math.abs(u) < 1e-8 ? 1 + u / 2 : StrictMath.expm1(u) / u;
        return s1 * f1 * logRatio * mean;
    }
}

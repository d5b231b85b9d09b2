package quietband.motion.run;

import java.util.Arrays;
import java.util.List;
import quietband.model.Stack;

/**
 * Signals over time at even steps, behind an anti-alias filter.
 *
 * @param stacks  order of the fractional frequencies
 * @param rateHz  points per second
 * @param startS  time of the first point, s
 * @param drive   acceleration of the housing, g: x, y, z
 * @param motion  displacement of the centre of gravity relative to the housing, m: x, y, z
 * @param y       fractional frequency per stack
 * @param partial whether the pass went on after the last point
 */
public record MotionTrace(List<Stack> stacks, double rateHz, double startS, double[][] drive, double[][] motion, double[][] y,
                    boolean partial) {

    /** Number of points. */
    public int size() {
        return drive[0].length;
    }

    /** The last so many seconds of it. */
    public MotionTrace last(double seconds) {
        int n = Math.min(size(), Math.max(2, (int) Math.round(seconds * rateHz)));
        int from = size() - n;
        return new MotionTrace(stacks, rateHz, startS + from / rateHz, cut(drive, from), cut(motion, from), cut(y, from), partial);
    }

    private static double[][] cut(double[][] columns, int from) {
        double[][] part = new double[columns.length][];
        for (int i = 0; i < part.length; i++) {
            part[i] = Arrays.copyOfRange(columns[i], from, columns[i].length);
        }
        return part;
    }

    /**
     * Amplitude of a sinusoid in the fractional frequency of a stack, by projection under a Hann window over all of the trace:
     * lines closer than four turns over the trace are not told apart.
     *
     * @param stack number of the stack
     * @param f     its frequency, Hz
     */
    public double line(int stack, double f) {
        double[] v = y[stack];
        double re = 0;
        double im = 0;
        double weight = 0;
        for (int k = 0; k < v.length; k++) {
            double w = 0.5 - 0.5 * Math.cos(2 * Math.PI * (k + 0.5) / v.length);
            double angle = 2 * Math.PI * f * k / rateHz;
            re += w * v[k] * Math.cos(angle);
            im += w * v[k] * Math.sin(angle);
            weight += w;
        }
        return (f == 0 ? 1 : 2) * Math.hypot(re, im) / weight;
    }
}

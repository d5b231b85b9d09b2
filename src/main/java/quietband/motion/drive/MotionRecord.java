package quietband.motion.drive;

import java.util.List;

/**
 * Acceleration as recorded, between its samples the natural cubic spline; mean and straight drift taken out.
 *
 * @param time   rising, s, at least 8
 * @param value  per axis x, y, z in g, less mean and drift; null where there is none
 * @param bend   second derivatives of the spline at the samples
 * @param notes  what was done to it
 */
public record MotionRecord(double[] time, double[][] value, double[][] bend, List<String> notes) {

    /** Makes the spline of values that already are without mean and drift. */
    static MotionRecord of(double[] time, double[][] value, List<String> notes) {
        double[][] bend = new double[3][];
        for (int i = 0; i < 3; i++) {
            bend[i] = value[i] == null ? null : spline(time, value[i]);
        }
        return new MotionRecord(time, value, bend, List.copyOf(notes));
    }

    /** Second derivatives of the natural spline: the usual tridiagonal equations. */
    private static double[] spline(double[] t, double[] v) {
        int n = t.length;
        double[] second = new double[n];
        double[] upper = new double[n];
        for (int i = 1; i < n - 1; i++) {
            double left = t[i] - t[i - 1];
            double right = t[i + 1] - t[i];
            double diagonal = 2 * (left + right) - left * upper[i - 1];
            upper[i] = right / diagonal;
            double rise = 6 * ((v[i + 1] - v[i]) / right - (v[i] - v[i - 1]) / left);
            second[i] = (rise - left * second[i - 1]) / diagonal;
        }
        for (int i = n - 2; i > 0; i--) {
            second[i] -= upper[i] * second[i + 1];
        }
        return second;
    }

    /** From the first to the last sample, s. */
    public double duration() {
        return time[time.length - 1] - time[0];
    }
}

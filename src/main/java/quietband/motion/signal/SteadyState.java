package quietband.motion.signal;

import quietband.platform.ComplexSolver;

/** The periodic state of a recurrence x[k+1] = A x[k] + v exp(j theta k): X = (exp(j theta) I - A)^-1 v. */
public final class SteadyState {

    private SteadyState() { }

    /**
     * Solves in place.
     *
     * @param a     square
     * @param theta angle per step, rad
     * @param re    real part of v; becomes that of X
     * @param im    imaginary part
     * @throws NoSteadyStateException when the recurrence rings without damping at this very angle
     */
    public static void solve(double[][] a, double theta, double[] re, double[] im) {
        int n = a.length;
        double[] left = new double[n * n];
        double[] leftIm = new double[n * n];
        for (int i = 0; i < n; i++) {
            for (int j = 0; j < n; j++) {
                left[n * i + j] = (i == j ? Math.cos(theta) : 0) - a[i][j];
            }
            leftIm[n * i + i] = Math.sin(theta);
        }
        if (!ComplexSolver.solve(n, left, leftIm, 1, re, im)) {
            throw new NoSteadyStateException();
        }
    }
}

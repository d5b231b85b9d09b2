package quietband.platform;

/** Small dense complex systems in plain arrays: Gaussian elimination with partial pivoting. */
public final class ComplexSolver {

    private ComplexSolver() { }

    /**
     * Solves A X = B in place.
     *
     * @param n   order
     * @param aRe real part of A, n x n row by row; destroyed
     * @param aIm imaginary part; destroyed
     * @param m   number of right-hand sides
     * @param bRe real part of B, n x m row by row; becomes X
     * @param bIm imaginary part; becomes X
     * @return false when a pivot is exactly zero or not finite (then the arrays are of no use)
     */
    public static boolean solve(int n, double[] aRe, double[] aIm, int m, double[] bRe, double[] bIm) {
        for (int p = 0; p < n; p++) {
            int best = pivotRow(n, p, aRe, aIm);
            double pr = aRe[n * best + p];
            double pi = aIm[n * best + p];
            double size = pr * pr + pi * pi;
            if (!(size > 0) || Double.isInfinite(size)) {
                return false;
            }
            swap(aRe, aIm, n, p, best);
            swap(bRe, bIm, m, p, best);
            for (int i = p + 1; i < n; i++) {
                double ar = aRe[n * i + p];
                double ai = aIm[n * i + p];
                double fr = (ar * pr + ai * pi) / size;
                double fi = (ai * pr - ar * pi) / size;
                subtract(aRe, aIm, n, i, p, fr, fi, p + 1);
                subtract(bRe, bIm, m, i, p, fr, fi, 0);
            }
        }
        for (int i = n - 1; i >= 0; i--) {
            for (int c = 0; c < m; c++) {
                backSubstitute(n, i, aRe, aIm, m, c, bRe, bIm);
            }
        }
        return true;
    }

    private static int pivotRow(int n, int p, double[] aRe, double[] aIm) {
        int best = p;
        double largest = -1;
        for (int i = p; i < n; i++) {
            double size = Math.abs(aRe[n * i + p]) + Math.abs(aIm[n * i + p]);
            if (size > largest) {
                largest = size;
                best = i;
            }
        }
        return best;
    }

    private static void swap(double[] re, double[] im, int width, int p, int q) {
        if (p == q) {
            return;
        }
        for (int c = 0; c < width; c++) {
            double r = re[width * p + c];
            re[width * p + c] = re[width * q + c];
            re[width * q + c] = r;
            double i = im[width * p + c];
            im[width * p + c] = im[width * q + c];
            im[width * q + c] = i;
        }
    }

    private static void subtract(double[] re, double[] im, int width, int row, int pivot, double fr, double fi, int start) {
        for (int c = start; c < width; c++) {
            double r = re[width * pivot + c];
            double i = im[width * pivot + c];
            re[width * row + c] -= fr * r - fi * i;
            im[width * row + c] -= fr * i + fi * r;
        }
    }

    private static void backSubstitute(int n, int i, double[] aRe, double[] aIm, int m, int c, double[] bRe, double[] bIm) {
        double r = bRe[m * i + c];
        double s = bIm[m * i + c];
        for (int k = i + 1; k < n; k++) {
            double xr = bRe[m * k + c];
            double xi = bIm[m * k + c];
            r -= aRe[n * i + k] * xr - aIm[n * i + k] * xi;
            s -= aRe[n * i + k] * xi + aIm[n * i + k] * xr;
        }
        double pr = aRe[n * i + i];
        double pi = aIm[n * i + i];
        double size = pr * pr + pi * pi;
        bRe[m * i + c] = (r * pr + s * pi) / size;
        bIm[m * i + c] = (s * pr - r * pi) / size;
    }
}

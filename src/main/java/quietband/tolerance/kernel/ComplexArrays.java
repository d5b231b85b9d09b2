package quietband.tolerance.kernel;

/**
 * Complex arithmetic on a block of frequencies at once: real and imaginary parts in arrays of their own, one loop per
 * operation, so that the compiler uses the processor's vector instructions. Arrays are at least n long; the first ones are
 * modified.
 */
public final class ComplexArrays {

    // ratios of successive terms of the cosine's and the sine's series
    private static final double C2 = 1 / 2.0;
    private static final double C4 = 1 / 12.0;
    private static final double C6 = 1 / 30.0;
    private static final double C8 = 1 / 56.0;
    private static final double C10 = 1 / 90.0;
    private static final double C12 = 1 / 132.0;
    private static final double S3 = 1 / 6.0;
    private static final double S5 = 1 / 20.0;
    private static final double S7 = 1 / 42.0;
    private static final double S9 = 1 / 72.0;
    private static final double S11 = 1 / 110.0;
    private static final double S13 = 1 / 156.0;

    private ComplexArrays() { }

    /** z = x y. */
    static void product(double[] zr, double[] zi, double[] xr, double[] xi, double[] yr, double[] yi, int n) {
        for (int t = 0; t < n; t++) {
            double a = xr[t];
            double b = xi[t];
            double c = yr[t];
            double d = yi[t];
            zr[t] = a * c - b * d;
            zi[t] = a * d + b * c;
        }
    }

    /** z -= x y. */
    static void subtractProduct(double[] zr, double[] zi, double[] xr, double[] xi, double[] yr, double[] yi, int n) {
        for (int t = 0; t < n; t++) {
            zr[t] -= xr[t] * yr[t] - xi[t] * yi[t];
            zi[t] -= xr[t] * yi[t] + xi[t] * yr[t];
        }
    }

    /** z += x y. */
    public static void addProduct(double[] zr, double[] zi, double[] xr, double[] xi, double[] yr, double[] yi, int n) {
        for (int t = 0; t < n; t++) {
            zr[t] += xr[t] * yr[t] - xi[t] * yi[t];
            zi[t] += xr[t] * yi[t] + xi[t] * yr[t];
        }
    }

    /** z = 1/x. */
    static void reciprocal(double[] zr, double[] zi, double[] xr, double[] xi, int n) {
        for (int t = 0; t < n; t++) {
            double a = xr[t];
            double b = xi[t];
            double s = 1 / (a * a + b * b);
            zr[t] = a * s;
            zi[t] = -b * s;
        }
    }

    /** z = (cr + j ci) x. */
    static void scale(double[] zr, double[] zi, double cr, double ci, double[] xr, double[] xi, int n) {
        for (int t = 0; t < n; t++) {
            double a = xr[t];
            double b = xi[t];
            zr[t] = cr * a - ci * b;
            zi[t] = cr * b + ci * a;
        }
    }

    /** z += (cr + j ci) x, from a place on. */
    public static void addScaled(double[] zr, double[] zi, double cr, double ci, double[] xr, double[] xi, int from, int n) {
        for (int t = from; t < n; t++) {
            double a = xr[t];
            double b = xi[t];
            zr[t] += cr * a - ci * b;
            zi[t] += cr * b + ci * a;
        }
    }

    /** z += sum of (cr[p] + j ci[p]) x[p] over the first terms, each from a place of its own on. */
    static void addSeries(double[] zr, double[] zi, double[] cr, double[] ci, double[][] xr, double[][] xi, int[] from, int terms, int n) {
        for (int p = 0; p < terms; p++) {
            addScaled(zr, zi, cr[p], ci[p], xr[p], xi[p], from[p], n);
        }
    }

    /** z += c x with a real number c. */
    public static void addScaled(double[] zr, double[] zi, double c, double[] xr, double[] xi, int n) {
        for (int t = 0; t < n; t++) {
            zr[t] += c * xr[t];
            zi[t] += c * xi[t];
        }
    }

    /** z += w x with a real array w. */
    static void addWeighted(double[] zr, double[] zi, double[] w, double[] xr, double[] xi, int n) {
        for (int t = 0; t < n; t++) {
            zr[t] += w[t] * xr[t];
            zi[t] += w[t] * xi[t];
        }
    }

    /** z = x - y. */
    static void difference(double[] zr, double[] zi, double[] xr, double[] xi, double[] yr, double[] yi, int n) {
        for (int t = 0; t < n; t++) {
            zr[t] = xr[t] - yr[t];
            zi[t] = xi[t] - yi[t];
        }
    }

    /** z = a x - b y with real numbers a and b. */
    static void cross(double[] zr, double[] zi, double a, double[] xr, double[] xi, double b, double[] yr, double[] yi, int n) {
        for (int t = 0; t < n; t++) {
            zr[t] = a * xr[t] - b * yr[t];
            zi[t] = a * xi[t] - b * yi[t];
        }
    }

    /** z -= a x - b y with real numbers a and b. */
    static void subtractCross(double[] zr, double[] zi, double a, double[] xr, double[] xi, double b, double[] yr, double[] yi, int n) {
        for (int t = 0; t < n; t++) {
            zr[t] -= a * xr[t] - b * yr[t];
            zi[t] -= a * xi[t] - b * yi[t];
        }
    }

    /** z = a x + b y + c v with real numbers a, b and c. */
    static void mix(double[] zr, double[] zi, double a, double[] xr, double[] xi, double b, double[] yr, double[] yi,
                    double c, double[] vr, double[] vi, int n) {
        for (int t = 0; t < n; t++) {
            zr[t] = a * xr[t] + b * yr[t] + c * vr[t];
            zi[t] = a * xi[t] + b * yi[t] + c * vi[t];
        }
    }

    /** z = c. */
    public static void fill(double[] zr, double[] zi, double cr, double ci, int n) {
        for (int t = 0; t < n; t++) {
            zr[t] = cr;
            zi[t] = ci;
        }
    }

    /** z = x. */
    static void copy(double[] zr, double[] zi, double[] xr, double[] xi, int n) {
        System.arraycopy(xr, 0, zr, 0, n);
        System.arraycopy(xi, 0, zi, 0, n);
    }

    /** z = z u + c, one step of Horner's rule. */
    static void horner(double[] zr, double[] zi, double[] ur, double[] ui, double c, int n) {
        for (int t = 0; t < n; t++) {
            double a = zr[t];
            double b = zi[t];
            zr[t] = a * ur[t] - b * ui[t] + c;
            zi[t] = a * ui[t] + b * ur[t];
        }
    }

    /** p = |x + w y|^2 with a real array w. */
    static void power(double[] p, double[] xr, double[] xi, double[] w, double[] yr, double[] yi, int n) {
        for (int t = 0; t < n; t++) {
            double a = xr[t] + w[t] * yr[t];
            double b = xi[t] + w[t] * yi[t];
            p[t] = a * a + b * b;
        }
    }

    /**
     * z = exp(-j w delay).
     *
     * @param w       angular frequencies, rad/s
     * @param largest of them
     */
    static void delay(double[] zr, double[] zi, double[] w, double delay, double largest, int n) {
        if (Math.abs(delay) * largest > 0.5) {
            for (int t = 0; t < n; t++) {
                zr[t] = StrictMath.cos(w[t] * delay);
                zi[t] = -StrictMath.sin(w[t] * delay);
            }
            return;
        }
        if (Math.abs(delay) * largest < 0.03) {
            shortDelay(zr, zi, w, delay, n);
            return;
        }
        // Taylor up to the 12th and 13th power: 0.5^14/14! is below 1e-15
        for (int t = 0; t < n; t++) {
            double s = w[t] * delay * (w[t] * delay);
            zr[t] = 1 - s * C2 * (1 - s * C4 * (1 - s * C6 * (1 - s * C8 * (1 - s * C10 * (1 - s * C12)))));
        }
        for (int t = 0; t < n; t++) {
            double a = w[t] * delay;
            double s = a * a;
            zi[t] = -a * (1 - s * S3 * (1 - s * S5 * (1 - s * S7 * (1 - s * S9 * (1 - s * S11 * (1 - s * S13))))));
        }
    }

    /** Taylor up to the 6th and 7th power: 0.03^8/8! is below 1e-16. */
    private static void shortDelay(double[] zr, double[] zi, double[] w, double delay, int n) {
        for (int t = 0; t < n; t++) {
            double s = w[t] * delay * (w[t] * delay);
            zr[t] = 1 - s * C2 * (1 - s * C4 * (1 - s * C6));
        }
        for (int t = 0; t < n; t++) {
            double a = w[t] * delay;
            double s = a * a;
            zi[t] = -a * (1 - s * S3 * (1 - s * S5 * (1 - s * S7)));
        }
    }
}

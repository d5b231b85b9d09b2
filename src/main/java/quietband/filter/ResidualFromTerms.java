package quietband.filter;

/** The residual from its terms and the filters' responses. */
public final class ResidualFromTerms {

    private ResidualFromTerms() { }

    /** |y_j|^2 of an axis. */
    public static double squared(ResidualTerms t, int j, double[] fRe, double[] fIm) {
        double re = t.cRe[j];
        double im = t.cIm[j];
        for (int i = 0; i < 3; i++) {
            double ar = t.aRe[3 * i + j];
            double ai = t.aIm[3 * i + j];
            re -= ar * fRe[i] - ai * fIm[i];
            im -= ar * fIm[i] + ai * fRe[i];
        }
        return re * re + im * im;
    }

    /** Sum over the axes. */
    public static double squared(ResidualTerms t, double[] fRe, double[] fIm) {
        return squared(t, 0, fRe, fIm) + squared(t, 1, fRe, fIm) + squared(t, 2, fRe, fIm);
    }
}

package quietband.numerics;

/**
 * The standard normal distribution, to the last digits and fast enough to be called for every drawn number. The error
 * function is W. J. Cody's (Math. Comp. 23 (1969) 631), the quantile M. J. Wichura's (algorithm AS 241, Appl. Statist. 37
 * (1988) 477); coefficients from memory, held against an independent implementation by a test.
 */
public final class NormalCurve {

    private static final double[] NEAR_UP = {1.85777706184603153e-1, 3.16112374387056560e0, 1.13864154151050156e2,
        3.77485237685302021e2, 3.20937758913846947e3};
    private static final double[] NEAR_DOWN = {1, 2.36012909523441209e1, 2.44024637934444173e2, 1.28261652607737228e3,
        2.84423683343917062e3};
    private static final double[] HALFWAY_UP = {2.15311535474403846e-8, 5.64188496988670089e-1, 8.88314979438837594e0,
        6.61191906371416295e1, 2.98635138197400131e2, 8.81952221241769090e2, 1.71204761263407058e3,
        2.05107837782607147e3, 1.23033935479799725e3};
    private static final double[] HALFWAY_DOWN = {1, 1.57449261107098347e1, 1.17693950891312499e2,
        5.37181101862009858e2, 1.62138957456669019e3, 3.29079923573345963e3, 4.36261909014324716e3,
        3.43936767414372164e3, 1.23033935480374942e3};
    private static final double[] FAR_UP = {1.63153871373020978e-2, 3.05326634961232344e-1, 3.60344899949804439e-1,
        1.25781726111229246e-1, 1.60837851487422766e-2, 6.58749161529837803e-4};
    private static final double[] FAR_DOWN = {1, 2.56852019228982242e0, 1.87295284992346725e0, 5.27905102951428412e-1,
        6.05183413124413191e-2, 2.33520497626869185e-3};
    private static final double[] CENTRE_UP = {2.5090809287301226727e3, 3.3430575583588128105e4, 6.7265770927008700853e4,
        4.5921953931549871457e4, 1.3731693765509461125e4, 1.9715909503065514427e3, 1.3314166789178437745e2,
        3.3871328727963666080e0};
    private static final double[] CENTRE_DOWN = {5.2264952788528545610e3, 2.8729085735721942674e4, 3.9307895800092710610e4,
        2.1213794301586595867e4, 5.3941960214247511077e3, 6.8718700749205790830e2, 4.2313330701600911252e1, 1};
    private static final double[] MIDDLE_UP = {7.74545014278341407640e-4, 2.27238449892691845833e-2,
        2.41780725177450611770e-1, 1.27045825245236838258e0, 3.64784832476320460504e0, 5.76949722146069140550e0,
        4.63033784615654529590e0, 1.42343711074968357734e0};
    private static final double[] MIDDLE_DOWN = {1.05075007164441684324e-9, 5.47593808499534494600e-4,
        1.51986665636164571966e-2, 1.48103976427480074590e-1, 6.89767334985100004550e-1, 1.67638483018380384940e0,
        2.05319162663775882187e0, 1};
    private static final double[] TAIL_UP = {2.01033439929228813265e-7, 2.71155556874348757815e-5,
        1.24266094738807843860e-3, 2.65321895265761230930e-2, 2.96560571828504891230e-1, 1.78482653991729133580e0,
        5.46378491116411436990e0, 6.65790464350110377720e0};
    private static final double[] TAIL_DOWN = {2.04426310338993978564e-15, 1.42151175831644588870e-7,
        1.84631831751005468180e-5, 7.86869131145613259100e-4, 1.48753612908506148525e-2, 1.36929880922735805310e-1,
        5.99832206555887937690e-1, 1};

    private NormalCurve() { }

    /** Probability below z. */
    public static double below(double z) {
        return 0.5 * erfc(-z / Math.sqrt(2));
    }

    /** The complementary error function. */
    static double erfc(double x) {
        double y = Math.abs(x);
        if (y <= 0.46875) {
            return 1 - x * ratio(NEAR_UP, NEAR_DOWN, y * y);
        }
        double tail = y <= 4 ? bell(y) * ratio(HALFWAY_UP, HALFWAY_DOWN, y) : y <= 27 ? outer(y) : 0;
        return x < 0 ? 2 - tail : tail;
    }

    private static double outer(double y) {
        double square = 1 / (y * y);
        return bell(y) * (1 / Math.sqrt(Math.PI) - square * ratio(FAR_UP, FAR_DOWN, square)) / y;
    }

    /** exp(-y^2) without losing digits to the rounding of y^2. */
    private static double bell(double y) {
        double head = Math.rint(y * 16) / 16;
        return StrictMath.exp(-head * head) * StrictMath.exp(-(y - head) * (y + head));
    }

    /**
     * The z below which a share of all values lies.
     *
     * @param share between 0 and 1; infinite at the ends
     */
    public static double quantile(double share) {
        double q = share - 0.5;
        if (Math.abs(q) <= 0.425) {
            double r = 0.180625 - q * q;
            return q * ratio(CENTRE_UP, CENTRE_DOWN, r);
        }
        double tail = q < 0 ? share : 1 - share;
        if (!(tail > 0)) {
            return q < 0 ? Double.NEGATIVE_INFINITY : Double.POSITIVE_INFINITY;
        }
        double r = Math.sqrt(-StrictMath.log(tail));
        double z = r <= 5 ? ratio(MIDDLE_UP, MIDDLE_DOWN, r - 1.6) : ratio(TAIL_UP, TAIL_DOWN, r - 5);
        return q < 0 ? -z : z;
    }

    /** Ratio of two polynomials of the same degree, highest power first. */
    private static double ratio(double[] up, double[] down, double r) {
        double u = up[0];
        double d = down[0];
        for (int i = 1; i < up.length; i++) {
            u = u * r + up[i];
            d = d * r + down[i];
        }
        return u / d;
    }
}

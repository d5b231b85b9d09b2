package quietband.lot;

import quietband.numerics.NormalCurve;

/**
 * How long a vector is whose components are normal: P(|X| <= r) for X with a mean and three standard deviations along its
 * principal axes. Equal deviations have a closed form (Maxwell's distribution, for a mean away from zero the noncentral one); others are
 * integrated: the axis with the largest deviation by the error function, the other two by Gauss-Legendre in angles
 * x1 = r sin(t), x2 = r cos(t) sin(p), in which the chord r cos(t) cos(p) is smooth.
 */
final class LengthDistribution {

    private static final double ROOT_TWO_PI = Math.sqrt(2 * Math.PI);

    private final NormalQuadrature quadrature;
    private final double[] mean;
    private final double[] sigma;

    /**
     * For principal axes in any order; copied.
     *
     * @param mean       along them (length 3)
     * @param sigma      standard deviations along them, at least 0 (length 3)
     * @param quadrature accuracy
     */
    LengthDistribution(double[] mean, double[] sigma, NormalQuadrature quadrature) {
        this.quadrature = quadrature;
        this.mean = mean.clone();
        this.sigma = sigma.clone();
        order(0, 1);
        order(1, 2);
        order(0, 1);
    }

    /** Swaps two neighbours that do not rise. */
    private void order(int i, int j) {
        if (sigma[i] > sigma[j]) {
            double s = sigma[i];
            sigma[i] = sigma[j];
            sigma[j] = s;
            double m = mean[i];
            mean[i] = mean[j];
            mean[j] = m;
        }
    }

    /** Share of vectors that are no longer than r. */
    double within(double r) {
        if (!(r > 0)) {
            return 0;
        }
        double d = Math.sqrt(mean[0] * mean[0] + mean[1] * mean[1] + mean[2] * mean[2]);
        if (sigma[2] - sigma[0] <= 1e-9 * sigma[2]) {
            return equal(r, d, sigma[2]);
        }
        if (Math.abs(r - d) > quadrature.far * sigma[2]) {
            return r > d ? 1 : 0;
        }
        return Math.max(0, Math.min(1, within(0, r)));
    }

    /**
     * Equal deviations s about a centre at distance d:
     * F(r) = Phi((r-d)/s) - Phi(-(r+d)/s) - s/(d sqrt(2 pi)) (exp(-(r-d)^2/2s^2) - exp(-(r+d)^2/2s^2)),
     * for d = 0 Maxwell's erf(u) - 2u/sqrt(pi) exp(-u^2), u = r/(s sqrt 2) (derived).
     */
    static double equal(double r, double d, double s) {
        if (s == 0) {
            return d <= r ? 1 : 0;
        }
        double a = (r - d) / s;
        double product = r * d / (s * s);
        double bells = product < 1e-12 ? 2 * r / s * StrictMath.exp(-a * a / 2)
            : -s / d * StrictMath.expm1(-2 * product) * StrictMath.exp(-a * a / 2);
        return Math.max(0, NormalCurve.below(a) - NormalCurve.below(-(r + d) / s) - bells / ROOT_TWO_PI);
    }

    /**
     * P(|X| <= r) of the components from one axis on: that axis is integrated over x = r sin t, what is left of the sphere
     * at x has the radius r cos t.
     */
    private double within(int axis, double r) {
        if (axis == 2) {
            return inner(r);
        }
        if (sigma[axis] == 0) {
            double left = r * r - mean[axis] * mean[axis];
            return left <= 0 ? 0 : within(axis + 1, Math.sqrt(left));
        }
        double from = angle((mean[axis] - quadrature.far * sigma[axis]) / r);
        double to = angle((mean[axis] + quadrature.far * sigma[axis]) / r);
        return quadrature.integral(from, to, t -> {
            double c = Math.cos(t);
            double u = (r * Math.sin(t) - mean[axis]) / sigma[axis];
            return r * c * NormalQuadrature.density(u, sigma[axis]) * within(axis + 1, r * c);
        });
    }

    private double inner(double h) {
        return NormalCurve.below((h - mean[2]) / sigma[2]) - NormalCurve.below((-h - mean[2]) / sigma[2]);
    }

    private static double angle(double sine) {
        return Math.asin(Math.max(-1, Math.min(1, sine)));
    }
}

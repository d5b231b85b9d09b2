package quietband.lot;

import java.util.function.DoubleUnaryOperator;
import org.hipparchus.analysis.integration.gauss.GaussIntegrator;
import org.hipparchus.analysis.integration.gauss.GaussIntegratorFactory;

/** How a normal density is integrated: Gauss-Legendre over a number of standard deviations each way. */
enum NormalQuadrature {
    /** For a distribution: what is cut off and what is missed stay below 1e-11. */
    FINE(40, 7.5),
    /** For one unit among many: a few millionths. */
    QUICK(15, 5.2);

    /** Standard deviations each way. */
    final double far;
    @SuppressWarnings("ImmutableEnumChecker") // has no state that changes
    private final GaussIntegrator unit;

    NormalQuadrature(int points, double far) {
        this.far = far;
        unit = new GaussIntegratorFactory().legendre(points);
    }

    /** Integral of a function from one end to the other; 0 where they do not rise. */
    double integral(double from, double to, DoubleUnaryOperator f) {
        double half = (to - from) / 2;
        double middle = (from + to) / 2;
        return half > 0 ? half * unit.integrate(u -> f.applyAsDouble(middle + half * u)) : 0;
    }

    /** Density of a normal number u standard deviations s off its mean. */
    static double density(double u, double s) {
        return Math.exp(-u * u / 2) / (s * Math.sqrt(2 * Math.PI));
    }
}

package quietband.tuning.parts;

import org.hipparchus.analysis.solvers.BisectionSolver;

/**
 * A helical compression spring of round wire with closed and ground ends, two dead coils in all.
 *
 * @param material   of the wire
 * @param wire       diameter d, m
 * @param diameter   mean coil diameter D, m
 * @param active     active coils n
 * @param freeLength L0, m
 */
public record CoilSpring(WireMaterial material, double wire, double diameter, double active, double freeLength) {

    private static final double DEAD = 2;

    /** Rate {@code G d^4/(8 D^3 n)}, N/m. */
    public double rate() {
        return material.shear() * StrictMath.pow(wire, 4) / (8 * StrictMath.pow(diameter, 3) * active);
    }

    /** Spring index C = D/d. */
    public double index() {
        return diameter / wire;
    }

    /** Wahl's factor {@code (4C - 1)/(4C - 4) + 0.615/C} for curvature and direct shear. */
    public double wahl() {
        double c = index();
        return (4 * c - 1) / (4 * c - 4) + 0.615 / c;
    }

    /** Largest shear stress under an axial force in N, {@code 8 F D K/(pi d^3)}, Pa. */
    public double stress(double force) {
        return 8 * force * diameter * wahl() / (Math.PI * StrictMath.pow(wire, 3));
    }

    /** Mass of the active coils, {@code rho pi^2 d^2 D n/4}, kg: what the elastic line of the model carries. */
    public double activeMass() {
        return material.density() * Math.PI * Math.PI / 4 * wire * wire * diameter * active;
    }

    /** Length with all coils touching, {@code (n + 2) d}, m. */
    public double solidLength() {
        return (active + DEAD) * wire;
    }

    /** First standing wave with both ends held, {@code sqrt(k/m)/2}, Hz. */
    public double surgeHz() {
        return Math.sqrt(rate() / activeMass()) / 2;
    }

    /**
     * Rate across its axis over that along it, both end faces kept parallel, when it is compressed; 0 or less where
     * it would give way sideways. With {@code lambda = L0/D}, {@code xi = s/L0}, {@code g = G/E}, {@code u = 1/2 + g}
     * and {@code r = sqrt(u (g + (1 - xi)/xi))}: {@code xi/(xi - 1 + r tan(lambda xi r)/(lambda u))}. EN 13906-1,
     * lateral rate (from memory); it is Haringx' column, which the test integrates.
     *
     * @param compression s, m; 0 or more and below the free length
     */
    public double lateralRatio(double compression) {
        double g = material.shear() / material.youngs();
        double u = 0.5 + g;
        double lambda = freeLength / diameter;
        double xi = compression / freeLength;
        if (xi < 1e-6) {
            return 1 / (g + u * lambda * lambda / 3);
        }
        double r = Math.sqrt(u * (g + (1 - xi) / xi));
        double angle = lambda * xi * r;
        if (angle >= Math.PI / 2) {
            return 0;
        }
        double below = xi - 1 + r * StrictMath.tan(angle) / (lambda * u);
        return xi / below;
    }

    /** Rate across its axis when compressed by so much (m), N/m. */
    public double lateralRate(double compression) {
        return rate() * lateralRatio(compression);
    }

    /**
     * Compression at which it gives way sideways between faces that stay parallel but may shift, m: where
     * {@code lambda xi r = pi/2}. Infinite when it never does before its coils touch.
     */
    public double buckling() {
        double most = freeLength - solidLength();
        double high = freeLength * 0.999;
        if (lateralRatio(high) > 0) {
            return Double.POSITIVE_INFINITY;
        }
        double gives = new BisectionSolver(1e-14).solve(200, this::lateralRatio, 0, high);
        return gives > most ? Double.POSITIVE_INFINITY : gives;
    }

    /** As an order would say it. */
    public String words() {
        return String.format(java.util.Locale.ROOT,
            "%s, wire %.2f mm, mean diameter %.2f mm, %.2f active coils of %.2f, ends closed and "
            + "ground, free length %.2f mm", material.name(), 1e3 * wire, 1e3 * diameter, active, active + DEAD,
            1e3 * freeLength);
    }
}

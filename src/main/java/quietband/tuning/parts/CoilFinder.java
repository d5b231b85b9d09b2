package quietband.tuning.parts;

import java.util.Optional;
import org.hipparchus.analysis.solvers.BisectionSolver;

/**
 * Looks through standard wires, coil diameters and numbers of coils for the spring that comes nearest to a rate along
 * and across its axis, keeps within stress and length, and surges above the band where that can be had.
 */
final class CoilFinder {

    private static final double DIAMETER_STEP = 1e-4;
    private static final double LENGTH_STEP = 1e-4;
    private static final double COIL_STEP = 0.25;
    private static final double LEAST_COILS = 2;
    private static final double LEAST_INDEX = 4;
    private static final double MOST_INDEX = 16;
    private static final double RESERVE = 0.15;
    private static final double CLOSE = 0.006;

    private final Need need;
    private Found best;

    /**
     * What a spring shall do.
     *
     * @param axial   rate, N/m
     * @param lateral rate across, N/m
     * @param stroke  largest motion either way from rest, m
     * @param rest    least compression at rest, m
     * @param topHz   no standing wave up to here, if possible
     */
    record Need(double axial, double lateral, double stroke, double rest, double topHz) { }

    /**
     * A spring that was found.
     *
     * @param coil geometry
     * @param rest compression at rest, m
     * @param off  larger of the two relative errors of natural frequency
     * @param cost what it was chosen by
     */
    public record Found(CoilSpring coil, double rest, double off, double cost) {

        /** Compression at the end of the stroke. */
        double most(double stroke) {
            return rest + stroke;
        }
    }

    private CoilFinder(Need need) {
        this.need = need;
    }

    /** The best spring of a material; empty when no wire gives the rate, or none that does not buckle. */
    static Optional<Found> find(Need need, WireMaterial material) {
        CoilFinder finder = new CoilFinder(need);
        for (double d : WireMaterial.sizes()) {
            if (material.covers(d)) {
                finder.wire(material, d);
            }
        }
        return Optional.ofNullable(finder.best);
    }

    private void wire(WireMaterial material, double d) {
        long from = (long) Math.ceil(LEAST_INDEX * d / DIAMETER_STEP);
        long to = (long) Math.floor(MOST_INDEX * d / DIAMETER_STEP);
        for (long step = from; step <= to; step++) {
            double diameter = step * DIAMETER_STEP;
            double exact = material.shear() * StrictMath.pow(d, 4) / (8 * StrictMath.pow(diameter, 3) * need.axial);
            double coils = Math.rint(exact / COIL_STEP) * COIL_STEP;
            if (coils >= LEAST_COILS && coils <= 40) {
                lengths(material, d, diameter, coils);
            }
        }
    }

    private void lengths(WireMaterial material, double d, double diameter, double coils) {
        double solid = (coils + 2) * d;
        double gap = RESERVE * (need.rest + need.stroke) + 0.02 * coils * diameter;
        double least = solid + need.rest + need.stroke + gap;
        double wanted = need.lateral / need.axial;
        double free = least;
        if (6 * diameter > least && new CoilSpring(material, d, diameter, coils, least).lateralRatio(need.rest) > wanted) {
            free = new BisectionSolver(1e-13).solve(200, length -> new CoilSpring(material, d, diameter, coils, length)
                .lateralRatio(need.rest) - wanted, least, 6 * diameter);
        }
        double length = Math.max(Math.ceil(least / LENGTH_STEP), Math.rint(free / LENGTH_STEP)) * LENGTH_STEP;
        consider(new CoilSpring(material, d, diameter, coils, length));
    }

    private void consider(CoilSpring coil) {
        if (!(coil.lateralRatio(need.rest) > 0)) {
            return;
        }
        double along = Math.abs(Math.sqrt(coil.rate() / need.axial) - 1);
        double across = Math.abs(Math.sqrt(Math.max(0, coil.lateralRate(need.rest)) / need.lateral) - 1);
        double off = Math.max(along, across);
        double most = need.rest + need.stroke;
        double stress = coil.stress(coil.rate() * most) / coil.material().allowed(coil.wire()) - 1;
        double cost = 100 * Math.max(0, off - CLOSE) + 3 * Math.max(0, stress)
            + (coil.buckling() < 1.2 * most ? 2 : 0) + Math.max(0, 1.2 * need.topHz / coil.surgeHz() - 1)
            + 0.1 * off / CLOSE + coil.freeLength() + coil.diameter();
        if (best == null || cost < best.cost) {
            best = new Found(coil, need.rest, off, cost);
        }
    }
}

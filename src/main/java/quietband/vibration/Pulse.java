package quietband.vibration;

import java.util.List;
import quietband.model.Vibration.Shock;

/**
 * A shock pulse as a function of time, and as pieces that a linear system can follow exactly: on each piece the acceleration
 * obeys a'' = -omega^2 a (omega = 0: a straight line) from given starting values.
 *
 * @param shock shape, peak in g, duration in s
 */
public record Pulse(Shock shock) {

    /**
     * One piece.
     *
     * @param duration in s
     * @param startG   acceleration at its start, g
     * @param slopeG   its slope there, g/s
     * @param omega    rad/s; 0 for a straight line
     */
    public record Piece(double duration, double startG, double slopeG, double omega) { }

    /** The pieces in order; outside them the acceleration is zero. */
    public List<Piece> pieces() {
        double t = shock.duration();
        double a = shock.peakG();
        return switch (shock.shape()) {
            case HALF_SINE -> List.of(new Piece(t, 0, a * Math.PI / t, Math.PI / t));
            case RECTANGLE -> List.of(new Piece(t, a, 0, 0));
            case TRIANGLE -> List.of(new Piece(t / 2, 0, 2 * a / t, 0), new Piece(t / 2, a, -2 * a / t, 0));
            case SAWTOOTH -> List.of(new Piece(t, 0, a / t, 0));
        };
    }

    /** Acceleration at a time in s after the start, g. */
    public double at(double time) {
        double from = 0;
        for (Piece p : pieces()) {
            double t = time - from;
            if (t >= 0 && t <= p.duration()) {
                return p.omega() == 0 ? p.startG() + p.slopeG() * t
                    : p.startG() * StrictMath.cos(p.omega() * t) + p.slopeG() / p.omega() * StrictMath.sin(p.omega() * t);
            }
            from += p.duration();
        }
        return 0;
    }

    /** Change of velocity, the integral of the pulse, in g s. */
    public double velocityChange() {
        double factor = switch (shock.shape()) {
            case HALF_SINE -> 2 / Math.PI;
            case RECTANGLE -> 1;
            case TRIANGLE, SAWTOOTH -> 0.5;
        };
        return factor * shock.peakG() * shock.duration();
    }
}

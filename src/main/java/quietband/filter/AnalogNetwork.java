package quietband.filter;

import org.hipparchus.complex.Complex;

/**
 * One inverting amplifier stage as a lead-lag network: r1 in parallel with (r3 in series with c1) in front of it, r2 in parallel
 * with (r4 in series with c2) around it,
 * <pre>
 *   F = r2/r1 * (1 + s (r1 + r3) c1)/(1 + s r3 c1) * (1 + s r4 c2)/(1 + s (r2 + r4) c2)
 * </pre>
 * with its inversion taken back. The input gives the lead, the feedback the lag; either may be missing.
 *
 * @param r1 ohm
 * @param r2 ohm
 * @param r3 ohm; of no meaning without c1
 * @param c1 farad; 0 without a lead
 * @param r4 ohm; of no meaning without c2
 * @param c2 farad; 0 without a lag
 */
public record AnalogNetwork(double r1, double r2, double r3, double c1, double r4, double c2) {

    private static final int PLACES = 60;

    /** Whether it has a lead. */
    public boolean leads() {
        return c1 > 0;
    }

    /** Whether it has a lag. */
    public boolean lags() {
        return c2 > 0;
    }

    /** F at f in Hz. */
    public Complex at(double f) {
        double[] out = new double[2];
        write(2 * Math.PI * f, out);
        return new Complex(out[0], out[1]);
    }

    /** Writes real and imaginary part at w in rad/s (length 2, modified): admittance before over admittance around. */
    public void write(double w, double[] out) {
        double a = w * c1;
        double da = 1 + a * r3 * a * r3;
        double inRe = 1 / r1 + a * a * r3 / da;
        double inIm = a / da;
        double b = w * c2;
        double db = 1 + b * r4 * b * r4;
        double backRe = 1 / r2 + b * b * r4 / db;
        double backIm = b / db;
        double size = backRe * backRe + backIm * backIm;
        out[0] = (inRe * backRe + inIm * backIm) / size;
        out[1] = (inIm * backRe - inRe * backIm) / size;
    }

    /** r2/r1, the gain at 0 Hz. */
    public double gain() {
        return r2 / r1;
    }

    /** Where the lead begins, Hz; infinite without one. */
    public double leadZeroHz() {
        return 1 / (2 * Math.PI * (r1 + r3) * c1);
    }

    /** Where the lead ends, Hz. */
    public double leadPoleHz() {
        return 1 / (2 * Math.PI * r3 * c1);
    }

    /** Where the lag begins, Hz; infinite without one. */
    public double lagPoleHz() {
        return 1 / (2 * Math.PI * (r2 + r4) * c2);
    }

    /** Where the lag ends, Hz. */
    public double lagZeroHz() {
        return 1 / (2 * Math.PI * r4 * c2);
    }

    /** Largest gain at any frequency: between the corners it is looked at in small steps. */
    public double peak() {
        double low = Math.min(leads() ? leadZeroHz() : 1, lags() ? lagPoleHz() : 1) / 10;
        double high = Math.max(leads() ? leadPoleHz() : 1, lags() ? lagZeroHz() : 1) * 10;
        double most = Math.max(gain(), at(high * 1e6).norm());
        for (int k = 0; k <= PLACES; k++) {
            most = Math.max(most, at(low * Math.pow(high / low, (double) k / PLACES)).norm());
        }
        return most;
    }

    /** The network whose response is this one's times a factor: what is around the stage, scaled. */
    public AnalogNetwork times(double factor) {
        return new AnalogNetwork(r1, r2 * factor, r3, c1, r4 * factor, c2 / factor);
    }

    /** The parts as an array, in the record's order. */
    public double[] parts() {
        return new double[] {r1, r2, r3, c1, r4, c2};
    }

    public static AnalogNetwork of(double[] parts) {
        return new AnalogNetwork(parts[0], parts[1], parts[2], parts[3], parts[4], parts[5]);
    }
}

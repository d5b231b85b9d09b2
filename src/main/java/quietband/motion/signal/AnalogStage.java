package quietband.motion.signal;

/**
 * An analog element of one or two states with one input and one output,
 * {@code (b0 + b1 p + b2 p^2)/(1 + a1 p + p^2)} or {@code (b0 + b1 p)/(1 + p)} with p = s/corner, stepped exactly.
 */
public final class AnalogStage {

    private final double[][] phi = new double[2][2];
    private final double[][] input = new double[2][4];
    private final double[] c = new double[2];
    private final double[] slope = new double[2];
    private final boolean single;
    private final double direct;
    private final double slopeOfInput;
    private final double[] trackA = new double[BlockSignal.BLOCK + 1];
    private final double[] trackB = new double[BlockSignal.BLOCK + 1];
    private double x0;
    private double x1;

    private AnalogStage(StateSpace s, double h) {
        HermiteHold hold = HermiteHold.of(s.f(), s.g(), h);
        double[] slopes = s.slopes(h)[0];
        for (int i = 0; i < s.states(); i++) {
            System.arraycopy(hold.phi()[i], 0, phi[i], 0, s.states());
            input[i] = hold.input()[i];
            c[i] = s.c()[0][i];
            slope[i] = slopes[i];
        }
        single = s.states() == 1;
        direct = s.d()[0][0];
        slopeOfInput = s.slopesOfInput(h)[0][0];
    }

    /** One pole: 1/(1 + s/corner), or with {@code high} the high pass (s/corner)/(1 + s/corner). */
    public static AnalogStage first(double cornerHz, boolean high, double h) {
        double w = 2 * Math.PI * cornerHz;
        return new AnalogStage(new StateSpace(new double[][] {{-w}}, new double[][] {{w}}, new double[][] {{high ? -1 : 1}},
            new double[][] {{high ? 1 : 0}}), h);
    }

    /**
     * Two poles: (b0 + b1 p + b2 p^2)/(1 + a1 p + p^2), p = s/(2 pi f).
     *
     * @param f  corner in Hz
     * @param a1 damping term, 1/Q
     */
    public static AnalogStage second(double f, double a1, double b0, double b1, double b2, double h) {
        double w = 2 * Math.PI * f;
        return new AnalogStage(new StateSpace(new double[][] {{0, w}, {-w, -w * a1}}, new double[][] {{0}, {w}},
            new double[][] {{b0 - b2, b1 - b2 * a1}}, new double[][] {{b2}}), h);
    }

    /** Steps through a block of n steps; the output's block is written from point 0 to n. May work in place. */
    public void run(BlockSignal in, BlockSignal out, int n) {
        double[] u = in.value;
        double[] d = in.slope;
        force(input[0], u, d, trackA, n);
        if (single) {
            advance(n);
            write(u, d, out, n);
        } else {
            force(input[1], u, d, trackB, n);
            advancePair(n);
            writePair(u, d, out, n);
        }
    }

    /** What the input adds in each step, at the index of the step's end. */
    private static void force(double[] g, double[] u, double[] d, double[] track, int n) {
        double g0 = g[0];
        double g1 = g[1];
        double g2 = g[2];
        double g3 = g[3];
        for (int k = 0; k < n; k++) {
            track[k + 1] = g0 * u[k] + g1 * d[k] + g2 * u[k + 1] + g3 * d[k + 1];
        }
    }

    private void advance(int n) {
        double p = phi[0][0];
        double a = x0;
        trackA[0] = a;
        for (int k = 1; k <= n; k++) {
            a = p * a + trackA[k];
            trackA[k] = a;
        }
        x0 = a;
    }

    private void advancePair(int n) {
        double p00 = phi[0][0];
        double p01 = phi[0][1];
        double p10 = phi[1][0];
        double p11 = phi[1][1];
        double a = x0;
        double b = x1;
        trackA[0] = a;
        trackB[0] = b;
        for (int k = 1; k <= n; k++) {
            double next = p00 * a + p01 * b + trackA[k];
            b = p10 * a + p11 * b + trackB[k];
            a = next;
            trackA[k] = a;
            trackB[k] = b;
        }
        x0 = a;
        x1 = b;
    }

    private void write(double[] u, double[] d, BlockSignal out, int n) {
        double[] value = out.value;
        double[] slopes = out.slope;
        double c0 = c[0];
        double s0 = slope[0];
        for (int k = 0; k <= n; k++) {
            double v = u[k];
            slopes[k] = s0 * trackA[k] + slopeOfInput * v + direct * d[k];
            value[k] = c0 * trackA[k] + direct * v;
        }
    }

    private void writePair(double[] u, double[] d, BlockSignal out, int n) {
        double[] value = out.value;
        double[] slopes = out.slope;
        double c0 = c[0];
        double c1 = c[1];
        double s0 = slope[0];
        double s1 = slope[1];
        for (int k = 0; k <= n; k++) {
            double v = u[k];
            slopes[k] = s0 * trackA[k] + s1 * trackB[k] + slopeOfInput * v + direct * d[k];
            value[k] = c0 * trackA[k] + c1 * trackB[k] + direct * v;
        }
    }

    /** Puts the state to what it is at point 0 after endless time under a sinusoid, and tells the output's. */
    public GridSinusoid settle(GridSinusoid in, double theta) {
        double cos = Math.cos(theta);
        double sin = Math.sin(theta);
        double endRe = in.re() * cos - in.im() * sin;
        double endIm = in.im() * cos + in.re() * sin;
        double endSlopeRe = in.slopeRe() * cos - in.slopeIm() * sin;
        double endSlopeIm = in.slopeIm() * cos + in.slopeRe() * sin;
        double[] re = new double[2];
        double[] im = new double[2];
        for (int i = 0; i < 2; i++) {
            double[] g = input[i];
            re[i] = g[0] * in.re() + g[1] * in.slopeRe() + g[2] * endRe + g[3] * endSlopeRe;
            im[i] = g[0] * in.im() + g[1] * in.slopeIm() + g[2] * endIm + g[3] * endSlopeIm;
        }
        SteadyState.solve(phi, theta, re, im);
        x0 = re[0];
        x1 = re[1];
        return new GridSinusoid(c[0] * re[0] + c[1] * re[1] + direct * in.re(), c[0] * im[0] + c[1] * im[1] + direct * in.im(),
            slope[0] * re[0] + slope[1] * re[1] + slopeOfInput * in.re() + direct * in.slopeRe(),
            slope[0] * im[0] + slope[1] * im[1] + slopeOfInput * in.im() + direct * in.slopeIm());
    }
}

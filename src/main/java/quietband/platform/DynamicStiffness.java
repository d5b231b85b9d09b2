package quietband.platform;

import org.hipparchus.complex.Complex;

/**
 * The dynamic stiffness D(w) of the platform and the matrix N(w) that drives its motion relative to the housing:
 * <pre>
 *   D = -w^2 M + j w C + K + j K_loss + sum rho + sum over lines of b^T b k* b cot b,   k* = k (1 + j eta)
 *   N = M T + sum over lines of b^T (b T) m_s tan(b/2)/b,                               b  = w sqrt(m_s/k*)
 * </pre>
 * so that T - A = -w^2 D^-1 N. With the transfer stiffness kt = k* b/sin b the design's E = D T + w^2 N; the form with
 * the tangent has no difference of near-equal numbers at low frequency.
 */
public final class DynamicStiffness {

    private static final double SATURATED = 300;

    private final Assembly assembly;
    private final Assembly.LineGroup[] lines;
    private final Assembly.Relaxing[] relaxing;
    private final double[] dRe = new double[36];
    private final double[] dIm = new double[36];
    private final double[] nRe = new double[18];
    private final double[] nIm = new double[18];

    /** For one thread: the arrays inside are reused at every frequency. */
    public DynamicStiffness(Assembly assembly) {
        this.assembly = assembly;
        this.lines = assembly.lineGroups().toArray(Assembly.LineGroup[]::new);
        this.relaxing = assembly.relaxing().toArray(Assembly.Relaxing[]::new);
    }

    /** Evaluates at an angular frequency in rad/s, above 0. */
    public void at(double w) {
        double[] m = assembly.mass();
        double[] k = assembly.plainStiffness();
        double[] loss = assembly.plainLoss();
        double[] c = assembly.damping();
        for (int i = 0; i < 36; i++) {
            dRe[i] = k[i] - w * w * m[i];
            dIm[i] = w * c[i] + loss[i];
        }
        for (Assembly.Relaxing r : relaxing) {
            // j w/(j w + wc) = (w^2 + j w wc)/(w^2 + wc^2)
            double scale = w * w + r.corner() * r.corner();
            for (int i = 0; i < 36; i++) {
                dRe[i] += r.stiffness()[i] * w * w / scale;
                dIm[i] += r.stiffness()[i] * w * r.corner() / scale;
            }
        }
        for (int i = 0; i < 6; i++) {
            for (int j = 0; j < 3; j++) {
                nRe[3 * i + j] = m[6 * i + j];
                nIm[3 * i + j] = 0;
            }
        }
        for (Assembly.LineGroup line : lines) {
            add(line, w);
        }
    }

    private void add(Assembly.LineGroup line, double w) {
        Complex k = new Complex(line.stiffness(), line.stiffness() * line.loss());
        Complex b = new Complex(line.mass()).divide(k).sqrt().multiply(w);
        Complex cotangent;
        Complex halfTangent;
        if (Math.abs(b.getImaginary()) > SATURATED) {
            // so lossy that a wave dies out along the line
            halfTangent = new Complex(0, Math.signum(b.getImaginary()));
            cotangent = halfTangent.negate();
        } else {
            double sin = StrictMath.sin(b.getReal());
            double cos = StrictMath.cos(b.getReal());
            double cosh = StrictMath.cosh(b.getImaginary());
            double sinh = StrictMath.sinh(b.getImaginary());
            Complex sine = new Complex(sin * cosh, cos * sinh);
            Complex cosine = new Complex(cos * cosh, -sin * sinh);
            // both stay exact where a standing wave makes them infinite; the second in the form that does not cancel
            cotangent = cosine.divide(sine);
            halfTangent = cos > 0 ? sine.divide(cosine.add(1)) : cosine.negate().add(1).divide(sine);
        }
        Complex direct = k.multiply(b).multiply(cotangent);
        Complex carried = halfTangent.divide(b).multiply(line.mass());
        double[] outer = line.outer();
        for (int i = 0; i < 6; i++) {
            for (int j = 0; j < 6; j++) {
                dRe[6 * i + j] += outer[6 * i + j] * direct.getReal();
                dIm[6 * i + j] += outer[6 * i + j] * direct.getImaginary();
            }
            for (int j = 0; j < 3; j++) {
                nRe[3 * i + j] += outer[6 * i + j] * carried.getReal();
                nIm[3 * i + j] += outer[6 * i + j] * carried.getImaginary();
            }
        }
    }

    /** Real part of D, 6 x 6 row by row; valid until the next call, do not modify. */
    public double[] dRe() {
        return dRe;
    }

    /** Imaginary part of D. */
    public double[] dIm() {
        return dIm;
    }

    /** Real part of N, 6 x 3 row by row. */
    public double[] nRe() {
        return nRe;
    }

    /** Imaginary part of N. */
    public double[] nIm() {
        return nIm;
    }

    /** The damping ratio of a mode, Im(phi^T D(w_n) phi)/(2 w_n^2) with phi mass-normalised. */
    public double dampingRatio(int mode) {
        Modes modes = assembly.modes();
        double w = modes.omega(mode);
        at(w);
        return modes.project(dIm, mode, mode) / (2 * w * w);
    }
}

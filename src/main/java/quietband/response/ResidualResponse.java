package quietband.response;

import java.util.Arrays;
import java.util.Set;
import quietband.cancellation.CancellationPath;
import quietband.model.Axis;
import quietband.model.Cancellation;
import quietband.model.Design;
import quietband.model.Stack;
import quietband.model.Vec;
import quietband.oscillator.Sensitivity;
import quietband.platform.Assembly;
import quietband.platform.PlatformMotion;
import quietband.spectrum.Magnitudes;

/**
 * The residual sensitivity at one frequency, complex, fractional frequency per g of housing acceleration along axis j:
 * <pre>
 *   y_j = sum_i G_i H_m,i (B(p_c) A e_j)_i  -  sum_i weight_i P_i sensed_i(e_j)
 * </pre>
 * Bolted down B(p) A = I. One object serves one thread: first {@link #at}, then any number of stacks.
 */
public final class ResidualResponse {

    private final Design design;
    private final Sensitivity sensitivity;
    private final PlatformMotion motion;
    private final CancellationPath path;
    private final Vec weights;
    private final double[] identity = {1, 0, 0, 0, 1, 0, 0, 0, 1};
    private final double[] crystalRe = new double[9];
    private final double[] crystalIm = new double[9];
    private final double[] sensorRe = new double[9];
    private final double[] sensorIm = new double[9];
    private final double[] gRe = new double[3];
    private final double[] gIm = new double[3];
    private final double[] pathRe = new double[3];
    private final double[] pathIm = new double[3];
    private double frequency = Double.NaN;

    /** For one design and one thread; the platform's matrices are built here. */
    public ResidualResponse(Design design) {
        this(design, design.platform().map(Assembly::new).orElse(null));
    }

    /** The same with matrices built before; null when the design has no platform. */
    public ResidualResponse(Design design, Assembly assembly) {
        this.design = design;
        this.sensitivity = new Sensitivity(design.oscillator().resonator());
        this.motion = assembly == null ? null : new PlatformMotion(assembly);
        this.path = design.cancellation().map(CancellationPath::new).orElse(null);
        this.weights = design.weightsPerG();
    }

    /** Solves the platform and the path at a frequency in Hz, above 0. */
    public void at(double f) {
        if (f == frequency) {
            return;
        }
        frequency = f;
        sensitivity.at(f, gRe, gIm);
        if (motion != null) {
            motion.at(f);
            motion.accelerationOf(design.oscillator().resonator().position(), crystalRe, crystalIm);
        }
        if (path != null) {
            path.write(f, CancellationPath.Elements.ALL, pathRe, pathIm);
            if (motion != null && sensor().onPlatform()) {
                motion.accelerationOf(sensor().position(), sensorRe, sensorIm);
            }
        }
    }

    private Cancellation.Sensor sensor() {
        return design.cancellation().orElseThrow().sensor();
    }

    /** |y_j| at f in Hz for one housing axis, fractional frequency per g. */
    public double magnitude(Stack stack, Axis axis, double f) {
        double[] re = new double[3];
        double[] im = new double[3];
        at(f);
        residual(stack, re, im);
        return StrictMath.hypot(re[axis.ordinal()], im[axis.ordinal()]);
    }

    /** |y_j|^2 for the three housing axes at the frequency in force. */
    public double[] squares(Stack stack) {
        double[] re = new double[3];
        double[] im = new double[3];
        residual(stack, re, im);
        return Magnitudes.squared(re, im);
    }

    /** |y_j| per axis (length 3), 1/g, at the frequency it is at, of some causes with all others ideal. */
    public double[] magnitudes(Stack stack, Set<Cause> causes) {
        double[] re = new double[3];
        double[] im = new double[3];
        residual(stack, causes, re, im);
        return Magnitudes.of(re, im);
    }

    /**
     * Writes y_x, y_y, y_z of a stack (arrays of length 3, modified), 1/g, at the frequency of the last {@link #at}.
     */
    public void residual(Stack stack, double[] re, double[] im) {
        residual(stack, Cause.ALL, re, im);
    }

    /** The same with only the named causes as they are and every other one ideal. */
    public void residual(Stack stack, Set<Cause> causes, double[] re, double[] im) {
        boolean sprung = stack.sprung();
        double[] cRe = sprung ? crystalRe : identity;
        double[] cIm = sprung ? crystalIm : null;
        double[] sRe = new double[9];
        double[] sIm = new double[9];
        double[] pRe = new double[3];
        double[] pIm = new double[3];
        if (stack.corrected()) {
            sensed(sprung, causes, sRe, sIm);
            weighted(causes, pRe, pIm);
        }
        boolean support = causes.contains(Cause.SUPPORT_RESONANCE);
        for (int j = 0; j < 3; j++) {
            double yr = 0;
            double yi = 0;
            for (int i = 0; i < 3; i++) {
                double hr = support ? gRe[i] : sensitivity.mounted().get(i);
                double hi = support ? gIm[i] : 0;
                double ar = cRe[3 * i + j];
                double ai = cIm == null ? 0 : cIm[3 * i + j];
                double br = sRe[3 * i + j];
                double bi = sIm[3 * i + j];
                yr += hr * ar - hi * ai - (pRe[i] * br - pIm[i] * bi);
                yi += hr * ai + hi * ar - (pRe[i] * bi + pIm[i] * br);
            }
            re[j] = yr;
            im[j] = yi;
        }
    }

    /** weight_i P_i with the causes that are real. */
    private void weighted(Set<Cause> causes, double[] re, double[] im) {
        Vec w = causes.contains(Cause.WEIGHTS) ? weights : sensitivity.mounted();
        if (causes.size() == Cause.ALL.size()) {
            System.arraycopy(pathRe, 0, re, 0, 3);
            System.arraycopy(pathIm, 0, im, 0, 3);
        } else {
            path.write(frequency, new CancellationPath.Elements(causes.contains(Cause.PATH), causes.contains(Cause.GAIN),
                causes.contains(Cause.PHASE), causes.contains(Cause.DELAY)), re, im);
        }
        for (int i = 0; i < 3; i++) {
            re[i] *= w.get(i);
            im[i] *= w.get(i);
        }
    }

    /**
     * Writes what the sensors read per unit housing acceleration, X B(p_s) A or X: row sensor, column drive (length 9,
     * both modified), at the frequency of the last {@link #at}.
     *
     * @param sprung whether the platform moves on its springs
     */
    public void sensed(boolean sprung, double[] re, double[] im) {
        sensed(sprung, Cause.ALL, re, im);
    }

    private void sensed(boolean sprung, Set<Cause> causes, double[] re, double[] im) {
        boolean placed = causes.contains(Cause.SENSOR_PLACE);
        double[] aRe;
        double[] aIm = null;
        if (!sprung || (placed && !sensor().onPlatform())) {
            aRe = identity;
        } else {
            aRe = placed ? sensorRe : crystalRe;
            aIm = placed ? sensorIm : crystalIm;
        }
        Arrays.fill(im, 0);
        if (!causes.contains(Cause.CROSS_AXIS)) {
            System.arraycopy(aRe, 0, re, 0, 9);
            if (aIm != null) {
                System.arraycopy(aIm, 0, im, 0, 9);
            }
            return;
        }
        for (int i = 0; i < 3; i++) {
            for (int j = 0; j < 3; j++) {
                double sr = 0;
                double si = 0;
                for (int k = 0; k < 3; k++) {
                    double x = sensor().crossAxis().get(3 * i + k);
                    sr += x * aRe[3 * k + j];
                    si += aIm == null ? 0 : x * aIm[3 * k + j];
                }
                re[3 * i + j] = sr;
                im[3 * i + j] = si;
            }
        }
    }

    /** Writes the cancellation sum_i weight_i P_i sensed_i for each drive axis (length 3, modified), 1/g. */
    public void correction(boolean sprung, double[] re, double[] im) {
        double[] sRe = new double[9];
        double[] sIm = new double[9];
        sensed(sprung, Cause.ALL, sRe, sIm);
        double[] pRe = new double[3];
        double[] pIm = new double[3];
        weighted(Cause.ALL, pRe, pIm);
        for (int j = 0; j < 3; j++) {
            re[j] = 0;
            im[j] = 0;
            for (int i = 0; i < 3; i++) {
                re[j] += pRe[i] * sRe[3 * i + j] - pIm[i] * sIm[3 * i + j];
                im[j] += pRe[i] * sIm[3 * i + j] + pIm[i] * sRe[3 * i + j];
            }
        }
    }

    /** The platform's motion at the frequency of the last {@link #at}; null without a platform. */
    public PlatformMotion motion() {
        return motion;
    }

    /** Length of the mounted sensitivity vector, 1/g: what the residual is small against. */
    public double scale() {
        return Math.max(sensitivity.mounted().length(), weights.length());
    }
}

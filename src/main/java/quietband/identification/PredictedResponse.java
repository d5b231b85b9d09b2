package quietband.identification;

import org.hipparchus.complex.Complex;
import quietband.cancellation.CancellationPath;
import quietband.identification.MeasuredResponse.Kind;
import quietband.model.Cancellation;
import quietband.model.Design;
import quietband.model.Stack;
import quietband.model.Vec;
import quietband.platform.Assembly;
import quietband.platform.PlatformMotion;
import quietband.response.ResidualResponse;

/**
 * What a measurement of a kind would show on a design, per driven axis: the residual y_j of a stack in 1/g; the
 * acceleration along the driven axis at the sensor's position (the origin without one) per unit housing acceleration;
 * the path P_i; or weight_i P_i in 1/g. One object serves one thread.
 */
public final class PredictedResponse {

    private final Kind kind;
    private final Stack stack;
    private final ResidualResponse residual;
    private final PlatformMotion motion;
    private final CancellationPath path;
    private final Vec weights;
    private final Vec place;
    private final double[] re = new double[3];
    private final double[] im = new double[3];
    private final double[] matrixRe = new double[9];
    private final double[] matrixIm = new double[9];

    /** For one design; the stack matters for a sensitivity only. */
    public PredictedResponse(Design design, Kind kind, Stack stack) {
        this.kind = kind;
        this.stack = stack;
        residual = kind == Kind.SENSITIVITY ? new ResidualResponse(design) : null;
        motion = kind == Kind.TRANSMISSIBILITY
            ? design.platform().map(p -> new PlatformMotion(new Assembly(p))).orElse(null) : null;
        boolean pathOnly = kind == Kind.PATH || kind == Kind.WEIGHTED_PATH;
        path = pathOnly ? new CancellationPath(design.cancellation().orElseThrow()) : null;
        weights = kind == Kind.WEIGHTED_PATH ? design.weightsPerG() : Vec.all(1);
        place = design.cancellation().map(Cancellation::sensor).map(Cancellation.Sensor::position).orElse(Vec.ZERO);
    }

    /** Works all three axes out at a frequency in Hz, above 0. */
    public void at(double f) {
        switch (kind) {
            case SENSITIVITY -> {
                residual.at(f);
                residual.residual(stack, re, im);
            }
            case TRANSMISSIBILITY -> transmissibility(f);
            default -> {
                for (int i = 0; i < 3; i++) {
                    Complex p = path.at(i, f).multiply(weights.get(i));
                    re[i] = p.getReal();
                    im[i] = p.getImaginary();
                }
            }
        }
    }

    private void transmissibility(double f) {
        if (motion != null) {
            motion.at(f);
            motion.accelerationOf(place, matrixRe, matrixIm);
        }
        for (int i = 0; i < 3; i++) {
            re[i] = motion == null ? 1 : matrixRe[4 * i];
            im[i] = motion == null ? 0 : matrixIm[4 * i];
        }
    }

    /** Real part for a driven axis, 0 to 2. */
    public double re(int axis) {
        return re[axis];
    }

    /** Imaginary part for a driven axis, 0 to 2. */
    public double im(int axis) {
        return im[axis];
    }
}

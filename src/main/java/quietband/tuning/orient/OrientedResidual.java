package quietband.tuning.orient;

import java.util.Optional;
import quietband.model.Axis;
import quietband.model.Cancellation;
import quietband.model.Design;
import quietband.model.Oscillator;
import quietband.model.Oscillator.Resonator;
import quietband.model.Rotation;
import quietband.model.Stack;
import quietband.model.Vec;
import quietband.response.ResidualResponse;

/**
 * How a resonator is seen through platform and cancellation, for any vector at once: the residual is linear in the mounted
 * sensitivity G and in the weights w, {@code y_j(f) = sum_i R_ij(f) G_i + sum_i S_ij(f) w_i}. R and S are the responses to unit
 * vectors, of the fullest stack.
 */
final class OrientedResidual {

    private static final double UNIT = 1e-9;

    private final Design design;
    private final ResidualResponse[] crystal = new ResidualResponse[3];
    private final ResidualResponse[] weight = new ResidualResponse[3];
    private final Stack stack;
    private final double[] re = new double[3];
    private final double[] im = new double[3];

    OrientedResidual(Design design) {
        this.design = design;
        this.stack = Stack.fullest(design);
        for (Axis axis : Axis.ALL) {
            Vec unit = Vec.ZERO.with(axis, UNIT);
            crystal[axis.ordinal()] = new ResidualResponse(with(design, unit, Vec.ZERO));
            weight[axis.ordinal()] = stack.corrected() ? new ResidualResponse(with(design, Vec.ZERO, unit)) : null;
        }
    }

    /** A design with another vector, not turned, and other weights. */
    static Design with(Design d, Vec sensitivity, Vec weights) {
        Resonator r = d.oscillator().resonator();
        Oscillator o = d.oscillator();
        Resonator other = new Resonator(r.cut(), r.support(), sensitivity, r.position(), r.supportResonance(), Rotation.NONE);
        Optional<Cancellation> c = d.cancellation().map(x -> new Cancellation(x.calibratedEach(), Optional.of(weights), x.sensor(),
            x.path(), x.tuning(), x.error()));
        return new Design(d.title(), new Oscillator(o.carrierHz(), o.outputHz(), o.staticPhaseNoise(), other), d.platform(), c,
            d.vibration(), d.requirement(), d.tolerances(), d.correlations(), d.conditions(), d.quantities(),
            d.parts());
    }

    /** Whether the weights follow the vector. */
    boolean follows() {
        return design.cancellation().map(c -> c.weightsPerG().isEmpty()).orElse(true);
    }

    /**
     * R and S at a frequency in Hz, written to arrays of length 36: element 6 j + 2 i is the real part for housing axis j and
     * component i, the next one its imaginary part; R first, from 18 on S.
     */
    void at(double f, double[] into) {
        for (int i = 0; i < 3; i++) {
            take(crystal[i], f, i, into, 0);
            if (weight[i] != null) {
                take(weight[i], f, i, into, 18);
            }
        }
    }

    private void take(ResidualResponse response, double f, int i, double[] into, int from) {
        response.at(f);
        response.residual(stack, re, im);
        for (int j = 0; j < 3; j++) {
            into[from + 6 * j + 2 * i] = re[j] / UNIT;
            into[from + 6 * j + 2 * i + 1] = im[j] / UNIT;
        }
    }
}

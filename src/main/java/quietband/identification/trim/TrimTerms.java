package quietband.identification.trim;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.hipparchus.complex.Complex;
import quietband.cancellation.CancellationPath;
import quietband.demand.ResidualDemand;
import quietband.identification.FitException;
import quietband.model.Axis;
import quietband.model.Cancellation;
import quietband.model.Cancellation.PathError;
import quietband.model.Design;
import quietband.model.Oscillator.Resonator;
import quietband.model.Rotation;
import quietband.model.Vec;
import quietband.oscillator.Sensitivity;
import quietband.platform.Assembly;
import quietband.platform.PlatformMotion;
import quietband.response.ResidualResponse;

/**
 * What the model says at every reading of a pair of runs on one unit. With the drive along j
 * <pre>
 *   off = sum_i G_i K_i,   K_i = H_m,i (B(p_c) A e_j)_i
 *   off - on = sum_i w_i M_i u_i,   M_i = P_i sensed_i(e_j) with P without errors,  u_i = (1 + gain_i) exp(j phase_i - j w delay_i)
 * </pre>
 *
 * @param points in the order of the axes, each rising in frequency
 */
record TrimTerms(List<Point> points) {

    /**
     * One reading, cancellation off and on.
     *
     * @param axis        driven
     * @param frequencyHz of the drive
     * @param off         reading, 1/g
     * @param on          reading, 1/g
     * @param offError    one standard uncertainty of each of its parts, 1/g; NaN where not stated
     * @param onError     the same of {@code on}
     * @param crystal     K_i (length 3)
     * @param path        M_i (length 3)
     * @param limit       of the residual, 1/g; infinite without one
     */
    record Point(Axis axis, double frequencyHz, Complex off, Complex on, double offError, double onError, Complex[] crystal,
                 Complex[] path, double limit) {

        /** What the cancellation does. */
        Complex difference() {
            return off.subtract(on);
        }
    }

    /** For one unit; {@code bolted} when it stood on the shaker without its platform. */
    static TrimTerms of(Design design, boolean bolted, Map<Axis, List<TrimRun.Reading>> off, Map<Axis, List<TrimRun.Reading>> on) {
        Cancellation plain = design.cancellation().orElseThrow().withError(PathError.NONE);
        Optional<Assembly> assembly = bolted ? Optional.empty() : design.platform().map(Assembly::new);
        PlatformMotion motion = assembly.map(PlatformMotion::new).orElse(null);
        ResidualResponse response = new ResidualResponse(design, design.platform().map(Assembly::new).orElse(null));
        CancellationPath path = new CancellationPath(plain);
        Resonator r = design.oscillator().resonator();
        Sensitivity support = new Sensitivity(new Resonator("", "", Vec.all(1), r.position(), r.supportResonance(), Rotation.NONE));
        ResidualDemand demand = new ResidualDemand(design, Double.POSITIVE_INFINITY);
        double half = plain.path().sampled() ? plain.path().sampleRateHz() / 2 : Double.POSITIVE_INFINITY;
        List<Point> points = new ArrayList<>();
        double[] hRe = new double[3];
        double[] hIm = new double[3];
        double[] bRe = {1, 0, 0, 0, 1, 0, 0, 0, 1};
        double[] bIm = new double[9];
        double[] sRe = new double[9];
        double[] sIm = new double[9];
        for (Axis axis : Axis.ALL) {
            int j = axis.ordinal();
            for (int n = 0; n < off.get(axis).size(); n++) {
                TrimRun.Reading a = off.get(axis).get(n);
                TrimRun.Reading b = on.get(axis).get(n);
                double f = a.frequencyHz();
                if (f > half) {
                    throw new FitException("line " + a.line() + ": " + f + " Hz is above half the sample rate, where the cancellation does "
                        + "nothing; leave it out of both files");
                }
                support.at(f, hRe, hIm);
                if (motion != null) {
                    motion.at(f);
                    motion.accelerationOf(r.position(), bRe, bIm);
                }
                response.at(f);
                response.sensed(motion != null, sRe, sIm);
                Complex[] crystal = new Complex[3];
                Complex[] through = new Complex[3];
                for (int i = 0; i < 3; i++) {
                    crystal[i] = new Complex(hRe[i], hIm[i]).multiply(new Complex(bRe[3 * i + j], bIm[3 * i + j]));
                    through[i] = path.at(i, f).multiply(new Complex(sRe[3 * i + j], sIm[3 * i + j]));
                }
                points.add(new Point(axis, f, new Complex(a.re(), a.im()), new Complex(b.re(), b.im()), a.relativeError() * a.size(),
                    b.relativeError() * b.size(), crystal, through,
                    demand.limit(j, f)));
            }
        }
        return new TrimTerms(points);
    }

    /** Whether every reading has its uncertainty stated. */
    boolean stated() {
        return points.stream().noneMatch(p -> Double.isNaN(p.offError()));
    }

    /** How many frequencies an axis was driven at. */
    long frequencies(Axis axis) {
        return points.stream().filter(p -> p.axis() == axis).count();
    }
}

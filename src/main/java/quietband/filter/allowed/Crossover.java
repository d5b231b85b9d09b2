package quietband.filter.allowed;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.stream.IntStream;
import quietband.model.Cancellation;
import quietband.model.Cancellation.PathError;
import quietband.model.Design;
import quietband.model.Stack;
import quietband.model.Vec;
import quietband.response.ResidualCurves;

/**
 * Where the platform takes over from the cancellation: above it the worst axis is better isolated than
 * cancelled.
 *
 * @param delay      added to the delay error of every axis, s
 * @param frequencyHz of the crossover; NaN without a platform, infinite when it is above the band
 * @param holdsTo    up to where the cancellation alone holds the limit from the band's lower end on, Hz; NaN without a limit or when
 *                   it does not there
 * @param marginDb   least margin of the fullest stack; NaN without a limit
 */
public record Crossover(double delay, double frequencyHz, double holdsTo, double marginDb) {

    private static final double[] DELAYS = {0, 1e-6, 2e-6, 5e-6, 10e-6, 20e-6, 50e-6, 100e-6};
    private static final int POINTS = 400;

    /** For delays from 0 to 100 us more than the design has. */
    public static List<Crossover> of(Design design) {
        List<Crossover> all = new ArrayList<>();
        for (double delay : DELAYS) {
            all.add(of(design, delay));
        }
        return all;
    }

    /** For a delay in s more than the design has. */
    public static Crossover of(Design design, double delay) {
        Cancellation c = design.cancellation().orElseThrow();
        Vec more = new Vec(c.error().delay().x() + delay, c.error().delay().y() + delay, c.error().delay().z() + delay);
        Design slow = design.withCancellation(java.util.Optional.of(c.withError(new PathError(c.error().gain(), c.error().phase(),
            more))));
        ResidualCurves curves = ResidualCurves.of(slow, POINTS);
        double[] f = curves.frequencyHz();
        double[] alone = curves.judgedPerG(curves.stacks().indexOf(Stack.CANCELLED));
        int sprung = curves.stacks().indexOf(Stack.ISOLATED);
        double at = Double.NaN;
        if (sprung >= 0) {
            double[] platform = curves.judgedPerG(sprung);
            at = lastRise(f, IntStream.range(0, f.length).mapToDouble(n -> Math.log(alone[n] / platform[n])).toArray());
        }
        double[] margin = curves.marginDb(curves.stacks().indexOf(Stack.fullest(design)));
        return new Crossover(delay, at, holdsTo(f, curves.marginDb(curves.stacks().indexOf(Stack.CANCELLED))),
            curves.limited() ? Arrays.stream(margin).min().orElseThrow() : Double.NaN);
    }

    /** Highest frequency where a curve goes from below 0 to above. */
    private static double lastRise(double[] f, double[] v) {
        if (v[v.length - 1] < 0) {
            return Double.POSITIVE_INFINITY;
        }
        for (int n = v.length - 1; n > 0; n--) {
            if (v[n - 1] < 0 && v[n] >= 0) {
                return between(f[n - 1], f[n], v[n - 1], v[n]);
            }
        }
        return f[0];
    }

    private static double holdsTo(double[] f, double[] margin) {
        if (!(margin[0] >= 0)) {
            return Double.NaN;
        }
        for (int n = 1; n < f.length; n++) {
            if (margin[n] < 0) {
                return between(f[n - 1], f[n], margin[n - 1], margin[n]);
            }
        }
        return f[f.length - 1];
    }

    private static double between(double f1, double f2, double v1, double v2) {
        return f1 * Math.pow(f2 / f1, v1 / (v1 - v2));
    }
}

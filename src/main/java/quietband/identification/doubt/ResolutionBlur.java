package quietband.identification.doubt;

import quietband.identification.search.MeasuredPoints;
import quietband.identification.search.ResponseEvaluator;

/**
 * Takes the blur of a spectrum's finite resolution out of measured responses, with a model that is near the truth.
 *
 * <p>With a window w, the expected cross density is the true one convolved with |W|^2; for a drive that is even over some lines so is
 * the response. For the Hann window W(x) = sin(pi x)/(pi x (1 - x^2)), x in lines; sums over half lines are exact as long as the platform
 * rings no longer than a segment.
 */
public final class ResolutionBlur {

    private static final int REACH = 8;

    private ResolutionBlur() { }

    public static boolean any(MeasuredPoints seen) {
        return seen.series().stream().anyMatch(s -> s.source().lineHz() > 0);
    }

    /** What would have been measured without blur; points of curves that are no spectra stay. */
    public static MeasuredPoints removed(MeasuredPoints seen, ResponseEvaluator near, double[] u) {
        int n = seen.size();
        double[] re = new double[n];
        double[] im = new double[n];
        double[] sumRe = new double[n];
        double[] sumIm = new double[n];
        double weights = 0;
        for (int j = -REACH; j <= REACH; j++) {
            double w = window(j / 2.0);
            weights += w * w;
            if (!new ResponseEvaluator(near.design(near.free().start()), near.free(), seen.moved(j / 2.0)).predict(u, re, im)) {
                return seen;
            }
            for (int i = 0; i < n; i++) {
                sumRe[i] += w * w * re[i];
                sumIm[i] += w * w * im[i];
            }
        }
        near.predict(u, re, im);
        double[] magnitude = seen.magnitude().clone();
        double[] phase = seen.phase().clone();
        for (int i = 0; i < n; i++) {
            if (seen.series().get(seen.of()[i]).source().lineHz() > 0) {
                magnitude[i] *= Math.hypot(re[i], im[i]) / (Math.hypot(sumRe[i], sumIm[i]) / weights);
                phase[i] += Math.atan2(im[i], re[i]) - Math.atan2(sumIm[i], sumRe[i]);
            }
        }
        return seen.with(magnitude, phase);
    }

    private static double window(double x) {
        if (x == 0) {
            return 1;
        }
        return Math.abs(x) == 1 ? 0.5 : Math.sin(Math.PI * x) / (Math.PI * x * (1 - x * x));
    }
}

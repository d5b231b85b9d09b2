package quietband.identification;

import java.util.EnumMap;
import java.util.Map;
import java.util.Optional;
import java.util.SplittableRandom;
import quietband.identification.MeasuredResponse.Curve;
import quietband.identification.MeasuredResponse.Kind;
import quietband.model.Axis;
import quietband.model.Design;
import quietband.model.Stack;

/** Measurements of a design as an instrument with noise would have them. */
public final class Synthetic {

    /**
     * What the instrument is like.
     *
     * @param kind   what it measures
     * @param axes   letters of the driven axes
     * @param noise  standard deviation of each of the two parts of the noise, as a share of the magnitude
     * @param phased whether it measures the phase
     * @param stated whether it states its noise
     */
    public record Instrument(Kind kind, String axes, double noise, boolean phased, boolean stated) { }

    private Synthetic() { }

    public static MeasuredFile of(Design truth, double[] f, Instrument tool, long seed) {
        Map<Axis, Curve> axes = new EnumMap<>(Axis.class);
        SplittableRandom random = new SplittableRandom(seed * 1_000_003 + 17);
        PredictedResponse prediction = new PredictedResponse(truth, tool.kind(), Stack.fullest(truth));
        for (Axis axis : Axis.ALL) {
            if (tool.axes().contains(axis.letter())) {
                double[] m = new double[f.length];
                double[] phase = new double[f.length];
                double[] error = new double[f.length];
                for (int i = 0; i < f.length; i++) {
                    prediction.at(f[i]);
                    double re = prediction.re(axis.ordinal());
                    double im = prediction.im(axis.ordinal());
                    double size = Math.hypot(re, im);
                    re += tool.noise() * size * normal(random);
                    im += tool.noise() * size * normal(random);
                    m[i] = Math.hypot(re, im);
                    phase[i] = Math.atan2(im, re);
                    error[i] = tool.noise();
                }
                axes.put(axis, new Curve(m, tool.phased() ? Optional.of(phase) : Optional.empty(),
                    tool.stated() ? Optional.of(error) : Optional.empty()));
            }
        }
        return new MeasuredFile("synthetic.csv", new MeasuredResponse(tool.kind(), f, axes), Stack.fullest(truth), 0);
    }

    /** A normal deviate by Box and Muller's method. */
    static double normal(SplittableRandom random) {
        return Math.sqrt(-2 * Math.log(1 - random.nextDouble())) * Math.cos(2 * Math.PI * random.nextDouble());
    }
}

package quietband.study.motion;

import java.util.ArrayList;
import java.util.List;
import java.util.stream.IntStream;
import quietband.model.Design;
import quietband.model.Stack;
import quietband.motion.run.Dwell;
import quietband.response.ResidualResponse;

/**
 * A dwell with the prediction of the frequency domain beside it.
 *
 * @param predicted what the frequency domain says, in the order of the result's stacks
 * @param lines     of the spectrum: mean, harmonics, and where what lies above half the sample rate folds to
 * @param worstDb   largest difference of the two, dB, over the stacks predicted above 1 % of the bare sensitivity
 */
public record DwellStudy(Design design, Dwell.Request request, Dwell.Traced traced, List<Predicted> predicted, List<Line> lines,
                         double worstDb) {

    /** Rows that a trace keeps at most. */
    static final int ROWS = 200_000;
    private static final int HARMONICS = 7;

    public DwellStudy {
        predicted = List.copyOf(predicted);
        lines = List.copyOf(lines);
    }

    /** Predicted sensitivity, its size in 1/g and its phase in deg. */
    public record Predicted(double perG, double phaseDeg) { }

    /**
     * A line of the spectrum.
     *
     * @param name what it is
     * @param peak of the fractional frequency, in the order of the result's stacks
     */
    public record Line(String name, double frequencyHz, List<Double> peak) {
        public Line {
            peak = List.copyOf(peak);
        }
    }

    /** Runs a dwell and compares. */
    public static DwellStudy of(Design design, Dwell.Request request) {
        Dwell.Traced traced = Dwell.traced(design, request, ROWS);
        List<Stack> stacks = traced.result().stacks();
        ResidualResponse response = new ResidualResponse(design);
        List<Predicted> predicted = stacks.stream().map(s -> predicted(response, s, request)).toList();
        double bare = predicted(response, Stack.BARE, request).perG();
        double worst = 0;
        for (int s = 0; s < stacks.size(); s++) {
            double p = predicted.get(s).perG();
            if (p > 0.01 * bare) {
                worst = Math.max(worst, Math.abs(20 * Math.log10(traced.result().sensitivityPerG(stacks.get(s)) / p)));
            }
        }
        List<Line> lines = new ArrayList<>(List.of(line("mean", 0, traced)));
        for (int n = 1; n <= HARMONICS; n++) {
            lines.add(line("harmonic " + n, n * request.frequencyHz(), traced));
        }
        double f = request.frequencyHz();
        double fs = design.cancellation().map(c -> c.path().sampleRateHz()).orElse(0.0);
        if (fs > 0 && f > fs / 2) {
            lines.add(line("folded", Math.abs(f - fs * Math.rint(f / fs)), traced));
        }
        return new DwellStudy(design, request, traced, predicted, lines, worst);
    }

    private static Line line(String name, double f, Dwell.Traced traced) {
        return new Line(name, f, IntStream.range(0, traced.result().stacks().size()).mapToObj(s -> traced.trace().line(s, f)).toList());
    }

    private static Predicted predicted(ResidualResponse response, Stack stack, Dwell.Request request) {
        double[] re = new double[3];
        double[] im = new double[3];
        response.at(request.frequencyHz());
        response.residual(stack, re, im);
        int j = request.axis().ordinal();
        return new Predicted(Math.hypot(re[j], im[j]), Math.toDegrees(Math.atan2(im[j], re[j])));
    }
}

package quietband.motion.run;

import java.util.List;
import quietband.model.Axis;
import quietband.model.Design;
import quietband.model.Stack;
import quietband.motion.signal.LossModel;
import quietband.spectrum.LogGrid;

/**
 * What the passive stand-in for a loss factor changes: dwells with it over dwells with the exact damper, per stack and axis, at
 * frequencies over a band.
 *
 * @param frequency Hz, rising
 * @param ratio     |y with the stand-in| / |y exact| per stack, axis and frequency; 1 where nothing is lossy
 */
public record LossError(double[] frequency, double[][][] ratio) {

    private static final int POINTS = 48;

    /** Compares over the band of the requirement. */
    public static LossError of(Design design, List<Axis> axes, double topHz) {
        double[] f = LogGrid.between(POINTS, design.requirement().fromHz(), design.requirement().toHz());
        int stacks = Stack.of(design).size();
        double[][][] ratio = new double[stacks][3][f.length];
        boolean lossy = design.platform().map(p -> p.springs().stream()
            .anyMatch(s -> s.lossFactor().length() > 0 && s.stiffness().length() > 0)).orElse(false);
        for (int k = 0; k < f.length; k++) {
            Dwell.Shared exact = lossy ? Dwell.Shared.of(design, f[k], 4 / f[k], true, LossModel.at(f[k])) : null;
            Dwell.Shared fit = lossy ? Dwell.Shared.of(design, f[k], 4 / f[k], true, LossModel.fit(topHz)) : null;
            for (Axis axis : Axis.ALL) {
                Dwell.Request request = new Dwell.Request(axis, f[k], 1, 0, true);
                boolean looked = lossy && axes.contains(axis);
                Dwell.Result a = looked ? Dwell.run(design, request, exact) : null;
                Dwell.Result b = looked ? Dwell.run(design, request, fit) : null;
                for (int s = 0; s < stacks; s++) {
                    Stack stack = Stack.of(design).get(s);
                    ratio[s][axis.ordinal()][k] = looked ? b.sensitivityPerG(stack) / a.sensitivityPerG(stack) : 1;
                }
            }
        }
        return new LossError(f, ratio);
    }

    /** The ratio at a frequency, straight over log f between the points. */
    public double at(int stack, Axis axis, double f) {
        double[] r = ratio[stack][axis.ordinal()];
        int i = 1;
        while (i < frequency.length - 1 && frequency[i] < f) {
            i++;
        }
        double t = Math.log(f / frequency[i - 1]) / Math.log(frequency[i] / frequency[i - 1]);
        double share = Math.max(0, Math.min(1, t));
        return r[i - 1] + share * (r[i] - r[i - 1]);
    }

    /** The largest change of a stack over all axes, dB. */
    public double worstDb(int stack) {
        double worst = 0;
        for (double[] axis : ratio[stack]) {
            for (double r : axis) {
                worst = Math.max(worst, Math.abs(20 * Math.log10(r)));
            }
        }
        return worst;
    }
}

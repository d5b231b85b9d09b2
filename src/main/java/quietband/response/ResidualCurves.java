package quietband.response;

import java.util.Arrays;
import java.util.List;
import quietband.demand.ResidualLimit;
import quietband.model.Axis;
import quietband.model.Design;
import quietband.model.Stack;
import quietband.platform.Assembly;
import quietband.spectrum.LogGrid;

/**
 * The residual of every stack beside its limit over the band and nothing else: what a picture needs, in milliseconds. Points are
 * evenly spread over log frequency, with the program's own grid between them so that no resonance is missed.
 *
 * @param frequencyHz  rising; not copied, do not modify
 * @param stacks       in the order of {@link Stack#of}
 * @param residualPerG by stack, then x, y, z and vector (0 to 3), then frequency, 1/g; not copied, do not modify
 * @param limitPerG    by x, y, z and vector, then frequency, 1/g; infinite where nothing limits; empty when no limit is stated
 */
public record ResidualCurves(double[] frequencyHz, List<Stack> stacks, double[][][] residualPerG, double[][] limitPerG) {

    /** Index of the vector sum beside the axes. */
    public static final int VECTOR = 3;

    public ResidualCurves {
        stacks = List.copyOf(stacks);
    }

    /**
     * Computes them over the requirement's band.
     *
     * @param points at least this many
     */
    public static ResidualCurves of(Design design, int points) {
        Assembly assembly = design.platform().map(Assembly::new).orElse(null);
        double from = design.requirement().fromHz();
        double to = design.requirement().toHz();
        double[] f = merged(LogGrid.between(points, from, to), DesignGrid.of(design, assembly, from, to));
        List<Stack> stacks = Stack.of(design);
        ResidualResponse response = new ResidualResponse(design, assembly);
        double[][][] y = new double[stacks.size()][4][f.length];
        double[] re = new double[3];
        double[] im = new double[3];
        for (int i = 0; i < f.length; i++) {
            response.at(f[i]);
            for (int s = 0; s < y.length; s++) {
                response.residual(stacks.get(s), re, im);
                double sum = 0;
                for (int j = 0; j < 3; j++) {
                    double squared = re[j] * re[j] + im[j] * im[j];
                    y[s][j][i] = Math.sqrt(squared);
                    sum += squared;
                }
                y[s][VECTOR][i] = Math.sqrt(sum);
            }
        }
        return new ResidualCurves(f, stacks, y, limits(design, f));
    }

    private static double[] merged(double[] a, double[] b) {
        double[] all = Arrays.copyOf(a, a.length + b.length);
        System.arraycopy(b, 0, all, a.length, b.length);
        return Arrays.stream(all).sorted().distinct().toArray();
    }

    private static double[][] limits(Design design, double[] f) {
        ResidualLimit limit = new ResidualLimit(design);
        if (!limit.asked()) {
            return new double[0][];
        }
        double[][] all = new double[4][f.length];
        for (int i = 0; i < f.length; i++) {
            for (Axis axis : Axis.ALL) {
                all[axis.ordinal()][i] = limit.at(axis, f[i]);
            }
            all[VECTOR][i] = Math.min(all[0][i], Math.min(all[1][i], all[2][i]));
        }
        return all;
    }

    /** Whether a limit is stated. */
    public boolean limited() {
        return limitPerG.length > 0;
    }

    /**
     * Margin of a stack at every frequency, dB, positive where it is within the limit: of the worst axis, or of the vector.
     *
     * @return NaN everywhere when no limit is stated
     */
    public double[] marginDb(int stack, boolean vector) {
        double[] margin = new double[frequencyHz.length];
        for (int i = 0; i < margin.length; i++) {
            double over = limited() ? 0 : Double.NaN;
            for (int k = vector ? VECTOR : 0; limited() && k < (vector ? VECTOR + 1 : VECTOR); k++) {
                over = Math.max(over, residualPerG[stack][k][i] / limitPerG[k][i]);
            }
            margin[i] = -20 * StrictMath.log10(over);
        }
        return margin;
    }
}

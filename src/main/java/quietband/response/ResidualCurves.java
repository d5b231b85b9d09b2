package quietband.response;

import java.util.Arrays;
import java.util.List;
import java.util.stream.IntStream;
import quietband.demand.Decibels;
import quietband.demand.ResidualDemand;
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
 * @param demand      what is judged
 */
public record ResidualCurves(double[] frequencyHz, List<Stack> stacks, double[][][] residualPerG, double[][] limitPerG,
                             ResidualDemand demand) {

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
        for (int i = 0; i < f.length; i++) {
            response.at(f[i]);
            for (int s = 0; s < y.length; s++) {
                double[] squared = response.squares(stacks.get(s));
                for (int j = 0; j < 3; j++) {
                    y[s][j][i] = Math.sqrt(squared[j]);
                }
                y[s][VECTOR][i] = Math.sqrt(squared[0] + squared[1] + squared[2]);
            }
        }
        ResidualDemand demand = new ResidualDemand(design);
        return new ResidualCurves(f, stacks, y, limits(demand, f), demand);
    }

    private static double[] merged(double[] a, double[] b) {
        double[] all = Arrays.copyOf(a, a.length + b.length);
        System.arraycopy(b, 0, all, a.length, b.length);
        return Arrays.stream(all).sorted().distinct().toArray();
    }

    private static double[][] limits(ResidualDemand demand, double[] f) {
        double[][] all = new double[demand.asked() ? 4 : 0][f.length];
        for (int k = 0; k < all.length; k++) {
            for (int i = 0; i < f.length; i++) {
                all[k][i] = demand.limit(k, f[i]);
            }
        }
        return all;
    }

    /** Whether a limit is stated. */
    public boolean limited() {
        return limitPerG.length > 0;
    }

    /** Margin of a stack at every frequency, dB, positive within the limit, of what is judged; NaN when no limit is stated. */
    public double[] marginDb(int stack) {
        double[] margin = new double[frequencyHz.length];
        Arrays.fill(margin, Double.NaN);
        for (int i = 0; i < margin.length && limited(); i++) {
            margin[i] = -Decibels.ofRatio(Math.sqrt(demand.joined(over(stack, 0, i), over(stack, 1, i), over(stack, 2, i))));
        }
        return margin;
    }

    private double over(int stack, int axis, int i) {
        double ratio = Decibels.ratio(residualPerG[stack][axis][i], limitPerG[axis][i]);
        return ratio * ratio;
    }

    /** The residual that is judged at every frequency, 1/g: the largest axis, or the vector. */
    public double[] judgedPerG(int stack) {
        double[][] y = residualPerG[stack];
        return IntStream.range(0, frequencyHz.length).mapToDouble(i -> demand.perG(
            new double[] {y[0][i] * y[0][i], y[1][i] * y[1][i], y[2][i] * y[2][i]})).toArray();
    }
}

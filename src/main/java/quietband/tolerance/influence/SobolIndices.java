package quietband.tolerance.influence;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.function.Supplier;
import java.util.function.ToDoubleFunction;
import org.apache.commons.rng.UniformRandomProvider;
import quietband.tolerance.draw.UnitStream;
import quietband.work.Workers;

/**
 * Sobol indices by Saltelli's scheme (Comput. Phys. Commun. 181 (2010) 259, from memory): two independent samples A and B of N
 * points, and for each group of inputs a third that is A with the group's columns taken from B. First order
 * {@code mean(f_B (f_AB - f_A))/V}, total {@code mean((f_A - f_AB)^2)/(2V)} (Jansen). Intervals by resampling the N rows.
 */
public final class SobolIndices {

    private static final int RESAMPLES = 400;

    private SobolIndices() { }

    /**
     * Indices of one group of inputs.
     *
     * @param first     share of the variance that goes when the group is known
     * @param firstLow  lower end of its interval
     * @param firstHigh upper end
     * @param total     share of the variance that stays when all but the group are known
     * @param totalLow  lower end of its interval
     * @param totalHigh upper end
     */
    public record Index(double first, double firstLow, double firstHigh, double total, double totalLow, double totalHigh) { }

    /**
     * What an estimate consists of.
     *
     * @param indices per group
     * @param a       values on sample A
     * @param points  the points of sample A
     */
    public record Estimate(List<Index> indices, double[] a, double[][] points) {

        public Estimate {
            indices = List.copyOf(indices);
        }
    }

    /**
     * Estimates.
     *
     * @param inputs     number of independent standard normals
     * @param groups     inputs by index, group by group
     * @param rows       N; N (groups + 2) evaluations are made
     * @param confidence of the intervals
     * @param function   of a point; one supplied per thread
     */
    public static Estimate of(int inputs, List<int[]> groups, int rows, double confidence, long seed, int threads,
                              Supplier<ToDoubleFunction<double[]>> function) {
        double[][] a = sample(inputs, rows, seed, UnitStream.Purpose.FIRST_MATRIX);
        double[][] b = sample(inputs, rows, seed, UnitStream.Purpose.SECOND_MATRIX);
        int sets = groups.size() + 2;
        double[] f = Workers.all(rows * sets, threads, () -> {
            ToDoubleFunction<double[]> own = function.get();
            return index -> {
                int row = index / sets;
                int set = index % sets;
                return own.applyAsDouble(set == 0 ? a[row] : set == 1 ? b[row] : mixed(a[row], b[row], groups.get(set - 2)));
            };
        });
        double[][] terms = terms(f, sets, rows);
        int[] all = new int[rows];
        Arrays.setAll(all, i -> i);
        double[][] whole = estimate(terms, all);
        double[][][] again = new double[RESAMPLES][][];
        Workers.each(RESAMPLES, threads, () -> r -> {
            UniformRandomProvider random = UnitStream.of(seed, UnitStream.Purpose.BOOTSTRAP, 0, r);
            int[] chosen = new int[rows];
            Arrays.setAll(chosen, i -> random.nextInt(rows));
            again[r] = estimate(terms, chosen);
        });
        List<Index> indices = new ArrayList<>();
        for (int g = 0; g < groups.size(); g++) {
            double[] first = ends(again, g, 0, confidence);
            double[] total = ends(again, g, 1, confidence);
            indices.add(new Index(whole[g][0], first[0], first[1], whole[g][1], total[0], total[1]));
        }
        double[] onA = new double[rows];
        Arrays.setAll(onA, i -> f[i * sets]);
        return new Estimate(indices, onA, a);
    }

    private static double[][] sample(int inputs, int rows, long seed, UnitStream.Purpose purpose) {
        double[][] sample = new double[rows][inputs];
        for (int r = 0; r < rows; r++) {
            UnitStream.normals(seed, purpose, 0, r, sample[r]);
        }
        return sample;
    }

    private static double[] mixed(double[] a, double[] b, int[] group) {
        double[] point = a.clone();
        for (int i : group) {
            point[i] = b[i];
        }
        return point;
    }

    /**
     * What each row adds to the sums that indices consist of, with a and b its values on A and B less the mean of all: a + b,
     * a^2 + b^2, and for each group with its value m: b (m - a), m - a, (m - a)^2.
     */
    private static double[][] terms(double[] f, int sets, int rows) {
        double mean = 0;
        for (int r = 0; r < rows; r++) {
            mean += (f[r * sets] + f[r * sets + 1]) / (2.0 * rows);
        }
        double[][] terms = new double[rows][2 + 3 * (sets - 2)];
        for (int r = 0; r < rows; r++) {
            double a = f[r * sets] - mean;
            double b = f[r * sets + 1] - mean;
            terms[r][0] = a + b;
            terms[r][1] = a * a + b * b;
            for (int g = 0; g < sets - 2; g++) {
                double moved = f[r * sets + 2 + g] - mean - a;
                terms[r][2 + 3 * g] = b * moved;
                terms[r][3 + 3 * g] = moved;
                terms[r][4 + 3 * g] = moved * moved;
            }
        }
        return terms;
    }

    /** First and total index per group on some rows, with the mean and the variance of these rows. */
    private static double[][] estimate(double[][] terms, int[] rows) {
        double[] sum = new double[terms[0].length];
        for (int r : rows) {
            double[] row = terms[r];
            for (int k = 0; k < sum.length; k++) {
                sum[k] += row[k];
            }
        }
        double n = rows.length;
        double mean = sum[0] / (2 * n);
        double variance = sum[1] / (2 * n) - mean * mean;
        double[][] indices = new double[sum.length / 3][2];
        for (int g = 0; g < indices.length && variance > 0; g++) {
            indices[g][0] = (sum[2 + 3 * g] - mean * sum[3 + 3 * g]) / (variance * n);
            indices[g][1] = sum[4 + 3 * g] / (2 * variance * n);
        }
        return indices;
    }

    private static double[] ends(double[][][] again, int group, int which, double confidence) {
        double[] sorted = new double[again.length];
        Arrays.setAll(sorted, r -> again[r][group][which]);
        Arrays.sort(sorted);
        int cut = (int) Math.round((1 - confidence) / 2 * (sorted.length - 1));
        return new double[] {sorted[cut], sorted[sorted.length - 1 - cut]};
    }
}

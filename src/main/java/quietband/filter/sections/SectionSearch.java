package quietband.filter.sections;

import java.util.Arrays;
import java.util.List;
import quietband.demand.PhaseNoise;
import quietband.demand.ResidualDemand;
import quietband.filter.FilterGoal;
import quietband.filter.FilterTask;
import quietband.filter.NoiseTerms;
import quietband.filter.PathResponse;
import quietband.filter.ResidualTerms;
import quietband.model.Axis;
import quietband.model.Design;
import quietband.spectrum.LogGrid;

/** The question for poles that a task asks: what counts how much at which frequency. */
public final class SectionSearch {

    private static final int POINTS = 120;

    private SectionSearch() { }

    /** Denominators {a1, a2, ..} per axis: one or more answers to choose from. */
    public static List<double[][]> denominators(FilterTask task, ResidualTerms terms, PathResponse path, double rate, double[] ends) {
        double[] f = LogGrid.between(POINTS, ends[0], Math.min(ends[1], 0.499 * rate));
        double[][] weight = new double[f.length][3];
        double[][] sensor = new double[0][];
        switch (task.goal()) {
            case FLAT -> Arrays.stream(weight).forEach(w -> Arrays.fill(w, 1e9));
            case LIMIT -> limit(task.design(), f, weight);
            case NOISE -> sensor = noise(new NoiseTerms(task.design(), path, task.measured().isPresent()), f, weight);
        }
        return new PoleSearch(task, terms, f, weight, sensor, rate).run(task.goal() == FilterGoal.LIMIT);
    }

    private static void limit(Design design, double[] f, double[][] weight) {
        ResidualDemand demand = new ResidualDemand(design);
        for (int n = 0; n < f.length; n++) {
            for (int j = 0; j < 3; j++) {
                double l = demand.limit(j, f[n]);
                weight[n][j] = l > 0 && Double.isFinite(l) ? 1 / l : 0;
            }
        }
    }

    /** Roots of what the integral counts; scaled so that it does not matter how small noise is. */
    private static double[][] noise(NoiseTerms terms, double[] f, double[][] weight) {
        double[][] sensor = new double[f.length][3];
        double most = 0;
        for (int n = 0; n < f.length; n++) {
            double df = f[n];
            for (PhaseNoise.Row row : terms.rows()) {
                for (Axis axis : row.axes()) {
                    weight[n][axis.ordinal()] = Math.sqrt(df * terms.vibration(axis, f[n]));
                    most = Math.max(most, weight[n][axis.ordinal()]);
                }
            }
            for (int i = 0; i < 3; i++) {
                sensor[n][i] = Math.sqrt(df * terms.sensor(i, f[n]));
            }
        }
        for (int n = 0; n < f.length; n++) {
            for (int i = 0; i < 3; i++) {
                weight[n][i] *= 1e9 / most;
                sensor[n][i] *= 1e9 / most;
            }
        }
        return sensor;
    }
}

package quietband.response;

import java.util.ArrayList;
import java.util.List;
import java.util.function.Supplier;
import quietband.demand.PhaseNoise;
import quietband.model.Design;
import quietband.model.Stack;
import quietband.platform.Assembly;
import quietband.work.ParallelWork;

/**
 * What a design does at each frequency of a table: residuals, phase noise and contributions. Every row depends on its
 * frequency alone, so that the number of threads changes nothing.
 */
public final class FrequencyTable {

    /**
     * One frequency.
     *
     * @param frequencyHz   where
     * @param residualPerG  |y_j| per stack (order of {@link #stacks()}) and axis, 1/g
     * @param vibration     phase noise by vibration per stack and row (order of {@link #rows()}), power ratio per Hz
     * @param floor         the same without vibration, per stack
     * @param staticNoise       of the oscillator at rest, power ratio per Hz
     * @param sensor        of sensor and converter, power ratio per Hz
     * @param tuning        of the port, power ratio per Hz
     * @param limitDbc      phase-noise limit in dBc/Hz; NaN when none is stated
     * @param allowedPerG   residual that would just meet it per row, 1/g; infinite where nothing limits it
     * @param contributions per cause; empty without a cancellation
     */
    public record Row(double frequencyHz, double[][] residualPerG, double[][] vibration, double[] floor, double staticNoise,
                      double sensor, double tuning, double limitDbc, double[] allowedPerG,
                      List<Contribution> contributions) {

        public Row {
            contributions = List.copyOf(contributions);
        }

        /** Vector residual of a stack, 1/g. */
        public double vectorPerG(int stack) {
            double[] y = residualPerG[stack];
            return Math.sqrt(y[0] * y[0] + y[1] * y[1] + y[2] * y[2]);
        }
    }

    private final List<Stack> stacks;
    private final List<PhaseNoise.Row> noiseRows;
    private final List<Row> rows;

    private FrequencyTable(List<Stack> stacks, List<PhaseNoise.Row> noiseRows, List<Row> rows) {
        this.stacks = stacks;
        this.noiseRows = noiseRows;
        this.rows = rows;
    }

    /**
     * Computes a table.
     *
     * @param frequencies in Hz, above 0, in the order of the table
     * @param threads     how many share the work, at least 1
     */
    public static FrequencyTable of(Design design, double[] frequencies, int threads) {
        return of(design, design.platform().map(Assembly::new).orElse(null), frequencies, threads);
    }

    /** The same with matrices built before; null when the design has no platform. */
    public static FrequencyTable of(Design design, Assembly assembly, double[] frequencies, int threads) {
        List<Supplier<List<Row>>> parts = new ArrayList<>();
        int size = Math.max(64, (frequencies.length + threads - 1) / threads);
        for (int from = 0; from < frequencies.length; from += size) {
            int start = from;
            int end = Math.min(frequencies.length, from + size);
            parts.add(() -> new Part(design, assembly).rows(frequencies, start, end));
        }
        List<Row> rows = new ArrayList<>(frequencies.length);
        for (List<Row> part : ParallelWork.all(parts, threads)) {
            rows.addAll(part);
        }
        return new FrequencyTable(Stack.of(design), new PhaseNoise(design).rows(), rows);
    }

    /** The stacks, in the order of the rows' arrays. */
    public List<Stack> stacks() {
        return stacks;
    }

    /** The phase-noise rows, in the order of the rows' arrays. */
    public List<PhaseNoise.Row> noiseRows() {
        return noiseRows;
    }

    /** One per frequency. */
    public List<Row> rows() {
        return rows;
    }

    /** One thread's share. */
    private static final class Part {

        private final Design design;
        private final ResidualResponse response;
        private final PhaseNoise noise;
        private final List<Stack> stacks;
        private final List<PhaseNoise.Row> noiseRows;

        Part(Design design, Assembly assembly) {
            this.design = design;
            response = new ResidualResponse(design, assembly);
            noise = new PhaseNoise(design);
            stacks = Stack.of(design);
            noiseRows = noise.rows();
        }

        List<Row> rows(double[] frequencies, int from, int to) {
            List<Row> rows = new ArrayList<>(to - from);
            for (int i = from; i < to; i++) {
                rows.add(row(frequencies[i]));
            }
            return rows;
        }

        private Row row(double f) {
            response.at(f);
            double[][] y = new double[stacks.size()][3];
            double[][] vibration = new double[stacks.size()][noiseRows.size()];
            double[] floor = new double[stacks.size()];
            for (int s = 0; s < y.length; s++) {
                double[] squared = response.squares(stacks.get(s));
                for (int j = 0; j < 3; j++) {
                    y[s][j] = Math.sqrt(squared[j]);
                }
                for (int k = 0; k < noiseRows.size(); k++) {
                    vibration[s][k] = noise.vibration(noiseRows.get(k), f, squared);
                }
                floor[s] = noise.floor(stacks.get(s), f);
            }
            double[] allowed = new double[noiseRows.size()];
            for (int k = 0; k < allowed.length; k++) {
                allowed[k] = noise.allowedPerG(noiseRows.get(k), f);
            }
            return new Row(f, y, vibration, floor, noise.staticNoise(f), noise.sensor(f), noise.tuning(f),
                noise.limitDbc(f).orElse(Double.NaN), allowed, contributions());
        }

        private List<Contribution> contributions() {
            Stack fullest = Stack.fullest(design);
            List<Contribution> list = new ArrayList<>();
            if (fullest.corrected()) {
                for (Cause cause : Cause.values()) {
                    list.add(Contribution.of(response, fullest, cause));
                }
            }
            return list;
        }
    }
}

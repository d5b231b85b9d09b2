package quietband.filter.goal;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.TreeSet;
import quietband.filter.ResidualTerms;
import quietband.model.Axis;
import quietband.model.Cancellation;
import quietband.model.Design;
import quietband.model.Vibration.Tone;
import quietband.numerics.ConeProgram;
import quietband.numerics.NormalEquations;
import quietband.numerics.SecondOrderCone;
import quietband.platform.Assembly;
import quietband.response.DesignGrid;
import quietband.response.travel.RandomMotion;
import quietband.spectrum.LogCurve;

/**
 * The tuning port's swing, three standard deviations over the whole profile plus the tones' peaks, within its range. Nothing is bounded
 * until a solution goes beyond; then each part gets its share of the range as cones of their own.
 */
public final class SwingBound {

    // the integral is a sum over a grid: a little is left
    private static final double AIM = 0.998;

    private final FilterUnknowns unknowns;
    private final double most;
    private final List<Row> rows = new ArrayList<>();

    /** A driven axis, or all together: rows whose squares add up to the variance, and the real and imaginary rows of each tone. */
    private static final class Row {

        private double[][] random = new double[0][];
        private final List<double[][]> tones = new ArrayList<>();
        private double[] share = new double[0];
    }

    public SwingBound(FilterUnknowns unknowns, ResidualTerms terms, Design design, Assembly assembly) {
        this.unknowns = unknowns;
        Cancellation c = design.cancellation().orElseThrow();
        double slope = Math.abs(c.tuning().slopePerV());
        this.most = AIM * slope * c.tuning().rangeV();
        if (slope == 0 || !Double.isFinite(c.tuning().rangeV())) {
            return;
        }
        boolean together = design.vibration().together();
        for (List<Axis> axes : together ? List.of(Axis.ALL) : Axis.ALL.stream().map(List::of).toList()) {
            Row row = new Row();
            random(row, axes, terms, design, assembly);
            for (Tone tone : design.vibration().tones()) {
                for (Axis axis : tone.axes()) {
                    if (axes.contains(axis)) {
                        double[][] pair = new double[2][unknowns.seen().length];
                        terms.at(tone.frequencyHz());
                        unknowns.at(tone.frequencyHz());
                        unknowns.rows(terms, axis.ordinal(), tone.peakG(), pair[0], pair[1]);
                        row.tones.add(pair);
                    }
                }
            }
            rows.add(row);
        }
    }

    private void random(Row row, List<Axis> axes, ResidualTerms terms, Design design, Assembly assembly) {
        TreeSet<Double> points = new TreeSet<>();
        for (Axis axis : axes) {
            design.vibration().drive(axis).map(LogCurve::frequencies).ifPresent(f -> Arrays.stream(f).forEach(points::add));
        }
        if (points.size() < 2) {
            return;
        }
        double[] grid = DesignGrid.of(design, assembly, points.first(), points.last());
        for (int n = 0; n < grid.length; n++) {
            points.add(grid[n]);
            if (n > 0) {
                points.add(Math.sqrt(grid[n] * grid[n - 1]));
            }
        }
        double[] f = points.stream().mapToDouble(Double::doubleValue).toArray();
        int size = unknowns.seen().length;
        NormalEquations moments = new NormalEquations(size);
        double[] re = new double[size];
        double[] im = new double[size];
        for (int n = 0; n < f.length; n++) {
            double df = (f[Math.min(n + 1, f.length - 1)] - f[Math.max(0, n - 1)]) / 2;
            terms.at(f[n]);
            unknowns.at(f[n]);
            for (Axis axis : axes) {
                double density = design.vibration().drive(axis).isPresent() ? design.vibration().drive(axis).get().at(f[n]) : 0;
                if (density > 0) {
                    unknowns.rows(terms, axis.ordinal(), RandomMotion.SIGMAS * Math.sqrt(density * df), re, im);
                    moments.add(re, 0);
                    moments.add(im, 0);
                }
            }
        }
        row.random = moments.factor();
    }

    /** Adds the cones of the rows that went beyond so far. */
    public void addTo(ConeProgram program) {
        int n = unknowns.seen().length;
        for (Row row : rows) {
            if (row.share.length > 0) {
                cone(program, row.random, row.share[0] * most, n);
                for (int t = 0; t < row.tones.size(); t++) {
                    cone(program, row.tones.get(t), row.share[t + 1] * most, n);
                }
            }
        }
    }

    private void cone(ConeProgram program, double[][] from, double room, int n) {
        if (from.length == 0 || room <= 0) {
            return;
        }
        double[][] g = new double[from.length + 1][n];
        for (int r = 0; r < from.length; r++) {
            for (int k = 0; k < n; k++) {
                g[r + 1][k] = from[r][k] / room;
            }
        }
        double[] bound = new double[g.length];
        bound[0] = 1;
        program.add(new SecondOrderCone(unknowns.seen(), g, bound));
    }

    /** The parts of a row's swing: random, then each tone, as fractional frequency. */
    private double[] parts(Row row, double[] x) {
        double[] parts = new double[row.tones.size() + 1];
        parts[0] = length(row.random, x);
        for (int t = 0; t < row.tones.size(); t++) {
            parts[t + 1] = length(row.tones.get(t), x);
        }
        return parts;
    }

    private double length(double[][] rows, double[] x) {
        int[] index = unknowns.seen();
        double sum = 0;
        for (double[] r : rows) {
            double s = 0;
            for (int k = 0; k < index.length; k++) {
                s += r[k] * x[index[k]];
            }
            sum += s * s;
        }
        return Math.sqrt(sum);
    }

    /** Bounds the rows in which a solution goes beyond; false when it does in none. */
    public boolean refine(double[] x) {
        boolean beyond = false;
        for (Row row : rows) {
            double[] parts = parts(row, x);
            double whole = Arrays.stream(parts).sum();
            if (whole > most * (1 + 5e-4)) {
                row.share = Arrays.stream(parts).map(p -> p / whole).toArray();
                beyond = true;
            }
        }
        return beyond;
    }

    /** Whether a solution stays within the range. */
    public boolean kept(double[] x) {
        return rows.stream().allMatch(row -> Arrays.stream(parts(row, x)).sum() <= most);
    }
}

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

    /** A driven axis, or all together: the sum whose root is the random part's swing, then each tone's; the share of the range each has. */
    private static final class Row {
        private final List<SquareRows> parts = new ArrayList<>();
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
            row.parts.add(new SquareRows(random(axes, terms, design, assembly), unknowns.seen()));
            for (Tone tone : design.vibration().tones()) {
                for (Axis axis : tone.axes()) {
                    if (axes.contains(axis)) {
                        double[][] pair = new double[2][unknowns.seen().length + 1];
                        unknowns.at(tone.frequencyHz());
                        unknowns.rows(terms.at(tone.frequencyHz()), axis.ordinal(), tone.peakG(), pair[0], pair[1]);
                        row.parts.add(new SquareRows(pair, unknowns.seen()));
                    }
                }
            }
            rows.add(row);
        }
    }

    private double[][] random(List<Axis> axes, ResidualTerms terms, Design design, Assembly assembly) {
        TreeSet<Double> points = new TreeSet<>();
        for (Axis axis : axes) {
            design.vibration().drive(axis).map(LogCurve::frequencies).ifPresent(f -> Arrays.stream(f).forEach(points::add));
        }
        if (points.size() < 2) {
            return new double[0][];
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
            ResidualTerms.At t = terms.at(f[n]);
            unknowns.at(f[n]);
            for (Axis axis : axes) {
                double density = design.vibration().drive(axis).isPresent() ? design.vibration().drive(axis).get().at(f[n]) : 0;
                if (density > 0) {
                    unknowns.rows(t, axis.ordinal(), RandomMotion.SIGMAS * Math.sqrt(density * df), re, im);
                    moments.add(re, 0);
                    moments.add(im, 0);
                }
            }
        }
        return moments.factor();
    }

    /** Adds the cones of the rows that went beyond so far. */
    public void addTo(ConeProgram program) {
        for (Row row : rows) {
            for (int k = 0; k < row.share.length; k++) {
                if (row.parts.get(k).rows().length > 0 && row.share[k] * most > 0) {
                    program.add(row.parts.get(k).within(row.share[k] * most));
                }
            }
        }
    }

    /** The parts of a row's swing as fractional frequency. */
    private static double[] parts(Row row, double[] x) {
        return row.parts.stream().mapToDouble(part -> Math.sqrt(part.at(x))).toArray();
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

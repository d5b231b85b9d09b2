package quietband.tuning;

import java.util.ArrayList;
import java.util.List;
import quietband.cancellation.FilterResponse;
import quietband.model.Axis;
import quietband.model.Design;
import quietband.model.DigitalFilter;
import quietband.model.Requirement;
import quietband.platform.Assembly;
import quietband.response.OwnGrid;
import quietband.response.ResidualLimit;

/**
 * The fullest stack's residual with a path in place of the model's.
 *
 * @param rows on the design's own grid over the band
 */
public record MeasuredResidual(List<Row> rows) {

    public MeasuredResidual {
        rows = List.copyOf(rows);
    }

    /**
     * One frequency.
     *
     * @param perG  |y_j| per axis, 1/g (length 3; not copied, do not modify)
     * @param limit per axis, 1/g; infinite without one (length 3; not copied, do not modify)
     */
    public record Row(double frequencyHz, double[] perG, double[] limit) { }

    /**
     * Where the residual is largest over its limit; over all without one.
     *
     * @param ratio to the limit; NaN without one
     */
    public record Worst(double frequencyHz, Axis axis, double perG, double ratio) { }

    /** With a measured path and digital filters for x, y and z at the design's sample rate. */
    public static MeasuredResidual of(Design design, MeasuredPath path, List<DigitalFilter> filters) {
        double rate = design.cancellation().orElseThrow().path().sampleRateHz();
        List<FilterResponse> responses = filters.stream().map(f -> new FilterResponse(f, rate)).toList();
        return of(design, path, (i, f, re, im) -> {
            re[i] = responses.get(i).at(f).getReal();
            im[i] = responses.get(i).at(f).getImaginary();
        });
    }

    /** Writes the response of a sensor's filter at f in Hz into its place in both arrays. */
    @FunctionalInterface
    interface Filters {
        void write(int sensor, double f, double[] re, double[] im);
    }

    static MeasuredResidual of(Design design, PathSource path, Filters filters) {
        Assembly assembly = design.platform().map(Assembly::new).orElse(null);
        ResidualTerms terms = new ResidualTerms(design, assembly, path);
        ResidualLimit limit = new ResidualLimit(design);
        Requirement r = design.requirement();
        List<Row> rows = new ArrayList<>();
        double[] re = new double[3];
        double[] im = new double[3];
        for (double f : OwnGrid.of(design, assembly, r.fromHz(), r.toHz())) {
            terms.at(f);
            double[] size = new double[3];
            double[] most = new double[3];
            for (int i = 0; i < 3; i++) {
                filters.write(i, f, re, im);
            }
            for (Axis axis : Axis.ALL) {
                size[axis.ordinal()] = Math.sqrt(Residuals.squared(terms, axis.ordinal(), re, im));
                most[axis.ordinal()] = limit.asked() ? limit.at(axis, f) : Double.POSITIVE_INFINITY;
            }
            rows.add(new Row(f, size, most));
        }
        return new MeasuredResidual(rows);
    }

    /** Where it is worst. */
    public Worst worst() {
        Worst worst = new Worst(Double.NaN, Axis.X, 0, Double.NaN);
        double most = -1;
        for (Row row : rows) {
            for (Axis axis : Axis.ALL) {
                int j = axis.ordinal();
                boolean asked = Double.isFinite(row.limit()[j]);
                double over = asked ? row.perG()[j] / row.limit()[j] : row.perG()[j];
                if (over > most) {
                    most = over;
                    worst = new Worst(row.frequencyHz(), axis, row.perG()[j], asked ? over : Double.NaN);
                }
            }
        }
        return worst;
    }
}

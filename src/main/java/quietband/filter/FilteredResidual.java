package quietband.filter;

import java.util.Arrays;
import java.util.List;
import java.util.TreeSet;
import java.util.function.DoubleFunction;
import java.util.stream.Collectors;
import org.hipparchus.complex.Complex;
import quietband.demand.Decibels;
import quietband.demand.ResidualDemand;
import quietband.demand.ResidualPoint;
import quietband.model.Cancellation;
import quietband.model.Design;
import quietband.model.DigitalFilter;
import quietband.model.Requirement;
import quietband.platform.Assembly;
import quietband.response.DesignGrid;
import quietband.spectrum.AdaptiveCurves;

/**
 * The fullest stack's residual with a path in place of the model's.
 *
 * @param rows on the design's own grid over the band, refined, with the worst point
 * @param demand what it is judged by
 */
public record FilteredResidual(List<Row> rows, ResidualDemand demand) {

    private static final double FOLLOW_DB = 0.1;

    public FilteredResidual {
        rows = List.copyOf(rows);
    }

    /**
     * One frequency.
     *
     * @param perG  |y_j| per axis, 1/g (length 3; not copied, do not modify)
     * @param worst of the axes, or the vector
     * @param ratio of that to its limit, or to 1 ppb/g when no limit is stated
     */
    public record Row(double frequencyHz, double[] perG, ResidualPoint worst, double ratio) { }

    /** With a measured path and digital filters for x, y and z at the design's sample rate. */
    public static FilteredResidual of(Design design, MeasuredPath path, List<DigitalFilter> filters) {
        return of(design, path, SensorFilters.of(filters, design.cancellation().orElseThrow().path().sampleRateHz()));
    }

    /** With analog networks for x, y and z in place of the digital filter, in the model's path. */
    public static FilteredResidual of(Design design, List<AnalogNetwork> networks) {
        return of(design, PathResponse.of(design), f -> networks.stream().map(n -> n.at(f)).toArray(Complex[]::new));
    }

    /** With the model's own path and digital filters. */
    public static FilteredResidual of(Design design) {
        Cancellation.Path own = design.cancellation().orElseThrow().path();
        return of(design, PathResponse.of(design), own.sampled() ? SensorFilters.of(own.filters(), own.sampleRateHz())
            : f -> new Complex[] {Complex.ONE, Complex.ONE, Complex.ONE});
    }

    static FilteredResidual of(Design design, PathResponse path, SensorFilters filters) {
        Assembly assembly = design.platform().map(Assembly::new).orElse(null);
        ResidualTerms terms = new ResidualTerms(design, assembly, path);
        ResidualDemand demand = new ResidualDemand(design);
        Requirement r = design.requirement();
        DoubleFunction<Row> row = f -> {
            double[] squared = terms.at(f).squared(filters.at(f));
            return new Row(f, Arrays.stream(squared).map(Math::sqrt).toArray(), demand.worst(f, squared), demand.ratio(f, squared));
        };
        AdaptiveCurves sweep = AdaptiveCurves.refined(DesignGrid.of(design, assembly, r.fromHz(), r.toHz()),
            f -> new double[] {Decibels.ofRatio(row.apply(f).ratio())}, FOLLOW_DB);
        TreeSet<Double> at = Arrays.stream(sweep.frequencies()).boxed().collect(Collectors.toCollection(TreeSet::new));
        at.add(sweep.maximum(0).frequencyHz());
        return new FilteredResidual(at.stream().map(row::apply).toList(), demand);
    }

    /** Where it is worst: over its limit, or at all when no limit is stated. */
    public ResidualPoint worst() {
        return rows.stream().reduce((a, b) -> b.ratio() > a.ratio() ? b : a).orElseThrow().worst();
    }
}

package quietband.filter;

import java.util.Arrays;
import java.util.List;
import java.util.TreeSet;
import java.util.function.Function;
import java.util.stream.Collectors;
import org.hipparchus.complex.Complex;
import quietband.cancellation.FilterResponse;
import quietband.demand.Decibels;
import quietband.demand.ResidualDemand;
import quietband.demand.ResidualPoint;
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
        double rate = design.cancellation().orElseThrow().path().sampleRateHz();
        List<FilterResponse> responses = filters.stream().map(f -> new FilterResponse(f, rate)).toList();
        return of(design, path, (i, f, re, im) -> {
            re[i] = responses.get(i).at(f).getReal();
            im[i] = responses.get(i).at(f).getImaginary();
        });
    }

    /** With analog networks for x, y and z in place of the digital filter, in the model's path. */
    public static FilteredResidual of(Design design, List<AnalogNetwork> networks) {
        return of(design, PathResponse.of(design), (i, f, re, im) -> {
            Complex at = networks.get(i).at(f);
            re[i] = at.getReal();
            im[i] = at.getImaginary();
        });
    }

    /** With the model's own path and digital filters. */
    public static FilteredResidual of(Design design) {
        List<DigitalFilter> filters = design.cancellation().orElseThrow().path().filters();
        double rate = design.cancellation().orElseThrow().path().sampleRateHz();
        if (rate == 0) {
            return of(design, PathResponse.of(design), (i, f, re, im) -> {
                re[i] = 1;
                im[i] = 0;
            });
        }
        List<FilterResponse> responses = filters.stream().map(f -> new FilterResponse(f, rate)).toList();
        return of(design, PathResponse.of(design), (i, f, re, im) -> {
            re[i] = responses.get(i).at(f).getReal();
            im[i] = responses.get(i).at(f).getImaginary();
        });
    }

    /** Writes the response of a sensor's filter at f in Hz into its place in both arrays. */
    @FunctionalInterface
    interface Filters {
        void write(int sensor, double f, double[] re, double[] im);
    }

    static FilteredResidual of(Design design, PathResponse path, Filters filters) {
        Assembly assembly = design.platform().map(Assembly::new).orElse(null);
        ResidualTerms terms = new ResidualTerms(design, assembly, path);
        ResidualDemand demand = new ResidualDemand(design);
        Requirement r = design.requirement();
        Function<Double, Row> row = f -> {
            terms.at(f);
            double[] re = new double[3];
            double[] im = new double[3];
            double[] squared = new double[3];
            for (int i = 0; i < 3; i++) {
                filters.write(i, f, re, im);
            }
            for (int j = 0; j < 3; j++) {
                squared[j] = ResidualFromTerms.squared(terms, j, re, im);
            }
            return new Row(f, Arrays.stream(squared).map(Math::sqrt).toArray(), demand.worst(f, squared), demand.ratio(f, squared));
        };
        AdaptiveCurves sweep = AdaptiveCurves.refined(DesignGrid.of(design, assembly, r.fromHz(), r.toHz()),
            f -> new double[] {Decibels.ofRatio(row.apply(f).ratio())}, FOLLOW_DB);
        TreeSet<Double> at = Arrays.stream(sweep.frequencies()).boxed().collect(Collectors.toCollection(TreeSet::new));
        at.add(sweep.maximum(0).frequencyHz());
        return new FilteredResidual(at.stream().map(row).toList(), demand);
    }

    /** Where it is worst: over its limit, or at all when no limit is stated. */
    public ResidualPoint worst() {
        return rows.stream().reduce((a, b) -> b.ratio() > a.ratio() ? b : a).orElseThrow().worst();
    }
}

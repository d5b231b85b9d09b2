package quietband.filter.fixedpoint;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.TreeSet;
import java.util.stream.DoubleStream;
import org.hipparchus.stat.StatUtils;
import quietband.cancellation.FilterResponse;
import quietband.model.DigitalFilter;
import quietband.spectrum.AdaptiveCurves;
import quietband.spectrum.LogGrid;

/** Largest gain and noise gain of a digital filter. */
public final class FilterPeaks {

    private static final int PER_TAP = 16;
    private static final double FOLLOW_DB = 0.05;

    private FilterPeaks() { }

    /** The largest gain from 0 Hz to half the sample rate, refined between grid points. */
    public static FoundFilters.Peak of(DigitalFilter filter, double sampleRateHz) {
        FilterResponse response = new FilterResponse(filter, sampleRateHz);
        double[] grid = grid(filter, sampleRateHz / 2);
        AdaptiveCurves sweep = AdaptiveCurves.refined(grid, f ->
            new double[] {20 * StrictMath.log10(Math.max(1e-12, response.at(f).norm()))},
            FOLLOW_DB);
        AdaptiveCurves.Extremum top = sweep.maximum(0);
        double rest = response.at(0).norm();
        double gain = StrictMath.pow(10, top.value() / 20);
        return rest >= gain ? new FoundFilters.Peak(rest, 0) : new FoundFilters.Peak(gain, top.frequencyHz());
    }

    /** Each of three filters. */
    public static List<FoundFilters.Peak> of(List<DigitalFilter> filters, double sampleRateHz) {
        List<FoundFilters.Peak> peaks = new ArrayList<>();
        for (int i = 0; i < filters.size(); i++) {
            peaks.add(i > 0 && filters.get(i) == filters.get(i - 1) ? peaks.get(i - 1) : of(filters.get(i), sampleRateHz));
        }
        return peaks;
    }

    private static double[] grid(DigitalFilter filter, double half) {
        TreeSet<Double> f = new TreeSet<>();
        int count = PER_TAP * Math.max(8, filter.taps().length);
        for (int n = 1; n <= count; n++) {
            f.add(half * n / count);
        }
        for (double v : LogGrid.between(filter.sections().length > 0 ? 400 : 40, half * 1e-8, half)) {
            f.add(v);
        }
        return f.stream().mapToDouble(Double::doubleValue).toArray();
    }

    /** Mean of |F|^2 from 0 Hz to half the sample rate: what white noise is multiplied by in power. */
    public static double noiseGain(DigitalFilter filter) {
        if (filter.sections().length == 0) {
            return filter.taps().length == 0 ? 1 : StatUtils.sumSq(filter.taps());
        }
        FilterResponse response = new FilterResponse(filter, 2);
        double[] grid = grid(filter, 1);
        double[] low = new double[grid.length + 1];
        System.arraycopy(grid, 0, low, 1, grid.length);
        double sum = 0;
        for (int n = 1; n < low.length; n++) {
            double middle = (low[n - 1] + low[n]) / 2;
            double half = (low[n] - low[n - 1]) / 2;
            // two-point Gauss in every interval
            for (double side : new double[] {-1, 1}) {
                double m = response.at(middle + side * half / Math.sqrt(3)).norm();
                sum += half * m * m;
            }
        }
        return sum;
    }

    /** Largest magnitude among all coefficients of a filter; 0 for none. */
    public static double largest(DigitalFilter filter) {
        return DoubleStream.concat(Arrays.stream(filter.taps()), Arrays.stream(filter.sections()).flatMapToDouble(Arrays::stream))
            .map(Math::abs).max().orElse(0);
    }
}

package quietband.study.filter;

import java.util.List;
import java.util.Optional;
import quietband.cancellation.CancellationNoise;
import quietband.filter.FilterTask;
import quietband.filter.allowed.PolarityCheck;
import quietband.filter.design.FilterDesigner;
import quietband.filter.design.FilterFacts;
import quietband.filter.design.FilterResult;
import quietband.filter.design.FilteredModel;
import quietband.filter.fixedpoint.FilterPeaks;
import quietband.filter.fixedpoint.FixedDesign;
import quietband.filter.fixedpoint.FoundFilters;
import quietband.identification.shaker.TestPlan;
import quietband.model.Axis;
import quietband.model.Cancellation;
import quietband.model.Design;
import quietband.model.DigitalFilter;
import quietband.model.edit.ModelFile;
import quietband.oscillator.Sidebands;

/**
 * Digital filters for a model and all that is told of them.
 *
 * @param result   the filters and what they do to the fullest stack
 * @param facts    what is to be known beside the residual
 * @param changed  the model with the filters
 * @param sensors  the filter of each sensor, x, y, z
 * @param curves   over frequency
 * @param allowed  errors that each path may have
 * @param port     use of the tuning port
 * @param measured residual with the measured response it was designed for; empty for the model's own path
 * @param bench    how the sign of each sensor shows on a bench
 */
public record FilterDesign(FilterResult result, FilterFacts facts, ModelFile changed, List<SensorFilter> sensors, FilterCurves curves,
                           AllowedTable allowed, TuningPort port, Optional<ResidualChange> measured, List<BenchSign> bench) {

    public FilterDesign {
        sensors = List.copyOf(sensors);
        bench = List.copyOf(bench);
    }

    /**
     * The filter of a sensor.
     *
     * @param largest    coefficient, in size
     * @param noiseGain  mean of |F|^2 up to half the sample rate
     * @param peak       largest gain and where
     * @param weightPerG of the sensor, 1/g
     * @param voltsPerG  at the port that move the frequency as much as 1 g, V/g; NaN without a slope
     * @param countsPerG of the sensor's converter, 1/g; NaN without one
     */
    public record SensorFilter(Axis axis, double largest, double noiseGain, FoundFilters.Peak peak, double weightPerG, double voltsPerG,
                               double countsPerG) { }

    /**
     * What a sensor shaken along its axis by the rules of the test plan shows.
     *
     * @param weightPerG of the sensor, 1/g
     * @param startG   peak to begin with, g
     * @param peakG    peak, g
     * @param offDbc   sideband at the output with the cancellation off, dBc
     * @param onDbc    with the cancellation on
     * @param wrongDbc with this sensor's sign reversed
     */
    public record BenchSign(PolarityCheck check, double weightPerG, double startG, double peakG, double offDbc, double onDbc,
        double wrongDbc) { }

    /**
     * Designs the filters.
     *
     * @param bits word length in which the coefficients are rounded; empty for real ones
     */
    public static FilterDesign of(ModelFile file, FilterTask task, Optional<Integer> bits) {
        long start = System.nanoTime();
        FoundFilters found = FilterDesigner.design(task);
        double seconds = (System.nanoTime() - start) / 1e9;
        ModelFile changed = FilteredModel.of(file, found.filters());
        int needed = FixedDesign.needed(changed.design());
        Design free = changed.design();
        Optional<FixedDesign> fixed = bits.map(b -> FixedDesign.of(free, b));
        if (fixed.isPresent()) {
            found = FilterDesigner.rounded(task, found, fixed.get().rounded());
            changed = FilteredModel.of(file, found.filters());
        }
        FilterResult result = FilterResult.of(task, found, changed.design(), seconds);
        FilterFacts facts = FilterFacts.of(result, needed, fixed);
        return new FilterDesign(result, facts, changed, sensors(result), FilterCurves.of(result),
            AllowedTable.of(facts, task.grid()), TuningPort.of(changed.design()),
            task.measured().map(m -> ResidualChange.of(task.design(), m, result.found().filters())), bench(changed.design()));
    }

    private static List<SensorFilter> sensors(FilterResult result) {
        Design design = result.changed();
        Cancellation c = design.cancellation().orElseThrow();
        double slope = c.tuning().slopePerV();
        return Axis.ALL.stream().map(axis -> {
            int i = axis.ordinal();
            DigitalFilter filter = result.found().filters().get(i);
            double weight = design.weightsPerG().get(i);
            return new SensorFilter(axis, FilterPeaks.largest(filter), FilterPeaks.noiseGain(filter), result.found().peaks().get(i), weight,
                slope == 0 ? Double.NaN : weight / slope,
                c.path().converterBits() == 0 ? Double.NaN : 1 / CancellationNoise.quantiserStepG(c, i));
        }).toList();
    }

    private static List<BenchSign> bench(Design design) {
        double f0 = design.oscillator().outputHz();
        List<TestPlan.Step> steps = TestPlan.of(design, TestPlan.LEVEL_G, TestPlan.STROKE, f0).steps();
        double[] planned = steps.stream().mapToDouble(TestPlan.Step::frequencyHz).distinct().toArray();
        return PolarityCheck.of(design, planned).stream().map(p -> {
            TestPlan.Step step = steps.stream().filter(s -> s.axis() == p.axis() && s.frequencyHz() == p.frequencyHz()).findFirst()
                .orElseThrow();
            return new BenchSign(p, design.weightsPerG().get(p.axis().ordinal()), step.startG(), step.peakG(),
                sideband(p.offPerG(), step, f0), sideband(p.onPerG(), step, f0), sideband(p.wrongPerG(), step, f0));
        }).toList();
    }

    private static double sideband(double y, TestPlan.Step step, double f0) {
        return Sidebands.levelDbc(Sidebands.index(y, step.peakG(), f0, step.frequencyHz()));
    }
}

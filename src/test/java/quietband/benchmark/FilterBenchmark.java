package quietband.benchmark;

import java.util.Optional;
import java.util.concurrent.TimeUnit;
import org.openjdk.jmh.annotations.Benchmark;
import org.openjdk.jmh.annotations.BenchmarkMode;
import org.openjdk.jmh.annotations.Fork;
import org.openjdk.jmh.annotations.Measurement;
import org.openjdk.jmh.annotations.Mode;
import org.openjdk.jmh.annotations.OutputTimeUnit;
import org.openjdk.jmh.annotations.Scope;
import org.openjdk.jmh.annotations.State;
import org.openjdk.jmh.annotations.Warmup;
import quietband.filter.FilterForm;
import quietband.filter.FilterGoal;
import quietband.filter.FilterTask;
import quietband.filter.design.FilterDesigner;
import quietband.filter.fixedpoint.FoundFilters;
import quietband.model.Design;
import quietband.response.Models;
import quietband.spectrum.LogGrid;

/** Three filters of 64 taps on 2,000 frequencies of the main model, and of two sections. */
@State(Scope.Thread)
@BenchmarkMode(Mode.AverageTime)
@OutputTimeUnit(TimeUnit.MILLISECONDS)
@Fork(1)
@Warmup(iterations = 1, time = 3)
@Measurement(iterations = 5, time = 3)
public class FilterBenchmark {

    private final Design design = Models.shipped("ridge-relay.yaml");

    private FilterTask task(FilterForm form, int count, FilterGoal goal) {
        double[] grid = LogGrid.between(2000, design.requirement().fromHz(), design.requirement().toHz());
        return new FilterTask(design, form, count, goal, 10, grid, Optional.empty());
    }

    /** Least squares within the bound of gain. */
    @Benchmark
    public FoundFilters taps() {
        return FilterDesigner.design(task(FilterForm.TAPS, 64, FilterGoal.FLAT));
    }

    /** Least largest ratio to the limit. */
    @Benchmark
    public FoundFilters tapsToTheLimit() {
        return FilterDesigner.design(task(FilterForm.TAPS, 64, FilterGoal.LIMIT));
    }

    /** Two sections an axis: the search for poles included. */
    @Benchmark
    public FoundFilters sections() {
        return FilterDesigner.design(task(FilterForm.SECTIONS, 2, FilterGoal.FLAT));
    }
}

package quietband.filter.design;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.stream.IntStream;
import quietband.filter.FilterForm;
import quietband.filter.FilterGoal;
import quietband.filter.FilterTask;
import quietband.filter.NoiseTerms;
import quietband.filter.PathResponse;
import quietband.filter.ResidualTerms;
import quietband.filter.SensorFilters;
import quietband.filter.fixedpoint.FilterPeaks;
import quietband.filter.fixedpoint.FoundFilters;
import quietband.filter.goal.DesignGoal;
import quietband.filter.goal.FilterBasis;
import quietband.filter.goal.FilterUnknowns;
import quietband.filter.goal.FlatGoal;
import quietband.filter.goal.GainBound;
import quietband.filter.goal.LimitGoal;
import quietband.filter.goal.NoiseGoal;
import quietband.filter.goal.SwingBound;
import quietband.filter.sections.SectionBasis;
import quietband.filter.sections.SectionFactors;
import quietband.filter.sections.SectionPoles;
import quietband.filter.sections.SectionSearch;
import quietband.model.Cancellation;
import quietband.model.Design;
import quietband.model.DigitalFilter;
import quietband.platform.Assembly;
import quietband.response.DesignGrid;
import quietband.spectrum.LogGrid;

/** Designs the three sensor filters of a cancellation together, over all three housing axes. */
public final class FilterDesigner {

    private final FilterTask task;
    private final Design design;
    private final Assembly assembly;
    private final PathResponse path;
    private final double rate;
    private final boolean alone;

    private FilterDesigner(FilterTask task, boolean alone) {
        FilterChecks.check(task);
        this.task = task;
        this.design = task.design();
        this.assembly = design.platform().map(Assembly::new).orElse(null);
        this.path = task.path();
        this.rate = design.cancellation().orElseThrow().path().sampleRateHz();
        this.alone = alone;
    }

    /**
     * The filters for a task.
     *
     * @throws FilterException when the design or the task does not allow it
     */
    public static FoundFilters design(FilterTask task) {
        return new FilterDesigner(task, false).run();
    }

    /** What three designers would find who each look at one sensor and the same housing axis only. */
    public static FoundFilters alone(FilterTask task) {
        return new FilterDesigner(task, true).run();
    }

    /** What is found when the filters are rounded: norm and peaks of those. */
    public static FoundFilters rounded(FilterTask task, FoundFilters found, List<DigitalFilter> filters) {
        FilterDesigner d = new FilterDesigner(task, false);
        double norm = d.norm(new ResidualTerms(d.design, d.assembly, d.path), filters);
        return new FoundFilters(filters, norm, found.normUnbounded(), found.value(), found.relaxed(), FilterPeaks.of(filters, d.rate));
    }

    private FoundFilters run() {
        ResidualTerms terms = new ResidualTerms(design, assembly, path, alone);
        if (task.form() == FilterForm.TAPS) {
            List<FilterBasis> bases = Collections.nCopies(3, FilterBasis.of(FilterBasis.delays(rate), task.count(), bandGrid(
                task.count())));
            return run(terms, new FilterUnknowns(bases), List.of());
        }
        FoundFilters best = null;
        for (double[][] a : SectionSearch.denominators(task, terms, path, rate, task.ends())) {
            List<FilterBasis> bases = new ArrayList<>();
            for (double[] own : a) {
                SectionBasis basis = new SectionBasis(own);
                bases.add(FilterBasis.of(basis.at(rate), basis.size(), bandGrid(basis.size())));
            }
            FoundFilters found = run(terms, new FilterUnknowns(bases), List.of(a));
            best = best == null || found.value() < best.value() ? found : best;
        }
        return best;
    }

    private FoundFilters run(ResidualTerms terms, FilterUnknowns unknowns, List<double[]> denominators) {
        FlatGoal flat = task.goal() == FilterGoal.FLAT ? new FlatGoal(unknowns, terms, task.grid()) : null;
        DesignGoal goal = flat != null ? flat : goal(unknowns, terms);
        double[] corners = SectionPoles.corners(denominators, rate);
        GainBound bound = bound(unknowns, task.maxGain(), corners);
        double[] x;
        double relaxed = Double.NaN;
        double[] free = flat == null ? null : flat.unboundedFit();
        SwingBound swing = new SwingBound(unknowns, terms, design, assembly);
        if (free != null && bound.kept(free) && swing.kept(free)) {
            x = free;
        } else {
            x = new FilterSearch(unknowns, goal, bound, swing).run();
            if (flat == null && !bound.kept(x, 2e-3)) {
                relaxed = goal.value(new FilterSearch(unknowns, goal, bound(unknowns, 2 * task.maxGain(), corners),
                    swing).best());
            }
        }
        List<DigitalFilter> filters = filters(unknowns, x, denominators);
        ResidualTerms whole = alone ? new ResidualTerms(design, assembly, path) : terms;
        double norm = norm(whole, filters);
        double least = flat == null || alone || !denominators.isEmpty() ? Double.NaN : flat.unbounded();
        return new FoundFilters(filters, norm, least, goal.value(x), relaxed, FilterPeaks.of(filters, rate));
    }

    private GainBound bound(FilterUnknowns unknowns, double most, double[] corners) {
        return new GainBound(unknowns, rate, design.requirement().fromHz(), most, corners);
    }

    private double[] bandGrid(int unknowns) {
        double[] ends = task.ends();
        return task.goal() == FilterGoal.FLAT ? task.grid() : LogGrid.between(Math.max(400, unknowns), ends[0], ends[1]);
    }

    private DesignGoal goal(FilterUnknowns unknowns, ResidualTerms terms) {
        double[] ends = task.ends();
        // the new filter's own delay makes the residual wind: the grid must follow it
        int[] last = {task.form() == FilterForm.TAPS ? task.count() - 1 : 0};
        DigitalFilter longest = new DigitalFilter(last, new double[] {1}, new double[0][]);
        Cancellation c = design.cancellation().orElseThrow().withFilters(List.of(longest, longest, longest));
        double[] grid = DesignGrid.of(design.withCancellation(java.util.Optional.of(c)), assembly, ends[0], ends[1]);
        if (task.goal() == FilterGoal.LIMIT) {
            return new LimitGoal(unknowns, terms, design, grid);
        }
        return new NoiseGoal(unknowns, terms, new NoiseTerms(design, path, task.measured().isPresent()), grid, design.requirement());
    }

    private List<DigitalFilter> filters(FilterUnknowns unknowns, double[] x, List<double[]> denominators) {
        List<DigitalFilter> filters = new ArrayList<>();
        for (int i = 0; i < 3; i++) {
            double[] h = unknowns.basis(i).plain(unknowns.of(i, x));
            double middle = 2 * Math.PI * Math.sqrt(design.requirement().fromHz() * design.requirement().toHz()) / rate;
            filters.add(denominators.isEmpty() ? new DigitalFilter(IntStream.range(0, h.length).toArray(), h, new double[0][])
                : SectionFactors.of(new SectionBasis(denominators.get(i)).numerator(h), denominators.get(i), middle));
        }
        return filters;
    }

    /** Root of the sum of |y_j|^2 over the task's grid with the filters as they will be written. */
    private double norm(ResidualTerms terms, List<DigitalFilter> filters) {
        SensorFilters responses = SensorFilters.of(filters, rate);
        double sum = 0;
        for (double f : task.grid()) {
            double[] squared = terms.at(f).squared(responses.at(f));
            sum += squared[0] + squared[1] + squared[2];
        }
        return Math.sqrt(sum);
    }
}

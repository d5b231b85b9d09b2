package quietband.filter;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import java.util.Optional;
import org.hipparchus.complex.Complex;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import quietband.cancellation.FilterResponse;
import quietband.filter.design.FilterDesigner;
import quietband.filter.design.FilterResult;
import quietband.filter.fixedpoint.FixedPoint;
import quietband.filter.fixedpoint.FoundFilters;
import quietband.filter.sections.SectionBasis;
import quietband.filter.sections.SectionFactors;
import quietband.filter.sections.SectionPoles;
import quietband.model.Design;
import quietband.model.DigitalFilter;
import quietband.model.Stack;
import quietband.numerics.PolynomialRoots;
import quietband.response.Models;
import quietband.response.ResidualResponse;
import quietband.response.verdict.Assessor;
import quietband.spectrum.LogGrid;

/** Second-order sections: their factors, and what they reach beside taps. */
class SectionFilterTest {

    private static FilterTask task(FilterForm form, int count, FilterGoal goal) {
        Design design = Models.shipped("ridge-relay.yaml");
        return new FilterTask(design, form, count, goal, 10, LogGrid.between(100, 10, 2000), Optional.empty());
    }

    private static Design with(FilterTask task, FoundFilters found) {
        return task.design().withCancellation(task.design().cancellation().map(c -> c.withFilters(found.filters())));
    }

    @ParameterizedTest
    @CsvSource({"FLAT,3", "LIMIT,1", "NOISE,1"})
    void sections_are_stable_bounded_and_told_as_they_are(FilterGoal goal, int count) {
        FilterTask task = task(FilterForm.SECTIONS, count, goal);
        FoundFilters found = FilterDesigner.design(task);
        for (DigitalFilter f : found.filters()) {
            assertThat(f.sections()).hasDimensions(count, 5);
            assertThat(f.taps()).isEmpty();
            assertThat(FixedPoint.stable(f)).isTrue();
        }
        // between the points of the cones 0.02 %
        assertThat(found.peaks()).allMatch(p -> p.gain() <= 10 * (1 + 3e-3));
        assertThat(found.norm()).isCloseTo(norm(with(task, found), task.grid()), within(1e-9 * found.norm()));
    }

    private static double norm(Design design, double[] grid) {
        ResidualResponse response = new ResidualResponse(design);
        double[] re = new double[3];
        double[] im = new double[3];
        double sum = 0;
        for (double f : grid) {
            response.at(f);
            response.residual(Stack.COMBINED, re, im);
            for (int j = 0; j < 3; j++) {
                sum += re[j] * re[j] + im[j] * im[j];
            }
        }
        return Math.sqrt(sum);
    }

    @Test
    void they_are_no_worse_than_taps_of_as_many_coefficients() {
        FilterTask taps = task(FilterForm.TAPS, 5, FilterGoal.LIMIT);
        FilterTask sections = task(FilterForm.SECTIONS, 1, FilterGoal.LIMIT);
        double byTaps = FilterResult.worstRatio(FilterResult.fullest(Assessor.assess(with(taps, FilterDesigner.design(taps)))));
        double bySections = FilterResult.worstRatio(FilterResult.fullest(Assessor.assess(with(sections,
            FilterDesigner.design(sections)))));
        // a slow pole undoes the high pass, which no tap can: a quarter of the residual
        assertThat(bySections).isLessThan(byTaps / 2);
    }

    @Test
    void factors_multiply_to_what_they_were_split_from_though_poles_crowd_at_1() {
        double[] a = new SectionPoles(100_000, 0.01).denominators(new double[] {
            SectionPoles.real(0.5, 30)[0], SectionPoles.real(0.5, 30)[1], SectionPoles.resonance(90, 0.3)[0],
            SectionPoles.resonance(90, 0.3)[1], SectionPoles.real(400, 9000)[0], SectionPoles.real(400, 9000)[1]}, 0, 3);
        SectionBasis basis = new SectionBasis(a);
        double[] x = {1.3, -0.4, 0.2, 0.7, -0.1, 0.35, 2};
        DigitalFilter filter = SectionFactors.of(basis.numerator(x), a, 1e-2);
        FilterResponse response = new FilterResponse(filter, 1);
        double[] re = new double[7];
        double[] im = new double[7];
        for (double w : new double[] {1e-4, 6e-4, 5e-3, 0.1, 1, 3}) {
            basis.write(w, re, im);
            Complex whole = Complex.ZERO;
            for (int k = 0; k < 7; k++) {
                whole = whole.add(new Complex(re[k], im[k]).multiply(x[k]));
            }
            // coefficients are doubles: near 1 a section of magnitude 1e-8 is known to 1e-16 of 1
            assertThat(response.at(w / (2 * Math.PI)).subtract(whole).norm() / whole.norm()).isLessThan(1e-6);
        }
    }

    @Test
    void roots_many_orders_apart_are_found() {
        // (x - 1e-6)(x + 2e-3)((x - 1)^2 + 4)(x - 50)
        double[] q = {1};
        for (double[] factor : new double[][] {{-1e-6, 1}, {2e-3, 1}, {5, -2, 1}, {-50, 1}}) {
            double[] next = new double[q.length + factor.length - 1];
            for (int i = 0; i < q.length; i++) {
                for (int k = 0; k < factor.length; k++) {
                    next[i + k] += q[i] * factor[k];
                }
            }
            q = next;
        }
        List<Complex> roots = PolynomialRoots.of(q);
        for (Complex wanted : List.of(new Complex(1e-6), new Complex(-2e-3), new Complex(1, 2), new Complex(1, -2), new Complex(50))) {
            assertThat(roots.stream().mapToDouble(r -> r.subtract(wanted).norm() / wanted.norm()).min().orElseThrow()).isLessThan(1e-9);
        }
    }

    @Test
    void every_pair_of_poles_is_stable_whatever_its_numbers() {
        SectionPoles poles = new SectionPoles(48_000, 0.01);
        for (double w = -9; w < 20; w += 0.7) {
            for (double z = -5; z < 12; z += 0.6) {
                double[] row = {w, z};
                poles.clamp(row);
                double[] a = poles.denominators(row, 0, 1);
                assertThat(Math.abs(a[1])).isLessThan(1);
                assertThat(Math.abs(a[0])).isLessThan(1 + a[1]);
            }
        }
    }
}

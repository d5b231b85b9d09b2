package quietband.tolerance.influence;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.function.ToDoubleFunction;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import quietband.numerics.NormalCurve;

class SobolIndicesTest {

    private static SobolIndices.Estimate estimate(int inputs, int rows, ToDoubleFunction<double[]> ofUniforms) {
        List<int[]> groups = IntStream.range(0, inputs).mapToObj(i -> new int[] {i}).toList();
        // 99.9 % intervals: of the fourteen that are looked at below one misses in seventy seeds
        return SobolIndices.of(inputs, groups, rows, 0.999, 7, 2, () -> z -> {
            double[] u = new double[inputs];
            for (int i = 0; i < inputs; i++) {
                u[i] = NormalCurve.below(z[i]);
            }
            return ofUniforms.applyAsDouble(u);
        });
    }

    private static void inside(SobolIndices.Index index, double first, double total) {
        assertThat(first).isBetween(index.firstLow() - 1e-9, index.firstHigh() + 1e-9);
        assertThat(total).isBetween(index.totalLow() - 1e-9, index.totalHigh() + 1e-9);
        // and the interval is of some use
        assertThat(index.totalHigh() - index.totalLow()).isLessThan(0.12);
    }

    // System:  Ishigami, sin x1 + 7 sin^2 x2 + 0.1 x3^4 sin x1, inputs uniform on -pi to pi
    // Result:  first order .313905 .442411 0; total .557589 .442411 .243684
    // Ref:     formulas of Saltelli 2007 with its V13 corrected (read in check values)
    @Test
    void ishigami_lies_inside_the_intervals() {
        SobolIndices.Estimate e = estimate(3, 8192, u -> {
            double a = Math.PI * (2 * u[0] - 1);
            double b = Math.PI * (2 * u[1] - 1);
            double c = Math.PI * (2 * u[2] - 1);
            return Math.sin(a) + 7 * Math.pow(Math.sin(b), 2) + 0.1 * Math.pow(c, 4) * Math.sin(a);
        });
        inside(e.indices().get(0), 0.313905, 0.557589);
        inside(e.indices().get(1), 0.442411, 0.442411);
        inside(e.indices().get(2), 0, 0.243684);
    }

    // System:  Sobol's g, product of (|4 u - 2| + a)/(1 + a), a = 0 1 4.5 9 99 99 99 99
    // Result:  first order .716192 .179048 .0236758 .0071619; total .787144 .242198 .0343169 .0104604 (read, recomputed)
    @Test
    void sobols_g_lies_inside_the_intervals() {
        double[] a = {0, 1, 4.5, 9, 99, 99, 99, 99};
        SobolIndices.Estimate e = estimate(8, 8192, u -> {
            double g = 1;
            for (int i = 0; i < 8; i++) {
                g *= (Math.abs(4 * u[i] - 2) + a[i]) / (1 + a[i]);
            }
            return g;
        });
        inside(e.indices().get(0), 0.716192, 0.787144);
        inside(e.indices().get(1), 0.179048, 0.242198);
        inside(e.indices().get(2), 0.0236758, 0.0343169);
        inside(e.indices().get(3), 0.0071619, 0.0104604);
    }
}

package quietband.tolerance.kernel;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.nio.file.Path;
import java.util.Arrays;
import org.junit.jupiter.api.Test;
import quietband.model.Design;
import quietband.model.edit.ModelFile;

/** Integrals over frequency on nodes that are not evenly spaced. */
class BlockedGridTest {

    private static final Design DESIGN = ModelFile.read(Path.of("models/ridge-relay.yaml")).design();

    private static double sum(double[] weight, BlockedGrid nodes, java.util.function.DoubleUnaryOperator y) {
        double sum = 0;
        for (int i = 0; i < weight.length; i++) {
            sum += weight[i] * y.applyAsDouble(nodes.f[i]);
        }
        return sum;
    }

    // Result:  the integral of f^p from 20 to 500 Hz is (500^(p+1) - 20^(p+1))/(p+1)
    // Note:    steps of 0.05 to 0.1 in log f; a cubic's error is about (p+1)^4 h^4/700 of the integral, 2e-7 at p = 0.5
    @Test
    void powers_of_f_are_integrated_as_in_closed_form() {
        double[] f = new double[60];
        for (int i = 0; i < f.length; i++) {
            f[i] = 20 * Math.pow(25, (i + 0.3 * Math.sin(2.0 * i)) / 59);
        }
        f[0] = 20;
        f[59] = 500;
        Arrays.sort(f);
        BlockedGrid nodes = new BlockedGrid(f, DESIGN);
        for (double p : new double[] {-1.5, 0, 0.5}) {
            double exact = (Math.pow(500, p + 1) - Math.pow(20, p + 1)) / (p + 1);
            assertThat(sum(nodes.integral(20, 500), nodes, x -> Math.pow(x, p))).isCloseTo(exact, within(1e-6 * Math.abs(exact)));
        }
    }

    // Result:  the area under a peak of half-power width w in log f, by arc tangents of the ends
    // Note:    1e-4: seven nodes in the width, and what a cubic misses of it
    @Test
    void a_peak_in_log_f_is_integrated_as_in_closed_form() {
        double[] f = quietband.spectrum.LogGrid.between(120, 20, 500);
        BlockedGrid nodes = new BlockedGrid(f, DESIGN);
        double w = 0.2;
        double exact = w / 2 * (Math.atan(Math.log(500 / 90.0) / (w / 2)) - Math.atan(Math.log(20 / 90.0) / (w / 2)));
        // the integrand over d log f is the peak itself
        double found = sum(nodes.integral(20, 500), nodes, x -> 1 / x / (1 + Math.pow(Math.log(x / 90) / (w / 2), 2)));
        assertThat(found).isCloseTo(exact, within(1e-4 * exact));
    }

    @Test
    void nothing_outside_the_ends_counts() {
        BlockedGrid nodes = new BlockedGrid(new double[] {10, 20, 40, 80, 160}, DESIGN);
        double[] w = nodes.integral(20, 80);
        assertThat(sum(w, nodes, x -> 1)).isCloseTo(60, within(0.5));
        assertThat(Arrays.stream(nodes.integral(200, 300)).sum()).isZero();
    }
}

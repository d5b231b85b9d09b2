package quietband.motion.platform;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import java.util.Random;
import org.hipparchus.complex.Complex;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import quietband.model.Design;
import quietband.model.Vec;
import quietband.platform.Assembly;
import quietband.platform.BodyExtent;
import quietband.response.Models;

/** Parts of the platform's equations in time: constant loss, waves in springs, and the peak of a motion. */
class LossFitTest {

    private static Complex fitted(LossFit fit, double w) {
        Complex sum = new Complex(1 + fit.rest());
        for (int m = 0; m < fit.corners().length; m++) {
            sum = sum.add(new Complex(0, w * fit.branch(m)).divide(new Complex(fit.corners()[m], w)));
        }
        return sum;
    }

    @ParameterizedTest
    @ValueSource(doubles = {0.01, 0.1, 0.3})
    void a_fit_of_constant_loss_is_passive_and_says_what_it_misses(double eta) {
        LossFit fit = new LossFit(eta, 400, 1200, 12_000);
        assertThat(1 + fit.rest()).isPositive();
        double worst = 0;
        for (int i = 0; i <= 100; i++) {
            double w = 400 * Math.pow(3, i / 100.0);
            worst = Math.max(worst, fitted(fit, w).subtract(new Complex(1, eta)).norm() / Math.hypot(1, eta));
        }
        for (int m = 0; m < fit.corners().length; m++) {
            assertThat(fit.branch(m)).isNotNegative();
        }
        // the same 101 places; rounding
        assertThat(fit.worst(400, 1200)).isCloseTo(worst, within(1e-12));
        // loss eta stiffens by 2 eta/pi times the logarithm: over a factor of 3, up or down from the middle, 0.35 eta and no better
        assertThat(worst).isBetween(0.15 * eta, 0.4 * eta);
        // the lossy part alone is met within a third where the platform's own resonances are
        for (double w : new double[] {400, 700, 1200}) {
            assertThat(fitted(fit, w).getImaginary()).isCloseTo(eta, within(eta / 3));
        }
    }

    // D of a massive spring: k* b cot b = k* - w^2 m/3 - w^4 m sum A_n/(omega_n^2 (1 + j eta) - w^2); the carried part likewise
    // Note:    2e-5 of the line over the band is what the expansion promises
    @ParameterizedTest
    @CsvSource({"0, 20", "0.1, 700", "0.1, 1500", "0.02, 2900"})
    void waves_in_a_spring_add_up_to_the_cotangent(double eta, double f) {
        double k = 15e3;
        double m = 0.004;
        Design d = Models.of(Models.oscillator("")
            + Models.platform("stiffness: {x: 15 N/mm, y: 0 N/mm, z: 0 N/mm}, mass: 4 g, loss_factor: " + eta, "")
                .replace("}]}\n", "}, {at: [{x: 20 mm}, {x: -20 mm, y: 3 mm}, {y: 20 mm}], stiffness: 9 N/mm}]}\n"));
        LineModes modes = new LineModes(new Assembly(d.platform().orElseThrow()), 3000, false);
        assertThat(modes.error()).isLessThan(2.1e-5);
        double w = 2 * Math.PI * f;
        Complex stiff = new Complex(k, k * eta);
        Complex b = stiff.reciprocal().multiply(m).sqrt().multiply(w);
        Complex direct = stiff.subtract(m * w * w / 3);
        Complex carried = new Complex(m / 2);
        double[] first = modes.oscillators().get(0).row();
        for (LineModes.Oscillator o : modes.oscillators()) {
            if (o.row() == first) {
                Complex q = new Complex(o.omega2() - w * w, o.omega2() * o.loss()).reciprocal();
                direct = direct.subtract(q.multiply(m * Math.pow(w, 4) * o.platform() * o.platform()));
                carried = carried.add(q.multiply(m * w * w * o.platform() * o.housing()));
            }
        }
        Complex exact = stiff.multiply(b).divide(b.tan());
        assertThat(direct.subtract(exact).norm()).isLessThan(3e-5 * (exact.norm() + m * w * w));
        // k b/sin b - k b cot b = k b tan(b/2) = w^2 m tan(b/2)/b
        Complex half = b.multiply(0.5).tan().divide(b).multiply(m);
        assertThat(carried.subtract(half).norm()).isLessThan(3e-5 * (half.norm() + m / 2));
    }

    @Test
    void a_matrix_of_low_rank_is_the_sum_of_as_few_rows() {
        Random random = new Random(7);
        double[] mass = new double[36];
        for (int i = 0; i < 6; i++) {
            mass[7 * i] = i < 3 ? 0.2 : 1e-4;
        }
        for (int rank = 1; rank <= 6; rank++) {
            double[] s = new double[36];
            for (int n = 0; n < rank; n++) {
                double[] row = random.doubles(6, -1, 1).toArray();
                for (int i = 3; i < 6; i++) {
                    row[i] *= 0.02;
                }
                for (int e = 0; e < 36; e++) {
                    s[e] += row[e / 6] * row[e % 6];
                }
            }
            List<double[]> rows = RankRows.of(s, mass);
            assertThat(rows).hasSize(rank);
            double[] sum = new double[36];
            rows.forEach(row -> java.util.Arrays.setAll(sum, e -> sum[e] + row[e / 6] * row[e % 6]));
            assertThat(sum).containsExactly(s, within(1e-12));
        }
    }

    // second road: every point at every instant, with a step so long that every instant is looked at
    @Test
    void the_largest_displacement_is_that_of_the_corner_that_rocks_most() {
        Design d = Models.of(Models.oscillator("") + Models.platform("stiffness: 20 N/mm", ", centre_of_gravity: {x: 4 mm, z: 3 mm}"));
        Assembly assembly = new Assembly(d.platform().orElseThrow());
        double step = 1e-4;
        PeakDisplacement peak = new PeakDisplacement(d.platform().orElseThrow(), assembly, step);
        int n = 200;
        double[][] seen = new double[6][n + 1];
        for (int i = 0; i < 6; i++) {
            for (int k = 0; k <= n; k++) {
                seen[i][k] = (i < 3 ? 1e-4 * (i + 1) : 0.02) * Math.sin(2 * Math.PI * 60 * k * step * (1 + 0.1 * i) + i);
            }
        }
        peak.note(seen, n);
        double[] most = new double[3];
        for (Vec p : BodyExtent.points(d.platform().orElseThrow())) {
            Vec r = assembly.fromCentre(p);
            for (int k = 0; k <= n; k++) {
                most[0] = Math.max(most[0], Math.abs(seen[0][k] + seen[4][k] * r.z() - seen[5][k] * r.y()));
                most[1] = Math.max(most[1], Math.abs(seen[1][k] + seen[5][k] * r.x() - seen[3][k] * r.z()));
                most[2] = Math.max(most[2], Math.abs(seen[2][k] + seen[3][k] * r.y() - seen[4][k] * r.x()));
            }
        }
        for (int i = 0; i < 3; i++) {
            assertThat(peak.peak().get(i)).isCloseTo(most[i], within(1e-12 * most[i]));
        }
        // more than a period in steps of 0.04 rad
        assertThat(peak.centre().x()).isCloseTo(1e-4, within(1e-7));
    }
}

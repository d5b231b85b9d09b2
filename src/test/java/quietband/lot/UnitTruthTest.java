package quietband.lot;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Optional;
import java.util.Random;
import org.hipparchus.special.Erf;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import quietband.model.text.ModelException;

/** What a unit really is behind its reading, the largest of three tied components, and lots with odd rows. */
class UnitTruthTest {

    private static double between(double mean, double sigma, double r) {
        double s = sigma * Math.sqrt(2);
        return (Erf.erf((r - mean) / s) - Erf.erf((-r - mean) / s)) / 2;
    }

    // independent components: the product of three error functions; 1e-11 is what the nodes promise
    @ParameterizedTest
    @ValueSource(doubles = {0.2, 0.7, 1.5, 4})
    void untied_components_are_within_by_the_product_of_their_shares(double r) {
        WorstAxisDistribution law = new WorstAxisDistribution(new double[] {0.3, -0.6, 0},
            new double[][] {{0.25, 0, 0}, {0, 0.09, 0}, {0, 0, 1.44}}, NormalQuadrature.FINE);
        double expected = between(0.3, 0.5, r) * between(-0.6, 0.3, r) * between(0, 1.2, r);
        assertThat(law.within(r)).isCloseTo(expected, within(1e-10));
        assertThat(law.within(0)).isZero();
        assertThat(law.within(-1)).isZero();
    }

    // second road: 400,000 draws through the square root of the covariance; three standard deviations of the count
    @Test
    void tied_components_agree_with_drawn_ones() {
        double[][] l = {{0.6, 0, 0}, {0.5, 0.4, 0}, {-0.3, 0.2, 0.5}};
        double[][] c = new double[3][3];
        for (int i = 0; i < 3; i++) {
            for (int j = 0; j < 3; j++) {
                for (int k = 0; k < 3; k++) {
                    c[i][j] += l[i][k] * l[j][k];
                }
            }
        }
        double[] mean = {0.2, -0.1, 0.3};
        Random random = new Random(17);
        int n = 400_000;
        int[] count = new int[3];
        double[] limit = {0.4, 0.8, 1.3};
        for (int u = 0; u < n; u++) {
            double a = random.nextGaussian();
            double b = random.nextGaussian();
            double d = random.nextGaussian();
            double most = Math.max(Math.abs(mean[0] + 0.6 * a), Math.max(Math.abs(mean[1] + 0.5 * a + 0.4 * b),
                Math.abs(mean[2] - 0.3 * a + 0.2 * b + 0.5 * d)));
            for (int k = 0; k < 3; k++) {
                count[k] += most <= limit[k] ? 1 : 0;
            }
        }
        WorstAxisDistribution law = new WorstAxisDistribution(mean, c, NormalQuadrature.FINE);
        for (int k = 0; k < 3; k++) {
            double share = law.within(limit[k]);
            assertThat(count[k] / (double) n).isCloseTo(share, within(3 * Math.sqrt(share * (1 - share) / n)));
        }
    }

    // a reading of 1.0 +- 0.3 from a lot of mean 0.4 and sigma 0.4: truth 0.4 + 0.16/0.25 x 0.6 = 0.784, variance 0.16 - 0.16^2/0.25
    // Note:    the quick nodes miss a few millionths
    @Test
    void a_lots_law_draws_a_reading_back_to_its_mean_by_bayes_rule() {
        ComponentDistribution law = new ComponentDistribution(50, new double[] {0.4, 0, -0.2},
            new double[][] {{0.16, 0, 0}, {0, 0.04, 0}, {0, 0, 0.09}});
        double[] reading = {1.0, 0.3, 0.1};
        double[] sigma = {0.3, 0.1, 0.2};
        double[] variance = {0.16, 0.04, 0.09};
        double[] mean = {0.4, 0, -0.2};
        for (double r : new double[] {0.5, 0.8, 1.1}) {
            double expected = 1;
            for (int i = 0; i < 3; i++) {
                double gain = variance[i] / (variance[i] + sigma[i] * sigma[i]);
                expected *= between(mean[i] + gain * (reading[i] - mean[i]), Math.sqrt(variance[i] * (1 - gain)), r);
            }
            assertThat(new UnitTruth(Optional.of(law), SortRule.By.AXIS).within(reading, sigma, r)).isCloseTo(expected, within(2e-5));
            double plain = between(1, 0.3, r) * between(0.3, 0.1, r) * between(0.1, 0.2, r);
            assertThat(new UnitTruth(Optional.empty(), SortRule.By.AXIS).within(reading, sigma, r)).isCloseTo(plain, within(2e-5));
        }
        // without any uncertainty the reading itself decides
        UnitTruth exact = new UnitTruth(Optional.empty(), SortRule.By.VECTOR);
        assertThat(exact.within(new double[] {0.3, 0.4, 1.2}, new double[3], 1.31)).isEqualTo(1);
        assertThat(exact.within(new double[] {0.3, 0.4, 1.2}, new double[3], 1.29)).isZero();
    }

    @Test
    void odd_rows_are_told_with_their_lines_and_the_rest_is_read(@TempDir Path directory) throws IOException {
        Path file = directory.resolve("lot.csv");
        Files.writeString(file, """
            \ufeff# a lot
            note,serial,x_ppb_per_g,y_ppb_per_g,z_ppb_per_g
            ok,A1,0.125,-2.5e-1,3
            ok,A2,1,2
            ok,,1,2,3
            ok,A3,soft,,4
            ok,A1,1,1,1
            ok,A4,-0.000000000000001,12345678901234567,.5
            """);
        MeasuredLot lot = LotReader.read(file);
        assertThat(lot.serials()).containsExactly("A1", "A1", "A4");
        assertThat(lot.lines()).containsExactly(3, 7, 8);
        assertThat(lot.valuePpbPerG()[0]).startsWith(0.125, 1, -1e-15);
        assertThat(lot.valuePpbPerG()[1]).startsWith(-0.25, 1, 1.2345678901234568e16);
        assertThat(lot.valuePpbPerG()[2]).startsWith(3, 1, 0.5);
        assertThat(lot.bad()).extracting(MeasuredLot.BadRow::line).containsExactly(4, 5, 6, 7);
        assertThat(lot.bad()).extracting(MeasuredLot.BadRow::reason).containsExactly("4 cells where the header has 5", "no serial",
            "x_ppb_per_g 'soft' is no finite number, y_ppb_per_g has no number", "serial 'A1' stands in line 3 already");
        assertThat(lot.withoutBad().serials()).containsExactly("A1", "A4");
        assertThat(lot.withSigma(0.1).sigmaPpbPerG().orElseThrow()[2]).containsOnly(0.1);
        // 0.125, -0.25 and 3: 3.013 as a vector, 3 on its worst axis
        assertThat(lot.value(0, SortRule.By.VECTOR)).isCloseTo(Math.sqrt(0.125 * 0.125 + 0.0625 + 9), within(1e-15));
        assertThat(lot.value(0, SortRule.By.AXIS)).isEqualTo(3);
        assertThat(lot.worstAxis(0)).isEqualTo(2);
        assertThat(lot.hash()).hasSize(64);
    }

    @Test
    void a_file_that_cannot_be_a_lot_is_refused(@TempDir Path directory) throws IOException {
        Path file = directory.resolve("lot.csv");
        assertThatThrownBy(() -> LotReader.read(file)).isInstanceOf(ModelException.class).hasMessageContaining("there is no such file");
        Files.writeString(file, "serial,x_ppb_per_g,y_ppb_per_g\n");
        assertThatThrownBy(() -> LotReader.read(file)).hasMessageContaining("column z_ppb_per_g is missing; the header has serial,");
        Files.writeString(file, "serial,x_ppb_per_g,x_ppb_per_g,y_ppb_per_g,z_ppb_per_g\n");
        assertThatThrownBy(() -> LotReader.read(file)).hasMessageContaining("column x_ppb_per_g stands twice");
        Files.writeString(file, "serial,x_ppb_per_g,y_ppb_per_g,z_ppb_per_g,x_uncertainty_ppb_per_g\n");
        assertThatThrownBy(() -> LotReader.read(file)).hasMessageContaining("column y_uncertainty_ppb_per_g is missing");
        Files.writeString(file, "# nothing\n");
        assertThatThrownBy(() -> LotReader.read(file)).hasMessageContaining("is empty");
        Files.write(file, new byte[] {'s', (byte) 0xff, '\n'});
        assertThatThrownBy(() -> LotReader.read(file)).hasMessageContaining("is not UTF-8 text");
    }
}

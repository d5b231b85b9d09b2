package quietband.spectrum;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.SplittableRandom;
import org.assertj.core.data.Offset;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** The transform against its definition. */
class FftTest {

    @ParameterizedTest
    @ValueSource(ints = {4, 8, 64, 256})
    void it_is_the_sum_of_its_definition(int n) {
        SplittableRandom random = new SplittableRandom(n);
        double[] re = random.doubles(n).toArray();
        double[] im = random.doubles(n).toArray();
        double[] a = re.clone();
        double[] b = im.clone();
        new Fft(n).forward(a, b);
        for (int k = 0; k < n; k++) {
            double sumRe = 0;
            double sumIm = 0;
            for (int i = 0; i < n; i++) {
                double angle = -2 * Math.PI * i * k / n;
                sumRe += re[i] * Math.cos(angle) - im[i] * Math.sin(angle);
                sumIm += re[i] * Math.sin(angle) + im[i] * Math.cos(angle);
            }
            assertThat(a[k]).isCloseTo(sumRe, Offset.offset(1e-11));
            assertThat(b[k]).isCloseTo(sumIm, Offset.offset(1e-11));
        }
    }

    @Test
    void forth_and_back_multiplies_by_the_size() {
        double[] re = {1, 2, -3, 4, 0, 7, 5, -6};
        double[] im = {0, 1, 0, -1, 2, 2, 3, 1};
        double[] a = re.clone();
        double[] b = im.clone();
        Fft fft = new Fft(8);
        fft.forward(a, b);
        fft.backward(a, b);
        for (int i = 0; i < 8; i++) {
            assertThat(a[i]).isCloseTo(8 * re[i], Offset.offset(1e-13));
            assertThat(b[i]).isCloseTo(8 * im[i], Offset.offset(1e-13));
        }
    }
}

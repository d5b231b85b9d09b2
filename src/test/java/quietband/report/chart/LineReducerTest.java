package quietband.report.chart;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.Arrays;
import java.util.BitSet;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;

class LineReducerTest {

    private static final double[] X = IntStream.rangeClosed(0, 400).mapToDouble(i -> 1.5 * i).toArray();

    @Test
    void of_a_straight_line_only_the_ends_stay() {
        double[] y = Arrays.stream(X).map(x -> 3 - 0.25 * x).toArray();
        assertThat(LineReducer.kept(X, y, new BitSet(), 0.05).stream().toArray()).containsExactly(0, 400);
    }

    /** Chords of y = x^2/1000 over a width w leave it by w^2/4000, 0.05 px for 14 px: 43 of them over 600 px, twice that by halving. */
    @Test
    void a_curve_keeps_its_shape_within_the_tolerance() {
        double[] y = Arrays.stream(X).map(x -> x * x / 1000).toArray();
        int[] kept = LineReducer.kept(X, y, new BitSet(), 0.05).stream().toArray();
        assertThat(kept.length).isBetween(44, 87);
        for (int k = 1; k < kept.length; k++) {
            for (int i = kept[k - 1]; i <= kept[k]; i++) {
                double share = (X[i] - X[kept[k - 1]]) / (X[kept[k]] - X[kept[k - 1]]);
                assertThat(Math.abs(y[i] - y[kept[k - 1]] - share * (y[kept[k]] - y[kept[k - 1]]))).isLessThanOrEqualTo(0.05 + 1e-9);
            }
        }
    }

    @Test
    void peaks_gaps_and_wanted_points_stay() {
        double[] y = new double[X.length];
        y[77] = 1;
        y[200] = Double.NaN;
        BitSet wanted = new BitSet();
        wanted.set(300);
        assertThat(LineReducer.kept(X, y, wanted, 0.05).stream().toArray()).containsExactly(0, 76, 77, 78, 199, 200, 201, 300, 400);
    }

    @Test
    void short_lines_stay_as_they_are() {
        assertThat(LineReducer.kept(new double[0], new double[0], new BitSet(), 1).isEmpty()).isTrue();
        assertThat(LineReducer.kept(new double[] {1}, new double[] {2}, new BitSet(), 1).cardinality()).isOne();
        assertThat(LineReducer.kept(new double[] {1, 2}, new double[] {2, 9}, new BitSet(), 1).cardinality()).isEqualTo(2);
    }
}

package quietband.filter.fixedpoint;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import org.hipparchus.complex.Complex;
import quietband.cancellation.FilterResponse;
import quietband.model.DigitalFilter;

/**
 * A filter with whole numbers for coefficients and signals. A coefficient is integer / 2^shift. Signals are words of the same length whose
 * full scale is the sensor's range times 2^scale: behind every section scale is the least at which no input can overflow
 * (sum of the impulse response's magnitudes). Products are summed in full and rounded once behind every section.
 *
 * @param bits    word length, sign included
 * @param taps    the tap row; empty integers without taps
 * @param tapScale of the word behind the taps; 0 without taps
 * @param stages  the sections
 * @param rounded the filter that results
 */
public record FixedPoint(int bits, Row taps, int tapScale, List<Stage> stages, DigitalFilter rounded) {

    /** Longest word. */
    public static final int LONGEST = 40;
    /** Shortest word. */
    public static final int SHORTEST = 6;
    private static final int MOST_SAMPLES = 3_000_000;

    public FixedPoint {
        stages = List.copyOf(stages);
    }

    /** Integers over 2^shift. */
    public record Row(long[] integers, int shift) { }

    /**
     * One section in whole numbers.
     *
     * @param b     feed-forward; its shift counts the change of scale in
     * @param a     {a1, a2}
     * @param scale of the word behind it
     */
    public record Stage(Row b, Row a, int scale) { }

    /** A filter in whole numbers of a word length at which it is stable. */
    public static FixedPoint of(DigitalFilter filter, int bits) {
        DigitalFilter rounded = rounded(filter, bits);
        int[] scales = scales(rounded);
        List<Stage> stages = new ArrayList<>();
        double[][] given = filter.sections();
        for (int m = 0; m < given.length; m++) {
            Row b = row(Arrays.copyOf(given[m], 3), bits);
            Row a = row(Arrays.copyOfRange(given[m], 3, 5), bits);
            stages.add(new Stage(new Row(b.integers(), b.shift() + scales[m + 1] - scales[m]), a, scales[m + 1]));
        }
        Row taps = row(filter.taps(), bits);
        return new FixedPoint(bits, new Row(taps.integers(), taps.shift() + scales[0]), scales[0], stages, rounded);
    }

    /** The filter whose coefficients are whole numbers of a word length over powers of 2; it may be unstable. */
    static DigitalFilter rounded(DigitalFilter filter, int bits) {
        double[][] sections = filter.sections();
        for (double[] s : sections) {
            double[] b = values(row(Arrays.copyOf(s, 3), bits));
            double[] a = values(row(Arrays.copyOfRange(s, 3, 5), bits));
            System.arraycopy(b, 0, s, 0, 3);
            System.arraycopy(a, 0, s, 3, 2);
        }
        return new DigitalFilter(filter.tapIndex(), values(row(filter.taps(), bits)), sections);
    }

    private static double[] values(Row row) {
        return Arrays.stream(row.integers()).mapToDouble(k -> Math.scalb((double) k, -row.shift())).toArray();
    }

    /** Whole numbers that use the word as far as it goes. */
    private static Row row(double[] c, int bits) {
        double most = Arrays.stream(c).map(Math::abs).max().orElse(0);
        double full = Math.scalb(1.0, bits - 1) - 1;
        int shift = most == 0 ? 0 : Math.getExponent(full / most);
        shift = Math.min(shift, 60);
        if (Math.rint(Math.scalb(most, shift + 1)) <= full && most > 0 && shift < 60) {
            shift++;
        }
        int by = shift;
        long[] integers = Arrays.stream(c).mapToLong(v -> (long) Math.rint(Math.scalb(v, by))).toArray();
        return new Row(integers, shift);
    }

    /** Whether all poles lie inside the unit circle. */
    public static boolean stable(DigitalFilter filter) {
        return Arrays.stream(filter.sections()).allMatch(s -> Math.abs(s[4]) < 1 && Math.abs(s[3]) < 1 + s[4]);
    }

    /** log2, rounded up, of the sum of magnitudes of the impulse response behind the taps and behind each section. */
    private static int[] scales(DigitalFilter filter) {
        double[][] s = filter.sections();
        double[] pulse = new double[Arrays.stream(filter.tapIndex()).max().orElse(0) + 1];
        pulse[0] = filter.taps().length == 0 ? 1 : 0;
        for (int k = 0; k < filter.taps().length; k++) {
            pulse[filter.tapIndex()[k]] += filter.taps()[k];
        }
        double[] sum = new double[s.length + 1];
        double[][] state = new double[s.length][2];
        double quiet = 0;
        for (int n = 0; n < MOST_SAMPLES; n++) {
            double x = n < pulse.length ? pulse[n] : 0;
            sum[0] += Math.abs(x);
            double before = quiet;
            quiet = 0;
            for (int m = 0; m < s.length; m++) {
                double y = s[m][0] * x + state[m][0];
                state[m][0] = s[m][1] * x - s[m][3] * y + state[m][1];
                state[m][1] = s[m][2] * x - s[m][4] * y;
                sum[m + 1] += Math.abs(y);
                quiet = Math.max(quiet, Math.abs(y) / sum[m + 1]);
                x = y;
            }
            if (n > pulse.length + 4 && quiet < 1e-12 && before < 1e-12) {
                break;
            }
        }
        int[] scales = new int[sum.length];
        for (int m = 0; m < sum.length; m++) {
            scales[m] = filter.taps().length == 0 && m == 0 || sum[m] == 0 ? 0 : (int) Math.ceil(Math.log(sum[m]) / Math.log(2));
        }
        return scales;
    }

    /**
     * Density of the rounding noise at the filter's output, g^2/Hz, one-sided: behind every section q^2/(6 fs) with the step q
     * of its word, fed back by its poles and shaped by the sections that follow.
     *
     * @param rangeG the sensor's range
     */
    public double noiseG2PerHz(double f, double rangeG, double sampleRateHz) {
        double sum = 0;
        double[][] s = rounded.sections();
        for (int m = -1; m < s.length; m++) {
            if (m < 0 && rounded.taps().length == 0) {
                continue;
            }
            double q = 2 * rangeG * Math.scalb(1.0, (m < 0 ? tapScale : stages.get(m).scale()) - bits);
            double[][] after = new double[s.length - Math.max(0, m)][];
            for (int k = Math.max(0, m); k < s.length; k++) {
                after[k - Math.max(0, m)] = k == m ? new double[] {1, 0, 0, s[k][3], s[k][4]} : s[k];
            }
            Complex h = new FilterResponse(new DigitalFilter(new int[0], new double[0], after), sampleRateHz).at(f);
            sum += h.norm() * h.norm() * q * q / (6 * sampleRateHz);
        }
        return sum;
    }

    /** Scale of the output: the last word is to be shifted left by it. */
    public int scale() {
        return stages.isEmpty() ? tapScale : stages.get(stages.size() - 1).scale();
    }
}

package quietband.model;

import java.util.Arrays;

/**
 * A digital filter of one axis: the sum of its taps (1 without taps) times the product of its second-order sections.
 * Coefficients follow y = b0 x + b1 x[-1] + b2 x[-2] - a1 y[-1] - a2 y[-2].
 */
public final class DigitalFilter {

    /** Passes everything. */
    public static final DigitalFilter NONE = new DigitalFilter(new int[0], new double[0], new double[0][]);

    private final int[] tapIndex;
    private final double[] tap;
    private final double[][] sections;

    /**
     * All arrays are copied.
     *
     * @param tapIndex delay of each tap in samples, at least 0
     * @param tap      coefficient b0 of each tap, same length
     * @param sections rows {b0, b1, b2, a1, a2}
     */
    public DigitalFilter(int[] tapIndex, double[] tap, double[][] sections) {
        if (tapIndex.length != tap.length || Arrays.stream(sections).anyMatch(s -> s.length != 5)) {
            throw new IllegalArgumentException("as many indices as taps; five coefficients a section");
        }
        this.tapIndex = tapIndex.clone();
        this.tap = tap.clone();
        this.sections = Arrays.stream(sections).map(double[]::clone).toArray(double[][]::new);
    }

    /** Delays of the taps in samples; a copy. */
    public int[] tapIndex() {
        return tapIndex.clone();
    }

    /** Coefficients of the taps; a copy. */
    public double[] taps() {
        return tap.clone();
    }

    /** Rows {b0, b1, b2, a1, a2}; a copy. */
    public double[][] sections() {
        return Arrays.stream(sections).map(double[]::clone).toArray(double[][]::new);
    }

    /** Whether it passes everything unchanged. */
    public boolean isNone() {
        return tap.length == 0 && sections.length == 0;
    }
}

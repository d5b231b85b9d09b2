package quietband.spectrum;

import java.util.Arrays;

/**
 * Takes every so many-th sample of several channels behind a linear-phase low pass (Kaiser window, 90 dB) whose delay is
 * taken out: output n belongs to input n times the factor. Ends are as if zeros stood before and after.
 */
public final class Decimator {

    private static final double BETA = 8.96;
    private static final double ATTENUATION = 90;
    private static final int CHUNK = 1024;

    /** Takes the outputs. */
    @FunctionalInterface
    public interface Sink {
        /** One output; the array (one number per channel) is reused. */
        void accept(long number, double[] values);
    }

    private final int factor;
    private final int half;
    private final double[] kernel;
    private final int reach;
    // channel, phase, number within the phase
    private final double[][][] line;
    private final double[][] out;
    private final double[] row;
    private final Sink sink;
    private int filled;
    private long number;

    /**
     * For a rate of 1 per sample.
     *
     * @param channels how many
     * @param factor   at least 1
     * @param pass     upper end of the pass band in cycles per input sample, below 0.5/factor; the stop band starts at
     *                 1/factor - pass, so that what folds lies above the pass band
     */
    public Decimator(int channels, int factor, double pass, Sink sink) {
        this.factor = factor;
        this.sink = sink;
        double stop = Math.min(0.5, 1.0 / factor - pass);
        if (factor > 1 && !(pass > 0 && stop > pass)) {
            throw new IllegalArgumentException("pass band of " + pass + " leaves no room for a factor of " + factor);
        }
        half = factor == 1 ? 0 : (int) Math.ceil((ATTENUATION - 7.95) / (2 * 2.285 * 2 * Math.PI * (stop - pass)));
        kernel = new double[2 * half + 1];
        double corner = (pass + stop) / 2;
        double sum = 0;
        for (int i = -half; i <= half; i++) {
            double x = half == 0 ? 0 : (double) i / (half + 1);
            double ideal = i == 0 ? 2 * corner : StrictMath.sin(2 * Math.PI * corner * i) / (Math.PI * i);
            kernel[i + half] = half == 0 ? 1 : ideal * bessel(BETA * Math.sqrt(1 - x * x));
            sum += kernel[i + half];
        }
        for (int i = 0; i < kernel.length; i++) {
            kernel[i] /= sum;
        }
        reach = (kernel.length + factor - 1) / factor;
        line = new double[channels][factor][CHUNK + 2 * reach + 2];
        out = new double[channels][CHUNK + reach + 2];
        row = new double[channels];
        filled = half;
    }

    private static double bessel(double x) {
        double term = 1;
        double sum = 1;
        for (int k = 1; term > 1e-17 * sum; k++) {
            term *= x * x / (4.0 * k * k);
            sum += term;
        }
        return sum;
    }

    /**
     * Takes n samples of every channel.
     *
     * @param samples one array per channel, read from 0 to n
     */
    public void push(double[][] samples, int n) {
        int at = 0;
        while (at < n) {
            int part = Math.min(n - at, CHUNK * factor - Math.max(0, filled - kernel.length));
            for (int c = 0; c < line.length; c++) {
                deal(samples[c], at, line[c], part);
            }
            filled += part;
            at += part;
            drain();
        }
    }

    /** Deals samples out to the phases in turn. */
    private void deal(double[] samples, int at, double[][] phases, int part) {
        for (int p = 0; p < factor; p++) {
            double[] v = phases[(filled + p) % factor];
            int to = (filled + p) / factor;
            for (int i = p; i < part; i += factor) {
                v[to++] = samples[at + i];
            }
        }
    }

    /** Gives the outputs whose inputs are not complete, zeros standing for what is missing. */
    public void finish() {
        push(new double[line.length][half], half);
    }

    /** Every output whose inputs are complete, all of them tap by tap so that inner loops run over neighbours. */
    private void drain() {
        int count = filled < kernel.length ? 0 : (filled - kernel.length) / factor + 1;
        if (count == 0) {
            return;
        }
        for (int c = 0; c < line.length; c++) {
            Arrays.fill(out[c], 0, count, 0);
            for (int i = 0; i < kernel.length; i++) {
                add(kernel[i], line[c][i % factor], i / factor, out[c], count);
            }
        }
        for (int m = 0; m < count; m++) {
            for (int c = 0; c < line.length; c++) {
                row[c] = out[c][m];
            }
            sink.accept(number++, row);
        }
        filled -= count * factor;
        for (double[][] phases : line) {
            for (double[] v : phases) {
                System.arraycopy(v, count, v, 0, filled / factor + 1);
            }
        }
    }

    private static void add(double tap, double[] v, int from, double[] into, int count) {
        for (int m = 0; m < count; m++) {
            into[m] += tap * v[from + m];
        }
    }
}

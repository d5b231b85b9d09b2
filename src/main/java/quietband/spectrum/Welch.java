package quietband.spectrum;

/**
 * One-sided densities and cross densities by Welch's method: Hann window, segments overlapping by half, periodograms averaged.
 * Source: P. D. Welch, IEEE Trans. Audio Electroacoust. 15 (1967) 70 (from memory). The density of a channel in unit^2/Hz integrates to
 * its mean square.
 */
public final class Welch {

    private final int size;
    private final double rate;
    private final Fft fft;
    private final double[] window;
    private final double[] re;
    private final double[] im;
    private final double power;
    private final int references;
    private final double[][] line;
    private final double[][] auto;
    private final double[][][] crossRe;
    private final double[][][] crossIm;
    private int filled;
    private int segments;

    /**
     * For several channels, the first of them references.
     *
     * @param channels   how many, references included
     * @param references cross densities are kept between each reference and every channel
     * @param size       samples of a segment, a power of two
     * @param rate       samples per second
     */
    public Welch(int channels, int references, int size, double rate) {
        this.size = size;
        this.rate = rate;
        this.references = references;
        fft = new Fft(size);
        window = new double[size];
        double sum = 0;
        for (int i = 0; i < size; i++) {
            window[i] = 0.5 - 0.5 * Math.cos(2 * Math.PI * i / size);
            sum += window[i] * window[i];
        }
        power = sum;
        re = new double[size];
        im = new double[size];
        line = new double[channels][size];
        auto = new double[channels][size / 2 + 1];
        crossRe = new double[references][channels][size / 2 + 1];
        crossIm = new double[references][channels][size / 2 + 1];
    }

    /** Takes one sample of every channel. */
    public void push(double[] values) {
        for (int c = 0; c < line.length; c++) {
            line[c][filled] = values[c];
        }
        if (++filled == size) {
            add();
            for (double[] v : line) {
                System.arraycopy(v, size / 2, v, 0, size / 2);
            }
            filled = size / 2;
        }
    }

    private void add() {
        double[][][] spectrum = new double[line.length][2][size / 2 + 1];
        for (int c = 0; c < line.length; c += 2) {
            pair(c, spectrum);
        }
        for (int c = 0; c < line.length; c++) {
            double[][] x = spectrum[c];
            for (int k = 0; k <= size / 2; k++) {
                auto[c][k] += x[0][k] * x[0][k] + x[1][k] * x[1][k];
            }
            for (int r = 0; r < references; r++) {
                cross(spectrum[r][0], spectrum[r][1], x[0], x[1], crossRe[r][c], crossIm[r][c]);
            }
        }
        segments++;
    }

    private static void cross(double[] pr, double[] pi, double[] re, double[] im, double[] sumRe, double[] sumIm) {
        for (int k = 0; k < pr.length; k++) {
            sumRe[k] += pr[k] * re[k] + pi[k] * im[k];
            sumIm[k] += pr[k] * im[k] - pi[k] * re[k];
        }
    }

    /** Two real channels in one complex transform: X = A + j B with A and B each mirrored. */
    private void pair(int c, double[][][] spectrum) {
        boolean two = c + 1 < line.length;
        for (int i = 0; i < size; i++) {
            re[i] = window[i] * line[c][i];
            im[i] = two ? window[i] * line[c + 1][i] : 0;
        }
        fft.forward(re, im);
        for (int k = 0; k <= size / 2; k++) {
            int m = (size - k) % size;
            spectrum[c][0][k] = (re[k] + re[m]) / 2;
            spectrum[c][1][k] = (im[k] - im[m]) / 2;
            if (two) {
                spectrum[c + 1][0][k] = (im[k] + im[m]) / 2;
                spectrum[c + 1][1][k] = (re[m] - re[k]) / 2;
            }
        }
    }

    /** Segments averaged so far. */
    public int segments() {
        return segments;
    }

    /**
     * Degrees of freedom of a density: twice the segments, less what the overlap of half repeats (correlation 1/6 between
     * the windows' powers of neighbours squared is 1/36).
     */
    public double degreesOfFreedom() {
        double n = segments;
        return n == 0 ? 0 : 2 * n / (1 + 2 * (n - 1) / n / 36);
    }

    /** Number of frequencies, k times the resolution from 0 to half the rate. */
    public int bins() {
        return size / 2 + 1;
    }

    /** Distance of the frequencies, Hz. */
    public double resolutionHz() {
        return rate / size;
    }

    /** One-sided density of a channel at a bin, unit^2/Hz. */
    public double density(int channel, int k) {
        return auto[channel][k] * scale(k);
    }

    private double scale(int k) {
        double sides = k == 0 || k == size / 2 ? 1 : 2;
        return segments == 0 ? 0 : sides / (power * rate * segments);
    }

    /** |H| = |S_rc|/S_rr: estimate of the response of a channel to a reference. */
    public double response(int reference, int channel, int k) {
        double size2 = Math.hypot(crossRe[reference][channel][k], crossIm[reference][channel][k]);
        return auto[reference][k] > 0 ? size2 / auto[reference][k] : Double.NaN;
    }

    /** Real part of H = S_rc/S_rr, the least-squares estimate of the response; NaN where the reference has no power. */
    public double responseRe(int reference, int channel, int k) {
        return auto[reference][k] > 0 ? crossRe[reference][channel][k] / auto[reference][k] : Double.NaN;
    }

    /** Imaginary part of H = S_rc/S_rr. */
    public double responseIm(int reference, int channel, int k) {
        return auto[reference][k] > 0 ? crossIm[reference][channel][k] / auto[reference][k] : Double.NaN;
    }

    /** Forgets the samples since the last segment: what follows does not follow on from them. */
    public void cut() {
        filled = 0;
    }

    /** Coherence |S_rc|^2/(S_rr S_cc), 0 to 1; NaN where either has no power. */
    public double coherence(int reference, int channel, int k) {
        double re = crossRe[reference][channel][k];
        double im = crossIm[reference][channel][k];
        double both = auto[reference][k] * auto[channel][k];
        return both > 0 ? Math.min(1, (re * re + im * im) / both) : Double.NaN;
    }
}

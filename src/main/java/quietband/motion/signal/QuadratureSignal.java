package quietband.motion.signal;

import quietband.spectrum.Fft;

/**
 * The quadrature h of a sequence u: every component exp(j theta k) of positive frequency multiplied by j, so that
 * cos(phase) u + sin(phase) h is u led by the phase at all frequencies alike. It needs the future: the kernel
 * -2/(pi n) on odd n reaches half its length both ways and is tapered by a Kaiser window, and the result comes that much later.
 * Convolution is by blocks (overlap and save).
 */
public final class QuadratureSignal {

    private final double beta;
    private final int reach;
    private final int size;
    private final Fft fft;
    private final double[] kernelRe;
    private final double[] kernelIm;
    private final double[] line;
    private int filled;

    /**
     * Builds the kernel.
     *
     * @param lowest lowest angle per sample that must be right, rad
     * @param share  largest share of the quadrature in the signal: the smaller, the shorter may the kernel be
     */
    public QuadratureSignal(double lowest, double share) {
        // Kaiser's rule: ripple of A dB for beta = 0.1102 (A - 8.7); the share's error is to be 3e-7 of the signal
        beta = Math.max(4, 0.1102 * (20 * Math.log10(share / 3e-7) - 8.7));
        reach = (int) Math.ceil(1.07 * beta / Math.max(lowest, 1e-5)) | 1;
        int n = 4096;
        while (n < 6L * reach) {
            n *= 2;
        }
        size = n;
        double[][] kernel = new double[2][size];
        for (int i = 1; i <= reach; i += 2) {
            double v = -2 / (Math.PI * i) * kaiser(beta, i / (reach + 1.0));
            kernel[0][i] = v;
            kernel[0][size - i] = -v;
        }
        fft = new Fft(size);
        fft.forward(kernel[0], kernel[1]);
        kernelRe = kernel[0];
        kernelIm = kernel[1];
        line = new double[size];
        filled = reach;
    }

    private static double kaiser(double beta, double x) {
        return bessel(beta * Math.sqrt(1 - x * x)) / bessel(beta);
    }

    /** Modified Bessel function I0 by its series. */
    private static double bessel(double x) {
        double term = 1;
        double sum = 1;
        for (int k = 1; term > 1e-17 * sum; k++) {
            term *= x * x / (4.0 * k * k);
            sum += term;
        }
        return sum;
    }

    /** How many samples of the future and of the past each result needs. */
    public int reach() {
        return reach;
    }

    /** Takes the next input; results that have become known are added to the end of {@code into}. */
    public void push(double u, SignalStream into) {
        line[filled++] = u;
        if (filled == size) {
            emit(size - 2 * reach, into);
        }
    }

    /** Gives the results that are still possible with what has been pushed, nothing following. */
    public void flush(SignalStream into) {
        int known = filled - 2 * reach;
        if (known > 0) {
            java.util.Arrays.fill(line, filled, size, 0);
            emit(known, into);
        }
    }

    private void emit(int count, SignalStream into) {
        double[][] work = {line.clone(), new double[size]};
        fft.forward(work[0], work[1]);
        for (int i = 0; i < size; i++) {
            double re = work[0][i] * kernelRe[i] - work[1][i] * kernelIm[i];
            work[1][i] = work[0][i] * kernelIm[i] + work[1][i] * kernelRe[i];
            work[0][i] = re;
        }
        fft.backward(work[0], work[1]);
        for (int i = 0; i < count; i++) {
            into.push(work[0][reach + i] / size);
        }
        System.arraycopy(line, count, line, 0, filled - count);
        filled -= count;
    }
}

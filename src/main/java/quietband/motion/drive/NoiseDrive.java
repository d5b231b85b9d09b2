package quietband.motion.drive;

import java.util.List;
import java.util.Optional;
import org.apache.commons.rng.UniformRandomProvider;
import org.apache.commons.rng.sampling.distribution.ZigguratSampler;
import org.apache.commons.rng.simple.RandomSource;
import quietband.motion.signal.BlockSignal;
import quietband.motion.signal.SignalStream;
import quietband.spectrum.Fft;
import quietband.spectrum.LogCurve;

/**
 * Stationary Gaussian acceleration with given one-sided densities: stretches of sinusoids with normal amplitudes at all multiples
 * of the stretch's own frequency, each fading into the next over an eighth of its length so that the powers add up to one. Values and
 * slopes are both exact.
 */
public final class NoiseDrive implements Drive {

    private final Stream[] axes = new Stream[3];

    /**
     * Noise.
     *
     * @param density per axis in g^2/Hz; empty where nothing moves
     * @param step    of the grid, s
     * @param size    points of a stretch, a power of two
     */
    public NoiseDrive(List<Optional<LogCurve>> density, double step, int size, long seed) {
        for (int i = 0; i < 3; i++) {
            if (density.get(i).isPresent()) {
                // key {seed, axis}: streams of different keys do not meet
                UniformRandomProvider random = RandomSource.PHILOX_4X64.create(new long[] {seed, 0x6e6f697365L + i, 0, 0, 0, 0});
                axes[i] = new Stream(density.get(i).get(), step, size, ZigguratSampler.NormalizedGaussian.of(random));
            }
        }
    }

    /** Points of a stretch that resolves a density from its lowest frequency on: at least 8 of its periods. */
    public static int size(double lowestHz, double step) {
        int n = 1 << 13;
        while (n < 1 << 18 && n * step < 8 / lowestHz) {
            n *= 2;
        }
        return n;
    }

    @Override
    public boolean[] used() {
        return new boolean[] {axes[0] != null, axes[1] != null, axes[2] != null};
    }

    @Override
    public void fill(long step, int n, BlockSignal[] into) {
        for (int i = 0; i < 3; i++) {
            if (axes[i] != null) {
                axes[i].fill(step, n, into[i]);
            }
        }
    }

    /** One axis. */
    private static final class Stream {

        private final ZigguratSampler.NormalizedGaussian normal;
        private final double[] amplitude;
        private final double turn;
        private final int size;
        private final Fft fft;
        private final SignalStream value = new SignalStream();
        private final SignalStream slope = new SignalStream();
        private final double[] taper;
        private double[][] last;

        Stream(LogCurve density, double step, int size, ZigguratSampler.NormalizedGaussian normal) {
            this.normal = normal;
            this.size = size;
            fft = new Fft(size);
            double df = 1 / (size * step);
            turn = 2 * Math.PI / size;
            amplitude = new double[size / 2];
            taper = new double[size / 4];
            for (int i = 0; i < taper.length; i++) {
                taper[i] = Math.sin(Math.PI * i / taper.length);
            }
            for (int k = 1; k < size / 2; k++) {
                amplitude[k] = Math.sqrt(density.at(k * df) * df);
            }
            last = stretch();
        }

        /** Values and slopes of the next stretch, without its window: the real and imaginary part of one transform. */
        private double[][] stretch() {
            double[][] z = new double[2][size];
            for (int k = 1; k < amplitude.length; k++) {
                if (amplitude[k] > 0) {
                    double re = amplitude[k] * normal.sample() / 2;
                    double im = amplitude[k] * normal.sample() / 2;
                    // slope: j k turn (re + j im); both real, so the pair is X + j X' with its mirror conj(X) + j conj(X')
                    double dRe = -k * turn * im;
                    double dIm = k * turn * re;
                    z[0][k] = re - dIm;
                    z[1][k] = im + dRe;
                    z[0][size - k] = re + dIm;
                    z[1][size - k] = -im + dRe;
                }
            }
            fft.backward(z[0], z[1]);
            return z;
        }

        /** The next stretch fades in over an eighth of its length while the last one fades out. */
        private void hop() {
            double[][] next = stretch();
            int fade = taper.length / 2;
            int hop = size - fade;
            double[] v = next[0].clone();
            double[] d = next[1].clone();
            double rate = Math.PI / (2 * fade);
            for (int i = 0; i < fade; i++) {
                double down = taper[fade + i];
                double up = taper[i];
                v[i] = down * last[0][hop + i] + up * next[0][i];
                d[i] = down * last[1][hop + i] + up * next[1][i] - rate * up * last[0][hop + i] + rate * down * next[0][i];
            }
            value.push(v, hop);
            slope.push(d, hop);
            last = next;
        }

        void fill(long step, int n, BlockSignal into) {
            while (value.end() <= step + n) {
                hop();
            }
            value.copy(step, n + 1, into.value);
            slope.copy(step, n + 1, into.slope);
            value.dropBefore(step);
            slope.dropBefore(step);
        }
    }
}

package quietband.tolerance.draw;

import org.apache.commons.rng.UniformRandomProvider;
import org.apache.commons.rng.core.source64.Philox4x64;
import org.apache.commons.rng.sampling.distribution.ZigguratSampler;

/**
 * Random numbers that depend on nothing but seed, purpose and index: one counter-based Philox 4x64 stream each, told apart by
 * its key, so that no two overlap and any can be had without those before it.
 */
public final class UnitStream {

    /** What numbers are for. */
    public enum Purpose { UNIT, FIRST_MATRIX, SECOND_MATRIX, BOOTSTRAP, SCREEN, DIRECTION }

    private UnitStream() { }

    /** A stream; attempt counts from 0. */
    public static UniformRandomProvider of(long seed, Purpose purpose, int attempt, long index) {
        long key = mix(seed) ^ mix(0x5851F42D4C957F2DL + purpose.ordinal() + 1024L * attempt);
        return new Philox4x64(new long[] {key, index, 0, 0, 0, 0});
    }

    /** Fills an array with standard normals. */
    public static void normals(long seed, Purpose purpose, int attempt, long index, double[] z) {
        ZigguratSampler.NormalizedGaussian sampler = ZigguratSampler.NormalizedGaussian.of(of(seed, purpose, attempt, index));
        for (int i = 0; i < z.length; i++) {
            z[i] = sampler.sample();
        }
    }

    /** Spreads the bits of a number; the finaliser of SplitMix64. */
    private static long mix(long x) {
        long z = x + 0x9E3779B97F4A7C15L;
        z = (z ^ (z >>> 30)) * 0xBF58476D1CE4E5B9L;
        z = (z ^ (z >>> 27)) * 0x94D049BB133111EBL;
        return z ^ (z >>> 31);
    }
}

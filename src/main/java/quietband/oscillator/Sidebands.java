package quietband.oscillator;

import org.hipparchus.analysis.solvers.BrentSolver;
import org.hipparchus.special.BesselJ;

/**
 * From fractional frequency to sidebands and phase noise. A vibration of peak A g at f on a sensitivity |y| per g shifts
 * the carrier f0 by |y| A f0 peak, a phase excursion beta = |y| A f0/f.
 * Source: R. L. Filler, IEEE Trans. UFFC 35(3) 297-305 (1988) (from memory).
 */
public final class Sidebands {

    /** Above this modulation index the exact Bessel ratio is used, rad. */
    public static final double SMALL_INDEX = 0.1;

    private static final double SINUSOIDS = 5000;

    private Sidebands() { }

    /**
     * Modulation index beta = |y| A f0/f in rad.
     *
     * @param sensitivityPerG |y| along the vibration, 1/g
     * @param peakG           peak (not rms) acceleration, g
     * @param carrierHz       frequency at which the sideband is looked at, Hz
     * @param vibrationHz     vibration frequency, Hz, above 0
     */
    public static double index(double sensitivityPerG, double peakG, double carrierHz, double vibrationHz) {
        return Math.abs(sensitivityPerG) * peakG * carrierHz / vibrationHz;
    }

    /**
     * Level of each first-order sideband over the carrier, dBc: 20 log10(beta/2) up to an index of 0.1, above it
     * 20 log10 |J1(beta)/J0(beta)|. Minus infinity for an index of 0; very large near a null of the carrier.
     */
    public static double levelDbc(double index) {
        if (index <= SMALL_INDEX) {
            return 20 * StrictMath.log10(index / 2);
        }
        return exactLevelDbc(index);
    }

    /**
     * 20 log10 |J1(beta)/J0(beta)|, dBc, for any index above 0. Where the functions are nothing but sinusoids, it is
     * 20 log10 |tan(beta - pi/4)|: of what stands there, far beyond any sideband of use, only the size means something.
     */
    public static double exactLevelDbc(double index) {
        if (index > SINUSOIDS) {
            return Double.isInfinite(index) ? Double.POSITIVE_INFINITY
                : 20 * StrictMath.log10(Math.abs(StrictMath.tan(index - Math.PI / 4)));
        }
        return 20 * StrictMath.log10(Math.abs(BesselJ.value(1, index) / BesselJ.value(0, index)));
    }

    /** Index at which the carrier vanishes: the first zero of J0. */
    public static final double CARRIER_NULL = 2.404825557695773;

    /**
     * The inverse of {@link #levelDbc}: the modulation index below the carrier's first null that makes a sideband level,
     * 2 10^(L/20) up to an index of 0.1, above it the root of J1/J0 (which rises from 0 to infinity there).
     *
     * @param levelDbc of one first-order sideband over the carrier, dBc; finite
     * @return in rad, 0 to {@link #CARRIER_NULL}
     */
    public static double indexOf(double levelDbc) {
        double small = 2 * StrictMath.pow(10, levelDbc / 20);
        if (small <= SMALL_INDEX) {
            return small;
        }
        // J1 - r J0 rises from -r to J1 at the null
        return new BrentSolver(1e-15, 1e-15).solve(200, b -> BesselJ.value(1, b) - small / 2 * BesselJ.value(0, b), 0, CARRIER_NULL);
    }

    /**
     * Single-sideband phase noise as a power ratio per Hz, L = S_phi/2 = f0^2/(2 f^2) S_y (S_phi = (f0/f)^2 S_y, one-sided).
     *
     * @param frequencyDensity S_y, one-sided density of fractional frequency, 1/Hz
     * @param carrierHz        f0, Hz
     * @param offsetHz         f, Hz, above 0
     */
    public static double phaseNoise(double frequencyDensity, double carrierHz, double offsetHz) {
        double n = carrierHz / offsetHz;
        return n * n / 2 * frequencyDensity;
    }

    /**
     * Phase jitter sqrt(2 integral of L df), rad rms: S_phi = 2 L (IEEE Std 1139).
     *
     * @param integral of phase noise as a power ratio per Hz over the offsets of one side; not negative
     */
    public static double jitterRad(double integral) {
        return Math.sqrt(2 * integral);
    }

    /** The inverse: the one-sided density of fractional frequency that makes a phase noise (power ratio per Hz). */
    public static double frequencyDensity(double phaseNoise, double carrierHz, double offsetHz) {
        double n = carrierHz / offsetHz;
        return 2 * phaseNoise / (n * n);
    }
}

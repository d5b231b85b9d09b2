package quietband.vibration;

import quietband.spectrum.LogCurve;

/** Overall figures of a one-sided acceleration density. */
public final class Profile {

    private Profile() { }

    /** Overall rms acceleration in g: the root of the integral of the density (g^2/Hz) over all of the profile. */
    public static double rmsG(LogCurve density) {
        double[] f = density.frequencies();
        return Math.sqrt(density.integral(f[0], f[f.length - 1]));
    }

    /** A level in dB as a factor on a density: 10^(dB/10). */
    public static double densityFactor(double levelDb) {
        return StrictMath.pow(10, levelDb / 10);
    }
}

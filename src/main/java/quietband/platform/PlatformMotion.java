package quietband.platform;

import quietband.model.Vec;

/**
 * How the platform moves for a unit translation of the housing at one frequency: A (absolute acceleration of the six
 * coordinates per unit housing acceleration) and R (displacement relative to the housing per unit housing acceleration,
 * s^2). One object serves one thread.
 */
public final class PlatformMotion {

    private final Assembly assembly;
    private final DynamicStiffness stiffness;
    private final double[] lRe = new double[36];
    private final double[] lIm = new double[36];
    private final double[] rRe = new double[18];
    private final double[] rIm = new double[18];
    private double w = Double.NaN;

    /** For one thread. */
    public PlatformMotion(Assembly assembly) {
        this.assembly = assembly;
        this.stiffness = new DynamicStiffness(assembly);
    }

    /**
     * Solves at a frequency in Hz, above 0: R = -D^-1 N. An undamped resonance hit to the last bit is
     * stepped aside by some 1e-14 of the frequency.
     *
     * @throws ArithmeticException when the figures overflow
     */
    public void at(double frequencyHz) {
        w = 2 * Math.PI * frequencyHz;
        double aside = 0;
        for (int i = 0; i < 8; i++) {
            if (solve(w * (1 + aside))) {
                return;
            }
            aside = aside == 0 ? 1e-14 : 4 * aside;
        }
        throw new ArithmeticException("the platform's equations cannot be solved at " + frequencyHz
            + " Hz: some mass or stiffness is out of any physical range");
    }

    private boolean solve(double omega) {
        stiffness.at(omega);
        System.arraycopy(stiffness.dRe(), 0, lRe, 0, 36);
        System.arraycopy(stiffness.dIm(), 0, lIm, 0, 36);
        for (int i = 0; i < 18; i++) {
            rRe[i] = -stiffness.nRe()[i];
            rIm[i] = -stiffness.nIm()[i];
        }
        return ComplexSolver.solve(6, lRe, lIm, 3, rRe, rIm) && finite(rRe) && finite(rIm);
    }

    private static boolean finite(double[] values) {
        double sum = 0;
        for (double v : values) {
            sum += v;
        }
        return Double.isFinite(sum);
    }

    /** Real part of R for coordinate i (0 to 5) and drive j (0 to 2). */
    public double relativeRe(int i, int j) {
        return rRe[3 * i + j];
    }

    /** Imaginary part of R. */
    public double relativeIm(int i, int j) {
        return rIm[3 * i + j];
    }

    /**
     * Writes B(p) A, the absolute acceleration of a point per unit housing acceleration: 3 x 3 row by row (length 9,
     * both modified); row: component, column: drive.
     *
     * @param position of the point from the origin, m
     */
    public void accelerationOf(Vec position, double[] re, double[] im) {
        displacementOf(position, re, im);
        double w2 = w * w;
        for (int i = 0; i < 9; i++) {
            re[i] = (i % 4 == 0 ? 1 : 0) - w2 * re[i];
            im[i] = -w2 * im[i];
        }
    }

    /** Writes B(p) R, the displacement of a point relative to the housing per unit housing acceleration; as above. */
    public void displacementOf(Vec position, double[] re, double[] im) {
        double[] b = PointMotion.of(assembly.fromCentre(position));
        for (int i = 0; i < 3; i++) {
            for (int j = 0; j < 3; j++) {
                double sumRe = 0;
                double sumIm = 0;
                for (int c = 0; c < 6; c++) {
                    sumRe += b[6 * i + c] * rRe[3 * c + j];
                    sumIm += b[6 * i + c] * rIm[3 * c + j];
                }
                re[3 * i + j] = sumRe;
                im[3 * i + j] = sumIm;
            }
        }
    }
}

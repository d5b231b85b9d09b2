package quietband.response;

import quietband.spectrum.Magnitudes;

/** |sensed|^2 of the three sensors (rows 0 to 2) and |cancellation|^2 (row 3) per unit acceleration of each drive axis. */
public final class SwingTransfer {

    private final ResidualResponse response;
    private final boolean sprung;
    private final double[] re = new double[9];
    private final double[] im = new double[9];
    private final double[] correctionRe = new double[3];
    private final double[] correctionIm = new double[3];
    private final double[] power = new double[12];

    public SwingTransfer(ResidualResponse response, boolean sprung) {
        this.response = response;
        this.sprung = sprung;
    }

    /** At a frequency in Hz: row by row, a drive axis each (length 12); reused by the next call. */
    public double[] squared(double f) {
        response.at(f);
        response.sensed(sprung, re, im);
        response.correction(sprung, correctionRe, correctionIm);
        Magnitudes.squared(power, re, im, 9);
        System.arraycopy(Magnitudes.squared(correctionRe, correctionIm), 0, power, 9, 3);
        return power;
    }
}

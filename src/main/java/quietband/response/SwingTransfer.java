package quietband.response;

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
        for (int e = 0; e < 9; e++) {
            power[e] = re[e] * re[e] + im[e] * im[e];
        }
        for (int j = 0; j < 3; j++) {
            power[9 + j] = correctionRe[j] * correctionRe[j] + correctionIm[j] * correctionIm[j];
        }
        return power;
    }
}

package quietband.window.work;

import java.util.Optional;
import org.hipparchus.complex.Complex;
import quietband.cancellation.CancellationPath;
import quietband.filter.allowed.ErrorBounds;
import quietband.model.Design;
import quietband.response.FrequencyTable;
import quietband.response.verdict.Assessment;
import quietband.spectrum.LogGrid;

/**
 * What the cards of a role need beyond the verdict.
 *
 * @param table phase noise and causes over frequency
 * @param path  of the cancellation; empty without one
 * @param worst the table's row at the worst point of the fullest stack
 * @param room  what the path's errors may be; empty without a cancellation or a limit
 */
public record RoleFigures(FrequencyTable table, Optional<Path> path, Optional<FrequencyTable.Row> worst, Optional<ErrorBounds> room) {

    /**
     * The path of the cancellation on the table's frequencies, error in, for each axis.
     *
     * @param gainDb   20 log10 |P|
     * @param phaseDeg continuous, a lead is positive
     */
    public record Path(double[] frequencyHz, double[][] gainDb, double[][] phaseDeg) { }

    /**
     * Works them out; takes some ten milliseconds.
     *
     * @param curves frequencies of the curves, with the program's own grid among them, Hz
     */
    static RoleFigures of(Assessment assessment, double[] curves, int points) {
        Design design = assessment.design();
        double[] f = LogGrid.between(points, design.requirement().fromHz(), design.requirement().toHz());
        double[] worst = {assessment.verdict(assessment.fullest()).worst().frequencyHz()};
        return new RoleFigures(FrequencyTable.of(design, f, 1), design.cancellation().map(CancellationPath::new).map(p -> path(p, f)),
            Optional.of(FrequencyTable.of(design, worst, 1).rows().get(0)), ErrorBounds.of(design, curves));
    }

    private static Path path(CancellationPath path, double[] f) {
        double[][] gain = new double[3][f.length];
        double[][] phase = new double[3][f.length];
        for (int axis = 0; axis < 3; axis++) {
            double before = 0;
            for (int i = 0; i < f.length; i++) {
                Complex p = path.at(axis, f[i]);
                gain[axis][i] = 20 * StrictMath.log10(p.norm());
                double angle = StrictMath.toDegrees(StrictMath.atan2(p.getImaginary(), p.getReal()));
                before = angle + 360 * Math.rint((before - angle) / 360);
                phase[axis][i] = before;
            }
        }
        return new Path(f, gain, phase);
    }
}

package quietband.study.motion;

import java.util.List;
import java.util.Optional;
import quietband.model.Axis;
import quietband.model.Design;
import quietband.motion.run.LossError;
import quietband.motion.run.VibrationRun;
import quietband.response.ResidualResponse;
import quietband.spectrum.LogCurve;
import quietband.spectrum.Welch;

/**
 * What the frequency domain predicts at the frequencies of an estimated spectrum, S_y = sum |y_j|^2 S_a,j.
 *
 * @param axes    driven
 * @param perG    |y_j| by driven axis, stack and bin, 1/g; bin 0 is NaN (not copied, do not modify)
 * @param density of fractional frequency by stack and bin, 1/Hz; NaN where nothing is predicted (not copied, do not modify)
 */
public record PredictedSpectrum(List<Axis> axes, double[][][] perG, double[][] density) {

    public PredictedSpectrum {
        axes = List.copyOf(axes);
    }

    /**
     * Predicts up to the band's upper end.
     *
     * @param ride   whose estimate it stands beside
     * @param factor on the profiles' densities
     * @param loss   what the stand-in for loss factors changes, counted into the density; empty: no density
     */
    public static PredictedSpectrum of(Design design, VibrationRun.Result ride, List<Axis> axes, double factor,
                                       Optional<LossError> loss) {
        Welch w = ride.spectra().orElseThrow();
        int bins = (int) Math.min(w.bins(), Math.floor(design.requirement().toHz() * 1.0001 / w.resolutionHz()) + 1);
        int stacks = ride.stacks().size();
        double[][][] perG = new double[axes.size()][stacks][bins];
        double[][] density = new double[stacks][bins];
        ResidualResponse response = new ResidualResponse(design);
        double[] re = new double[3];
        double[] im = new double[3];
        for (int k = 0; k < bins; k++) {
            double f = k * w.resolutionHz();
            if (k > 0) {
                response.at(f);
            }
            for (int s = 0; s < stacks; s++) {
                density[s][k] = k > 0 && loss.isPresent() ? 0 : Double.NaN;
                if (k > 0) {
                    response.residual(ride.stacks().get(s), re, im);
                }
                for (int a = 0; a < axes.size(); a++) {
                    int j = axes.get(a).ordinal();
                    perG[a][s][k] = k > 0 ? Math.hypot(re[j], im[j]) : Double.NaN;
                    if (k > 0 && loss.isPresent()) {
                        double changed = loss.get().at(s, axes.get(a), f);
                        double drive = design.vibration().random().get(j).map((LogCurve c) -> c.at(f)).orElse(0.0) * factor;
                        density[s][k] += (re[j] * re[j] + im[j] * im[j]) * changed * changed * drive;
                    }
                }
            }
        }
        return new PredictedSpectrum(axes, perG, density);
    }
}

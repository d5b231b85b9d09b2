package quietband.study.motion;

import java.util.function.DoubleConsumer;
import quietband.model.Axis;
import quietband.model.Design;
import quietband.motion.run.SineSweep;
import quietband.response.ResidualResponse;

/**
 * A sweep with the prediction of the frequency domain beside it.
 *
 * @param elapsed time it took, s
 * @param worstDb largest difference of the two over the table, dB, wherever the prediction is above 1 % of the bare sensitivity
 */
public record SweepStudy(Design design, SineSweep.Request request, SineSweep.Result result, double elapsed, double worstDb) {

    /**
     * Runs a sweep and compares.
     *
     * @param progress told the share that is done, 0 to 1
     */
    public static SweepStudy of(Design design, SineSweep.Request request, DoubleConsumer progress) {
        long start = System.nanoTime();
        SineSweep.Result result = SineSweep.run(design, request, progress);
        double elapsed = (System.nanoTime() - start) * 1e-9;
        return new SweepStudy(design, request, result, elapsed, worstDb(design, request, result));
    }

    private static double worstDb(Design design, SineSweep.Request request, SineSweep.Result result) {
        ResidualResponse response = new ResidualResponse(design);
        double[] re = new double[3];
        double[] im = new double[3];
        double worst = 0;
        for (SineSweep.Point p : result.points()) {
            response.at(p.frequencyHz());
            for (int s = 0; s < result.stacks().size(); s++) {
                response.residual(result.stacks().get(s), re, im);
                for (Axis a : request.axes()) {
                    double predicted = Math.hypot(re[a.ordinal()], im[a.ordinal()]);
                    if (predicted > 0.01 * response.scale()) {
                        worst = Math.max(worst, Math.abs(20 * Math.log10(p.residual()[s][a.ordinal()] / predicted)));
                    }
                }
            }
        }
        return worst;
    }
}

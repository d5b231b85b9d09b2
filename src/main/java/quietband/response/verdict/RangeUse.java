package quietband.response.verdict;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import quietband.demand.RequirementResult;
import quietband.model.Axis;
import quietband.model.Cancellation;
import quietband.model.Design;
import quietband.model.Stack;
import quietband.model.Vibration.Tone;
import quietband.response.ResidualResponse;
import quietband.response.SwingTransfer;
import quietband.response.travel.RandomMotion;

/**
 * How far the sensors and the tuning port swing in the fullest stack: three standard deviations over the whole profile plus
 * the peaks of the tones, for the axis that drives most, or for all together.
 *
 * @param sensorG  per sensor axis, g (length 3)
 * @param tuningV  at the tuning port, V; NaN without a slope
 */
record RangeUse(double[] sensorG, double tuningV) {

    /** Works out the ranges of a design with a cancellation. */
    static RangeUse of(Design design, ResidualResponse response, RandomMotion random) {
        double slope = Math.abs(design.cancellation().orElseThrow().tuning().slopePerV());
        double[] tones = tones(design, new SwingTransfer(response, Stack.fullest(design).sprung()));
        double[] most = new double[4];
        for (int row = 0; row < 4; row++) {
            most[row] = design.vibration().together() ? together(random, tones, row) : worst(random, tones, row);
        }
        double volts = slope > 0 ? most[3] / slope : Double.NaN;
        return new RangeUse(new double[] {most[0], most[1], most[2]}, volts);
    }

    private static double together(RandomMotion random, double[] tones, int row) {
        int at = 3 * row;
        return 3 * Math.sqrt(random.swing(row, 0) + random.swing(row, 1) + random.swing(row, 2)) + tones[at]
            + tones[at + 1] + tones[at + 2];
    }

    private static double worst(RandomMotion random, double[] tones, int row) {
        double worst = 0;
        for (int j = 0; j < 3; j++) {
            worst = Math.max(worst, 3 * Math.sqrt(random.swing(row, j)) + tones[3 * row + j]);
        }
        return worst;
    }

    /** Sum of the tones' peaks per row and drive axis (length 12). */
    private static double[] tones(Design design, SwingTransfer swing) {
        double[] sum = new double[12];
        for (Tone tone : design.vibration().tones()) {
            double[] power = swing.squared(tone.frequencyHz());
            for (Axis axis : tone.axes()) {
                for (int row = 0; row < 4; row++) {
                    int e = 3 * row + axis.ordinal();
                    sum[e] += Math.sqrt(power[e]) * tone.peakG();
                }
            }
        }
        return sum;
    }

    /** The requirements on ranges, where ranges are given. */
    List<RequirementResult> results(Cancellation c) {
        List<RequirementResult> results = new ArrayList<>();
        sensorResult(c).ifPresent(results::add);
        if (Double.isFinite(c.tuning().rangeV()) && !Double.isNaN(tuningV)) {
            results.add(RequirementResult.share("tuning_swing", tuningV, c.tuning().rangeV(), "V", ""));
        }
        return results;
    }

    private Optional<RequirementResult> sensorResult(Cancellation c) {
        RequirementResult worst = null;
        for (Axis axis : Axis.ALL) {
            double range = c.sensor().rangeG().get(axis);
            if (Double.isFinite(range)) {
                RequirementResult r = RequirementResult.share("sensor_range", sensorG[axis.ordinal()], range, "g",
                    axis.letter());
                worst = worst == null || r.usedShare() > worst.usedShare() ? r : worst;
            }
        }
        return Optional.ofNullable(worst);
    }
}

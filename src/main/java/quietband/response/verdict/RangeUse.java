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
public record RangeUse(double[] sensorG, double tuningV) {

    /** Works out the ranges of a design with a cancellation. */
    static RangeUse of(Design design, ResidualResponse response, RandomMotion random) {
        SwingTransfer swing = new SwingTransfer(response, Stack.fullest(design).sprung());
        double[] sum = new double[12];
        for (Tone tone : design.vibration().tones()) {
            double[] power = swing.squared(tone.frequencyHz());
            for (Axis axis : tone.axes()) {
                for (int e = axis.ordinal(); e < 12; e += 3) {
                    sum[e] += Math.sqrt(power[e]) * tone.peakG();
                }
            }
        }
        return of(design, random, sum);
    }

    /**
     * The same from the random part and the sum of the tones' peaks, row by row a drive axis each (length 12): of the sensors in g, of
     * the cancellation in fractional frequency.
     */
    public static RangeUse of(Design design, RandomMotion random, double[] tones) {
        double slope = Math.abs(design.cancellation().orElseThrow().tuning().slopePerV());
        double[] sensors = {random.swingPeak(0, tones), random.swingPeak(1, tones), random.swingPeak(2, tones)};
        return new RangeUse(sensors, slope > 0 ? random.swingPeak(3, tones) / slope : Double.NaN);
    }

    /** The requirements on ranges, where ranges are given. */
    public List<RequirementResult> results(Cancellation c) {
        List<RequirementResult> results = new ArrayList<>();
        sensor(c).ifPresent(results::add);
        tuning(c).ifPresent(results::add);
        return results;
    }

    /** The port's, where its range and slope are given. */
    public Optional<RequirementResult> tuning(Cancellation c) {
        return Double.isFinite(c.tuning().rangeV()) && !Double.isNaN(tuningV)
            ? Optional.of(RequirementResult.share("tuning_swing", tuningV, c.tuning().rangeV(), "V", "")) : Optional.empty();
    }

    /** The fullest sensor's, where a range is given. */
    public Optional<RequirementResult> sensor(Cancellation c) {
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

package quietband.response;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import quietband.model.Axis;
import quietband.model.Cancellation;
import quietband.model.Design;
import quietband.model.Stack;
import quietband.model.Vibration.Tone;
import quietband.platform.Assembly;
import quietband.spectrum.Quadrature;

/**
 * How far the sensors and the tuning port swing in the fullest stack: three standard deviations over the whole profile plus
 * the peaks of the tones, for the axis that drives most, or for all together.
 *
 * @param sensorG  per sensor axis, g (length 3)
 * @param tuningV  at the tuning port, V; NaN without a slope
 */
record Ranges(double[] sensorG, double tuningV) {

    /** Works out the ranges of a design with a correction. */
    static Ranges of(Design design, Assembly assembly, ResidualResponse response) {
        Cancellation c = design.cancellation().orElseThrow();
        double slope = Math.abs(c.tuning().slopePerV());
        boolean sprung = Stack.fullest(design).sprung();
        Swing swing = new Swing(response, sprung);
        double[] mean = new double[12];
        double[] grid = Travel.profileGrid(design, assembly);
        PhaseNoise density = new PhaseNoise(design);
        if (grid.length > 1) {
            mean = Quadrature.integrate(grid, 12, (f, into) -> {
                double[] power = swing.squared(f);
                for (int e = 0; e < 12; e++) {
                    into[e] = power[e] * density.density(Axis.ALL.get(e % 3), f);
                }
            });
        }
        double[] tones = tones(design, swing);
        double[] most = new double[4];
        for (int row = 0; row < 4; row++) {
            most[row] = design.vibration().together() ? together(mean, tones, row) : worst(mean, tones, row);
        }
        double volts = slope > 0 ? most[3] / slope : Double.NaN;
        return new Ranges(new double[] {most[0], most[1], most[2]}, volts);
    }

    private static double together(double[] mean, double[] tones, int row) {
        int at = 3 * row;
        return 3 * Math.sqrt(mean[at] + mean[at + 1] + mean[at + 2]) + tones[at] + tones[at + 1] + tones[at + 2];
    }

    private static double worst(double[] mean, double[] tones, int row) {
        double worst = 0;
        for (int j = 0; j < 3; j++) {
            worst = Math.max(worst, 3 * Math.sqrt(mean[3 * row + j]) + tones[3 * row + j]);
        }
        return worst;
    }

    /** Sum of the tones' peaks per row and drive axis (length 12). */
    private static double[] tones(Design design, Swing swing) {
        double[] sum = new double[12];
        for (Tone tone : design.vibration().tones()) {
            double[] power = swing.squared(tone.frequencyHz());
            for (Axis axis : tone.axis().map(List::of).orElse(Axis.ALL)) {
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

    /** |sensed|^2 of the three sensors and |correction|^2, for each drive axis. */
    private static final class Swing {

        private final ResidualResponse response;
        private final boolean sprung;
        private final double[] re = new double[9];
        private final double[] im = new double[9];
        private final double[] cRe = new double[3];
        private final double[] cIm = new double[3];

        Swing(ResidualResponse response, boolean sprung) {
            this.response = response;
            this.sprung = sprung;
        }

        double[] squared(double f) {
            response.at(f);
            response.sensed(sprung, re, im);
            response.correction(sprung, cRe, cIm);
            double[] power = new double[12];
            for (int e = 0; e < 9; e++) {
                power[e] = re[e] * re[e] + im[e] * im[e];
            }
            for (int j = 0; j < 3; j++) {
                power[9 + j] = cRe[j] * cRe[j] + cIm[j] * cIm[j];
            }
            return power;
        }
    }
}

package quietband.response.verdict;

import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import quietband.model.Axis;
import quietband.model.Design;
import quietband.model.Stack;
import quietband.model.Vibration.Tone;
import quietband.oscillator.Sidebands;
import quietband.response.ResidualResponse;

/**
 * The sidebands that one tone on one axis makes at the output.
 *
 * @param name        of the tone
 * @param frequencyHz its frequency
 * @param axis        driven
 * @param peakG       its peak, g
 * @param index       modulation index at the output per stack, rad
 * @param levelDbc    level per stack, dBc; minus infinity for no sensitivity
 * @param limitDbc    limit there, dBc; NaN when none is stated
 */
public record ToneSideband(String name, double frequencyHz, Axis axis, double peakG, Map<Stack, Double> index,
                       Map<Stack, Double> levelDbc, double limitDbc) {

    /** Whether the exact Bessel ratio was used for a stack, its index being above 0.1. */
    public boolean exact(Stack stack) {
        return index.get(stack) > Sidebands.SMALL_INDEX;
    }

    /** Every tone on every axis it drives (one without an axis drives each). */
    static List<ToneSideband> of(Design design, ResidualResponse response) {
        List<ToneSideband> lines = new ArrayList<>();
        for (Tone tone : design.vibration().tones()) {
            for (Axis axis : tone.axis().map(List::of).orElse(Axis.ALL)) {
                lines.add(line(design, response, tone, axis));
            }
        }
        return lines;
    }

    private static ToneSideband line(Design design, ResidualResponse response, Tone tone, Axis axis) {
        Map<Stack, Double> index = new EnumMap<>(Stack.class);
        Map<Stack, Double> level = new EnumMap<>(Stack.class);
        double[] re = new double[3];
        double[] im = new double[3];
        response.at(tone.frequencyHz());
        for (Stack stack : Stack.of(design)) {
            response.residual(stack, re, im);
            double y = StrictMath.hypot(re[axis.ordinal()], im[axis.ordinal()]);
            double beta = Sidebands.index(y, tone.peakG(), design.oscillator().outputHz(), tone.frequencyHz());
            index.put(stack, beta);
            level.put(stack, Sidebands.levelDbc(beta));
        }
        double limit = design.requirement().tones().map(l -> l.at(tone.frequencyHz())).orElse(Double.NaN);
        return new ToneSideband(tone.name(), tone.frequencyHz(), axis, tone.peakG(), index, level, limit);
    }
}

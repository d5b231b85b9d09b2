package quietband.response.verdict;

import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import quietband.demand.ToneDemand;
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
            for (Axis axis : tone.axes()) {
                lines.add(line(design, response, tone, axis));
            }
        }
        return lines;
    }

    private static ToneSideband line(Design design, ResidualResponse response, Tone tone, Axis axis) {
        Map<Stack, Double> index = new EnumMap<>(Stack.class);
        Map<Stack, Double> level = new EnumMap<>(Stack.class);
        ToneDemand demand = new ToneDemand(design);
        for (Stack stack : Stack.of(design)) {
            double beta = demand.index(tone, response.magnitude(stack, axis, tone.frequencyHz()));
            index.put(stack, beta);
            level.put(stack, Sidebands.levelDbc(beta));
        }
        return new ToneSideband(tone.name(), tone.frequencyHz(), axis, tone.peakG(), index, level, demand.limitDbc(tone));
    }
}

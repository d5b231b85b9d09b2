package quietband.response.verdict;

import java.util.List;
import java.util.Optional;
import quietband.demand.Decibels;
import quietband.demand.PhaseNoise;
import quietband.demand.RequirementResult;
import quietband.model.Design;
import quietband.model.Stack;
import quietband.response.ResidualResponse;
import quietband.spectrum.AdaptiveCurves;

/** Follows the phase noise of the fullest stack over the band and compares it with the limit. */
final class NoiseLimit {

    private final ResidualResponse response;
    private final PhaseNoise noise;
    private final List<PhaseNoise.Row> rows;
    private final Stack stack;
    private final boolean asked;

    NoiseLimit(Design design, ResidualResponse response) {
        this.response = response;
        noise = new PhaseNoise(design);
        rows = noise.rows();
        stack = Stack.fullest(design);
        asked = design.requirement().phaseNoise().isPresent();
    }

    /** How many curves there are: one per driven row, none without a limit. */
    int count() {
        return asked ? rows.size() : 0;
    }

    /** Writes dB over the limit for each row, from an offset on. */
    void write(double f, double[] over, int offset) {
        if (count() == 0) {
            return;
        }
        double[] total = totalDbc(f);
        double limit = noise.limitDbc(f).orElseThrow();
        for (int k = 0; k < total.length; k++) {
            over[offset + k] = Math.max(Decibels.FLOOR, total[k] - limit);
        }
    }

    private double[] totalDbc(double f) {
        response.at(f);
        double[] squared = response.squares(stack);
        double floor = noise.floor(stack, f);
        double[] total = new double[rows.size()];
        for (int k = 0; k < total.length; k++) {
            total[k] = Decibels.ofPower(floor + noise.vibration(rows.get(k), f, squared));
        }
        return total;
    }

    /** The verdict from a sweep whose curves from an offset on are those of {@link #write}; empty without a limit. */
    Optional<RequirementResult> verdict(AdaptiveCurves sweep, int offset) {
        if (count() == 0) {
            return Optional.empty();
        }
        AdaptiveCurves.Highest highest = sweep.highest(offset, rows.size());
        double f = highest.top().frequencyHz();
        double total = totalDbc(f)[highest.curve()];
        double limit = noise.limitDbc(f).orElseThrow();
        return Optional.of(RequirementResult.margin("phase_noise", limit - total, total, limit, "dBc/Hz", f,
            rows.get(highest.curve()).label()));
    }
}

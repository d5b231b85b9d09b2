package quietband.response.verdict;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import quietband.demand.PhaseNoise;
import quietband.model.Design;
import quietband.model.Requirement;
import quietband.model.Stack;
import quietband.oscillator.Sidebands;
import quietband.response.Effort;
import quietband.response.FrequencyIntegrals;
import quietband.response.ResidualResponse;

/** Integrated phase noise of the fullest stack: sqrt(2 integral of 10^(total/10) df), rad rms, tones apart. */
final class PhaseJitter {

    private final ResidualResponse response;
    private final Stack stack;
    private final PhaseNoise noise;
    private final List<PhaseNoise.Row> rows;
    private final double from;
    private final double to;

    /** From jitter.from to jitter.to when they are stated, else over the band, which a coarse look leaves out. */
    PhaseJitter(Design design, ResidualResponse response, Effort effort) {
        this.response = response;
        stack = Stack.fullest(design);
        noise = new PhaseNoise(design);
        rows = effort == Effort.FULL || design.requirement().jitter().isPresent() ? noise.rows() : List.of();
        Requirement r = design.requirement();
        Optional<Requirement.Jitter> stated = r.jitter();
        from = stated.map(Requirement.Jitter::fromHz).orElse(r.fromHz());
        to = stated.map(Requirement.Jitter::toHz).orElse(r.toHz());
    }

    /** What is integrated: one integrand per row. */
    FrequencyIntegrals.Part part() {
        return new FrequencyIntegrals.Part(rows.size(), from, rows.isEmpty() ? from : to, this::write);
    }

    private void write(double f, double[] into, int offset) {
        response.at(f);
        double[] squared = response.squares(stack);
        double floor = noise.floor(stack, f);
        for (int k = 0; k < rows.size(); k++) {
            into[offset + k] = floor + noise.vibration(rows.get(k), f, squared);
        }
    }

    /** One result per row from the integrals of {@link #part}. */
    List<Assessment.RowJitter> of(double[] integral) {
        List<Assessment.RowJitter> jitter = new ArrayList<>();
        for (int k = 0; k < rows.size(); k++) {
            jitter.add(new Assessment.RowJitter(rows.get(k).label(), Sidebands.jitterRad(integral[k])));
        }
        return jitter;
    }
}

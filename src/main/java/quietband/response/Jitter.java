package quietband.response;

import java.util.ArrayList;
import java.util.List;
import quietband.model.Design;
import quietband.model.Requirement;
import quietband.model.Stack;
import quietband.platform.Assembly;
import quietband.spectrum.Quadrature;

/** Integrated phase noise of the fullest stack: sqrt(2 integral of 10^(total/10) df), rad rms, tones apart. */
final class Jitter {

    private Jitter() { }

    /** One per row, from jitter.from to jitter.to when they are stated, else over the band. */
    static List<Assessment.RowJitter> of(Design design, Assembly assembly, ResidualResponse response) {
        Requirement r = design.requirement();
        double from = r.jitter().map(Requirement.Jitter::fromHz).orElse(r.fromHz());
        double to = r.jitter().map(Requirement.Jitter::toHz).orElse(r.toHz());
        PhaseNoise noise = new PhaseNoise(design);
        List<PhaseNoise.Row> rows = noise.rows();
        Stack stack = Stack.fullest(design);
        double[] re = new double[3];
        double[] im = new double[3];
        double[] squared = new double[3];
        double[] grid = new Seeds(design, assembly).between(from, to);
        double[] integral = Quadrature.integrate(grid, rows.size(), (f, into) -> {
            response.at(f);
            response.residual(stack, re, im);
            for (int j = 0; j < 3; j++) {
                squared[j] = re[j] * re[j] + im[j] * im[j];
            }
            double floor = noise.floor(stack, f);
            for (int k = 0; k < into.length; k++) {
                into[k] = floor + noise.vibration(rows.get(k), f, squared);
            }
        });
        List<Assessment.RowJitter> jitter = new ArrayList<>();
        for (int k = 0; k < rows.size(); k++) {
            jitter.add(new Assessment.RowJitter(rows.get(k).label(), Math.sqrt(2 * integral[k])));
        }
        return jitter;
    }
}

package quietband.tolerance;

import java.util.List;
import quietband.model.Design;
import quietband.model.Quantities;
import quietband.model.Tolerance;
import quietband.platform.Assembly;
import quietband.response.ResidualLimit;
import quietband.response.Seeds;

/** Judges units in one condition, fast. One object serves one thread. */
final class UnitJudge {

    private static final double LARGEST_MARGIN = 300;

    private final Design base;
    private final List<Tolerance.Change> changes;
    private final Varied varied;
    private final Nodes nodes;
    private final boolean asked;
    private final UnitResponse response;
    private final Search search;

    UnitJudge(Design nominal, List<Tolerance.Change> changes, Varied varied) {
        this.base = changes.isEmpty() ? nominal : nominal.unit(nominal.quantities().changed(changes));
        this.changes = changes;
        this.varied = varied;
        this.asked = new ResidualLimit(base).asked();
        double[] grid = new Seeds(base, base.platform().map(Assembly::new).orElse(null))
            .between(base.requirement().fromHz(), base.requirement().toHz());
        this.nodes = new Nodes(grid, base);
        this.response = new UnitResponse(base, varied, grid[grid.length - 1]);
        this.search = new Search(base, true);
    }

    /** The unit under this condition. */
    Design unit(Design nominal, Quantities drawn) {
        return nominal.unit(changes.isEmpty() ? drawn : drawn.changed(changes));
    }

    UnitVerdict judge(Design unit) {
        response.fill(unit);
        search.fill(unit, response);
        search.run(response, varied.shared() ? new Nodes(nodes.f, unit) : nodes);
        double margin = margin(search.residual.value);
        int failed = asked && margin < -1e-9 ? Asked.RESIDUAL.bit() : 0;
        if (search.noiseAsked() && margin(search.phaseNoise.value) < -1e-9) {
            failed |= Asked.PHASE_NOISE.bit();
        }
        return new UnitVerdict(margin, StrictMath.exp(search.residual.logF), search.axis(), failed, Double.NaN);
    }

    double noiseMargin() {
        return margin(search.phaseNoise.value);
    }

    private static double margin(double power) {
        return Math.max(-LARGEST_MARGIN, Math.min(LARGEST_MARGIN, -10 * StrictMath.log10(power)));
    }
}

package quietband.tolerance.judge;

import quietband.demand.Decibels;
import quietband.demand.ResidualDemand;
import quietband.model.Design;
import quietband.model.Stack;
import quietband.tolerance.kernel.BlockedGrid;
import quietband.tolerance.kernel.FrequencyBlock;
import quietband.tolerance.kernel.UnitModes;
import quietband.tolerance.kernel.UnitResponse;

/** Judges units in one condition, fast. One object serves one thread. */
public final class UnitJudge {

    /** Below this margin a unit is judged again by the exact search; the fast one is good to 0.002 dB. */
    static final double CLOSE_DB = 0.004;

    /** How far apart a unit's own nodes may be, as a multiple of the grid's spacing, and still have a polynomial through them. */
    private static final double WIDEST = 1.5;
    // a value that sits on its limit meets it; rounding must not decide
    private static final double TOUCH_DB = 1e-9;

    private final JudgedCondition condition;
    private final boolean asked;
    private final UnitResponse response;
    private final UnitWorstPoint search;
    private final UnitModes modes = new UnitModes();
    private final RequirementShares swings;
    private final DecidingRequirements screen;

    UnitJudge(JudgedCondition condition, DecidingRequirements screen) {
        this.condition = condition;
        this.screen = screen;
        asked = new ResidualDemand(condition.base).asked();
        search = new UnitWorstPoint(condition, screen.open());
        swings = (screen.open() & ~search.covers()) != 0 ? new RequirementShares(condition) : null;
        double highest = condition.base.requirement().toHz();
        response = new UnitResponse(condition.base, condition.varied,
            swings == null ? highest : Math.max(highest, swings.highest()));
    }

    /** The verdict on a unit. @throws ImpossibleUnitException when its platform cannot be */
    public UnitVerdict judge(Design unit) {
        int failed = screen.failed();
        margin(unit);
        double margin = marginDb(search.residual.value);
        if (asked && Math.abs(margin) < CLOSE_DB) {
            margin = ExactMargin.marginDb(unit, search.residual.curve, search.residual.leftHz(), search.residual.atHz(),
                search.residual.rightHz());
        }
        if (asked && margin < -TOUCH_DB) {
            failed |= RequirementKind.RESIDUAL.bit();
        }
        if (search.noiseAsked() && marginDb(search.phaseNoise.value) < -TOUCH_DB) {
            failed |= RequirementKind.PHASE_NOISE.bit();
        }
        int rest = screen.open() & ~search.covers();
        double jitter = search.jitterRad();
        if (!Double.isNaN(jitter)) {
            failed |= jitter > unit.requirement().jitter().orElseThrow().limitRad() ? RequirementKind.JITTER.bit() : 0;
        }
        double tones = search.tonesShare();
        if (!Double.isNaN(tones)) {
            failed |= tones > 1 ? RequirementKind.TONES.bit() : 0;
        }
        if (rest != 0) {
            double[] shares = swings.shares(unit, response, !condition.varied.shared(), rest);
            for (RequirementKind a : RequirementKind.values()) {
                boolean open = (rest & a.bit()) != 0;
                failed |= open && shares[a.ordinal()] > 1 ? a.bit() : 0;
            }
        }
        return new UnitVerdict(margin, StrictMath.exp(search.residual.logF), search.axis(), failed);
    }

    /** Fills the search with a unit's worst points, and gives the margin of its residual in dB. */
    public double margin(Design unit) {
        response.fill(unit);
        search.fill(unit, response);
        Design own = condition.varied.shared() ? unit : condition.base;
        search.run(response, condition.varied.shared() ? new BlockedGrid(condition.nodes.f, unit) : condition.nodes);
        if (condition.seeded) {
            modes.fill(response.body);
            double[] seeds = modes.seeds(response.body, unit.requirement().fromHz(), unit.requirement().toHz(),
                condition.spacing);
            if (seeds.length > 0) {
                search.run(response, new BlockedGrid(seeds, own).apart(WIDEST * condition.spacing));
            }
        }
        return marginDb(search.residual.value);
    }

    /** Whether there is a residual limit. */
    public boolean residualAsked() {
        return asked;
    }

    /** Whether phase noise is looked at. */
    public boolean noiseAsked() {
        return search.noiseAsked();
    }

    /** Margin of phase noise found last, dB; meaningless when it is not asked. */
    public double noiseMarginDb() {
        return marginDb(search.phaseNoise.value);
    }

    /**
     * Powers of every stack at the nodes of a table, for the unit judged last.
     *
     * @param take is handed each block, its place in the table and the powers by stack and axis
     */
    public void table(BlockedGrid table, Table take) {
        int at = 0;
        for (FrequencyBlock b : table.blocks) {
            response.residual(b, true);
            take.block(b, at, response.power);
            at += b.n;
        }
    }

    /** Takes in a block of a table. */
    @FunctionalInterface
    public interface Table {
        /** The powers are reused by the next block. */
        void block(FrequencyBlock b, int at, double[][][] power);
    }

    /** The stack that verdicts are about. */
    Stack fullest() {
        return Stack.fullest(condition.base);
    }

    private static double marginDb(double power) {
        return Decibels.clamp(-Decibels.ofPower(power));
    }
}

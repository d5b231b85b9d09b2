package quietband.tuning;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import quietband.model.Axis;
import quietband.model.Design;
import quietband.model.ModelFile;
import quietband.model.Platform;
import quietband.model.Vec;
import quietband.platform.Assembly;
import quietband.response.Assessment;
import quietband.response.Assessor;
import quietband.response.Travel;

/**
 * From a wish to a changed model: centres brought together, rates and damping found, parts chosen, ballast added, all
 * checked.
 */
public final class SpringPlanner {

    private final ModelFile file;
    private final SpringWish wish;
    private final Design base;
    private final List<Finding> findings = new ArrayList<>();

    private SpringPlanner(ModelFile file, SpringWish wish) {
        this.file = file;
        this.wish = wish;
        this.base = file.design();
    }

    /**
     * Works a wish out.
     *
     * @throws WishException when it cannot be worked on at all
     */
    public static SpringAnswer plan(ModelFile file, SpringWish wish) {
        return new SpringPlanner(file, wish).plan();
    }

    private SpringAnswer plan() {
        Platform platform = base.platform().orElseThrow(() ->
            new WishException("the model has no platform: there is no mass to put "
            + "on springs; add a block 'platform' with mass, size and springs"));
        Assessment before = Assessor.assess(base);
        PlatformNumbers numbers = new PlatformNumbers(base);
        Vec shift = wish.centre() ? centre(numbers) : Vec.ZERO;
        Design centred = numbers.design();
        SpringTarget target = SpringTarget.of(centred, wish);
        findings.addAll(target.findings());
        CornerSolver solved = CornerSolver.solve(target.design(), target.cornerHz());
        PlatformNumbers chosen = new PlatformNumbers(solved.design());
        SpringDamping.set(chosen, target.design(), solved, wish.damping());
        // stiffer at the same height is so much more of the same material: its standing wave stays where it is
        chosen.scale("mass", "", -1, Math.cbrt(solved.factors().x() * solved.factors().y() * solved.factors().z()));
        Design exact = chosen.design();
        Travel travel = Assessor.assess(exact).travel().orElseThrow();
        double stroke = Math.max(travel.counted().z(), travel.sag().z());
        SpringParts parts = new SpringParts(exact, wish, solved.cornerHz(), stroke);
        List<SpringPart> list = parts.choose(chosen);
        list.forEach(p -> findings.addAll(p.findings()));
        Design orderable = chosen.design();
        double ballast = Ballast.closing(orderable, target.cornerHz());
        if (ballast > 0) {
            chosen.ballast(ballast, orderable.platform().orElseThrow().centreOfGravity());
        }
        ModelFile changed = file.withQuantities(chosen.design().quantities().with(chosen.design().quantities()
            .values()));
        Assessment after = Assessor.assess(changed.design());
        Assembly assembly = new Assembly(changed.design().platform().orElseThrow());
        Vec corner = AxisCorners.hz(assembly);
        SpringChecks checks = new SpringChecks(changed.design(), after, assembly);
        findings.addAll(0, corners(target.cornerHz(), corner));
        findings.addAll(checks.all(corner));
        Vec at = changed.design().platform().orElseThrow().centreOfGravity();
        return new SpringAnswer(changed, before, after, target.cornerHz(), corner, checks.surgeHz(), list, shift,
            changed.design().platform().orElseThrow().mass() - platform.mass(), at, ElasticCentre.of(assembly),
            findings,
            TravelCurve.of(changed.design()), checks.liftOff(list), parts.compound(), target.search());
    }

    /** Moves the springs so that their elastic centre is the centre of gravity; by how much. */
    private static Vec centre(PlatformNumbers numbers) {
        Vec moved = Vec.ZERO;
        for (int i = 0; i < 3; i++) {
            Vec by = ElasticCentre.of(new Assembly(numbers.design().platform().orElseThrow())).offset().times(-1);
            if (by.length() < 1e-9) {
                break;
            }
            // a place is known to a hundredth of a millimetre at best
            Vec rounded = by.map(v -> Math.rint(v * 1e5) / 1e5);
            numbers.shift(rounded);
            moved = moved.plus(rounded);
        }
        return moved;
    }

    private static List<Finding> corners(Vec wanted, Vec reached) {
        List<Finding> list = new ArrayList<>();
        for (Axis a : Axis.ALL) {
            double off = reached.get(a) / wanted.get(a) - 1;
            list.add(Finding.of("corner_" + a.letter(), Math.abs(off) <= 0.01, String.format(Locale.ROOT,
                "corner %s %.2f Hz, wanted %.2f Hz "
                + "(%+.2f %%)", a.letter(), reached.get(a), wanted.get(a), 100 * off),
                "springs made to the rates (--parts rates), other parts, or a wish these parts can meet"));
        }
        return list;
    }
}

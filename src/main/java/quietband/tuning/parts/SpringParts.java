package quietband.tuning.parts;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import quietband.model.Axis;
import quietband.model.Design;
import quietband.model.Platform;
import quietband.model.Platform.Spring;
import quietband.model.Vec;

/**
 * Turns wanted rates into parts that can be ordered, group by group, and writes what they are into the numbers of the
 * design.
 */
public final class SpringParts {

    private static final double LOSSY = 0.05;
    // of coils of steel wire; common practice, no source
    private static final double COIL_LOSS = 0.005;
    private static final double LIFT_RESERVE = 1.1;

    private final Design wanted;
    private final SpringRequest wish;
    private final Vec cornerHz;
    private final Vec travel;
    private final List<SpringPart> parts = new ArrayList<>();
    private Elastomer compound;

    /**
     * For a design with exact rates.
     *
     * @param cornerHz its natural frequencies, Hz
     * @param travel   largest motion either way along the platform's axes, m
     */
    public SpringParts(Design wanted, SpringRequest wish, Vec cornerHz, Vec travel) {
        this.wanted = wanted;
        this.wish = wish;
        this.cornerHz = cornerHz;
        this.travel = travel;
    }

    /** Chooses; the numbers are changed to those of the parts. */
    public List<SpringPart> choose(PlatformNumbers numbers) {
        Map<String, List<Spring>> groups = new LinkedHashMap<>();
        wanted.platform().orElseThrow().springs().forEach(s -> groups.computeIfAbsent(s.group(), g ->
            new ArrayList<>()).add(s));
        groups.forEach((group, springs) -> {
            SpringPart part = part(group, springs);
            apply(part, numbers);
            parts.add(part);
        });
        return parts;
    }

    /** The compound of elastomer mounts; empty without such. */
    public Optional<Elastomer> compound() {
        return Optional.ofNullable(compound);
    }

    private SpringPart part(String group, List<Spring> springs) {
        Spring s = springs.get(0);
        double loss = s.lossFactor().largest();
        SpringRequest.Kind kind = wish.kind() != SpringRequest.Kind.SUITED ? wish.kind()
            : loss >= LOSSY ? SpringRequest.Kind.ELASTOMER : SpringRequest.Kind.COIL;
        return switch (kind) {
            case ELASTOMER -> elastomer(group, springs, loss);
            case COIL -> coil(group, springs);
            case CATALOGUE -> fromCatalogue(group, springs);
            case RATES, SUITED -> exact(group, springs, List.of());
        };
    }

    private static SpringPart exact(String group, List<Spring> springs, List<TargetCheck> findings) {
        Spring s = springs.get(0);
        return new SpringPart(group, springs.size(), "rates", "spring made to the three rates", 1, s.stiffness(),
            s.stiffness(),
            s.mass(), s.damping(), s.lossFactor(), s.compressionOnly() ? s.preload() : 0, Optional.empty(), findings);
    }

    private SpringPart elastomer(String group, List<Spring> springs, double loss) {
        Spring s = springs.get(0);
        compound = Elastomer.nearest(Math.max(loss, 0.03));
        Vec rate = s.stiffness().map(k -> k == 0 ? 0 : Elastomer.preferred(k));
        String name = String.format(Locale.ROOT, "mount of %s, %s N/mm along x, y, z", compound.name(), perMm(rate));
        List<TargetCheck> findings = List.of(TargetCheck.of("loss_factor", Math.abs(compound.roomLoss() - loss) < 0.02,
            String.format(Locale.ROOT,
            "%s: loss factor %.3g of the mounts' compound, %.3g in the model (met within 0.02)", group, compound.roomLoss(), loss),
            "a compound with this loss factor, or --damping with dampers beside the mounts"));
        return new SpringPart(group, springs.size(), "elastomer", name, 1, rate, s.stiffness(), s.mass(), s.damping(),
            s.lossFactor().map(eta -> eta == 0 ? 0 : compound.roomLoss()), s.compressionOnly() ? s.preload() : 0,
            Optional.empty(), findings);
    }

    private static String perMm(Vec rate) {
        return String.format(Locale.ROOT, "%.4g, %.4g and %.4g", rate.x() / 1e3, rate.y() / 1e3, rate.z() / 1e3);
    }

    /** Dampers that take over what the loss factor did at each axis' natural frequency: c + k eta/w. */
    private Vec dampers(Spring s, Vec rate, double loss) {
        return Vec.perAxis(a -> Math.max(0, s.damping().get(a) + (s.stiffness().get(a) * s.lossFactor().get(a) - rate.get(a) * loss)
            / (2 * Math.PI * cornerHz.get(a))));
    }

    private SpringPart coil(String group, List<Spring> springs) {
        Spring s = springs.get(0);
        int perPlace = s.compressionOnly() ? 1 : 2;
        double across = Math.sqrt(s.stiffness().x() * s.stiffness().y());
        if (!(across > 0 && s.stiffness().z() > 0)) {
            return exact(group, springs, List.of(TargetCheck.of("coil", false, group
                + ": a coil spring has a rate on every axis, this one has "
                + "none on some", "springs made to the rates (--parts rates)")));
        }
        double stroke = SpringStroke.of(springs, travel);
        double rest = LIFT_RESERVE * stroke;
        CoilFinder.Need need = new CoilFinder.Need(s.stiffness().z() / perPlace, across / perPlace, stroke, rest,
            wanted.requirement().toHz());
        Optional<CoilFinder.Found> found = WireMaterial.table().stream().limit(2)
            .flatMap(m -> CoilFinder.find(need, m).stream()).min((a, b) -> Double.compare(a.cost(), b.cost()));
        if (found.isEmpty()) {
            return exact(group, springs, List.of(TargetCheck.of("coil", false, group
                + ": no coil of standard wire gives this rate over the stroke without buckling",
                "another number of springs, or springs made to the rates (--parts rates)")));
        }
        CoilSpring coil = found.get().coil();
        double lateral = coil.lateralRate(rest) * perPlace;
        Vec rate = new Vec(lateral, lateral, coil.rate() * perPlace);
        return new SpringPart(group, springs.size(), "coil", coil.words(), perPlace, rate, s.stiffness(),
            coil.activeMass() * perPlace,
            dampers(s, rate, COIL_LOSS), Vec.all(COIL_LOSS), coil.rate() * rest, Optional.of(coil), CoilChecks.of(group, found.get(),
            need));
    }

    private SpringPart fromCatalogue(String group, List<Spring> springs) {
        Spring s = springs.get(0);
        int perPlace = s.compressionOnly() ? 1 : 2;
        SpringCatalogue.Entry best = null;
        double least = Double.POSITIVE_INFINITY;
        for (SpringCatalogue.Entry e : wish.catalogue().orElseThrow().entries()) {
            double off = off(e, s, perPlace);
            if (off < least) {
                least = off;
                best = e;
            }
        }
        Vec rate = new Vec(best.lateral() * perPlace, best.lateral() * perPlace, best.rate() * perPlace);
        double stroke = SpringStroke.of(springs, travel);
        double rest = Math.min(LIFT_RESERVE * stroke, best.largestLoad() / best.rate());
        double most = rest + stroke;
        List<TargetCheck> findings = List.of(
            TargetCheck.of("load", best.rate() * most <= best.largestLoad(), String.format(Locale.ROOT,
            "%s: %.3g N at the end of the stroke, "
                + "%.3g N allowed", group, best.rate() * most, best.largestLoad()),
                "a stronger spring, or a stiffer platform"),
            TargetCheck.of("solid_length", best.freeLength() - most > best.solidLength(), String.format(Locale.ROOT,
            "%s: %.3g mm long at the end of "
                + "the stroke, %.3g mm solid", group, 1e3 * (best.freeLength() - most), 1e3 * best.solidLength()),
                "a longer spring"));
        return new SpringPart(group, springs.size(), "catalogue", best.part(), perPlace, rate, s.stiffness(),
            best.mass() * perPlace,
            dampers(s, rate, best.loss()), Vec.all(best.loss()), best.rate() * rest, Optional.empty(), findings);
    }

    /** How far the natural frequencies stay off after ballast, as rates, and a little for the ballast itself. */
    private double off(SpringCatalogue.Entry e, Spring s, int perPlace) {
        double along = StrictMath.log(e.rate() * perPlace / s.stiffness().z());
        double x = StrictMath.log(e.lateral() * perPlace / s.stiffness().x());
        double y = StrictMath.log(e.lateral() * perPlace / s.stiffness().y());
        double high = Math.max(along, Math.max(x, y));
        double low = Math.min(along, Math.min(x, y));
        double common = (high + low) / 2;
        Platform p = wanted.platform().orElseThrow();
        // too stiff can be weighed down with ballast as far as there is room, too soft cannot
        double weighed = Math.max(0, Math.min(common, StrictMath.log(p.massLimit() / p.mass())));
        return (high - low) / 2 + Math.abs(common - weighed) + 0.02 * weighed;
    }

    private void apply(SpringPart part, PlatformNumbers numbers) {
        for (Axis a : Axis.ALL) {
            int i = a.ordinal();
            numbers.set("stiffness", part.group(), i, part.rate().get(a));
            numbers.set("damping", part.group(), i, part.damping().get(a));
            numbers.set("loss_factor", part.group(), i, part.loss().get(a));
        }
        numbers.set("mass", part.group(), -1, part.mass());
        if (part.preload() > 0) {
            numbers.set("preload", part.group(), -1, part.preload());
        }
    }
}

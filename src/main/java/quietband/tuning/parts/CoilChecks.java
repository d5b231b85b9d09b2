package quietband.tuning.parts;

import java.util.List;
import java.util.Locale;

/** What a coil spring has to stand: stress, solid length, sideways stability, surge. */
final class CoilChecks {

    private CoilChecks() { }

    static List<TargetCheck> of(String group, CoilFinder.Found found, CoilFinder.Need need) {
        CoilSpring coil = found.coil();
        double most = found.most(need.stroke());
        double stress = coil.stress(coil.rate() * most);
        double allowed = coil.material().allowed(coil.wire());
        double left = coil.freeLength() - most - coil.solidLength();
        return List.of(
            TargetCheck.of("stress", stress <= allowed, String.format(Locale.ROOT,
            "%s: %.0f MPa at the end of the stroke with Wahl factor %.3f, "
                + "%.0f MPa allowed (%.0f %% of the tensile strength)", group, stress / 1e6, coil.wahl(), allowed / 1e6,
                100 * coil.material().allowedShare()),
                "more springs, a longer and thicker one, or less travel: a higher natural frequency"),
            TargetCheck.of("solid_length", left > 0, String.format(Locale.ROOT,
            "%s: %.2f mm left before the coils touch, at the end of the stroke",
                group, 1e3 * left), "a longer spring"),
            TargetCheck.of("buckling", coil.buckling() > most, String.format(Locale.ROOT,
            "%s: %s, compressed %.2f mm at the most", group, Double.isInfinite(coil.buckling())
                ? "does not buckle before its coils touch"
                : String.format(Locale.ROOT, "buckles from %.2f mm on", 1e3 * coil.buckling()), 1e3 * most),
                "a shorter or wider spring"),
            TargetCheck.of("surge", coil.surgeHz() > need.topHz(), String.format(Locale.ROOT,
            "%s: first standing wave at %.4g Hz, band up to "
                + "%.4g Hz", group, coil.surgeHz(), need.topHz()),
                "lighter springs: more of them, less stroke, or a higher natural frequency"));
    }
}

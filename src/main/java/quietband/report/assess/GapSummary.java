package quietband.report.assess;

import java.util.List;
import quietband.report.file.Json;
import quietband.tuning.cures.CoverageGap;
import quietband.tuning.cures.Cure;
import quietband.tuning.cures.ValueChange;
import quietband.units.Amounts;

/** Gaps with causes and cures in a summary. */
final class GapSummary {

    private static final double PPB = 1e9;

    private GapSummary() { }

    static void write(Json json, List<CoverageGap> gaps) {
        json.array("gaps", () -> gaps.forEach(g -> json.object(() -> gap(json, g))));
    }

    private static void gap(Json json, CoverageGap g) {
        json.field("stack", g.stack().key()).field("from_hz", g.fromHz()).field("to_hz", g.toHz());
        json.object("worst", () -> json.field("frequency_hz", g.worst().frequencyHz()).field("axis", g.worst().axis())
            .field("residual_ppb_per_g", g.worst().residualPerG() * PPB)
            .field("limit_ppb_per_g", g.worst().limitPerG() * PPB).field("margin_db", g.worst().marginDb()));
        json.field("cause", g.cause()).field("residual_without_cause_ppb_per_g", g.withoutPerG() * PPB)
            .field("platform_amplification", g.amplification());
        json.array("cause_alone", () -> g.single().ifPresent(c -> json.object(() -> cure(json, c))));
        json.array("cause_with_another", () -> g.together().ifPresent(c -> json.object(() -> cure(json, c))));
        json.array("other_changes", () -> g.others().forEach(c -> json.object(() -> cure(json, c))));
    }

    private static void cure(Json json, Cure c) {
        json.field("change", c.key()).field("margin_db", c.marginDb());
        json.array("values", () -> c.settings().forEach(s -> json.object(() -> setting(json, s))));
        json.array("then_not_met", () -> c.missed().forEach(r -> json.item(r.name())));
    }

    private static void setting(Json json, ValueChange s) {
        json.field("of", s.of()).field("now", s.now()).field("just_holds", s.holds()).field("unit", s.dimension().base())
            .field("write", Amounts.print(s.holds(), s.dimension()));
    }
}

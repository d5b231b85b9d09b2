package quietband.report.assess;

import java.util.List;
import quietband.demand.RequirementResult;
import quietband.model.Axis;
import quietband.model.Stack;
import quietband.report.file.Json;
import quietband.report.file.Provenance;
import quietband.report.page.Caution;
import quietband.response.ModeProperties;
import quietband.response.travel.Travel;
import quietband.response.verdict.Assessment;
import quietband.response.verdict.StackVerdict;
import quietband.tuning.cures.CoverageGap;

/** The summary of an assessment as JSON, with the names that others rely on. */
public final class AssessmentSummary {

    private static final double PPB = 1e9;
    private static final double MM = 1e3;

    private AssessmentSummary() { }

    /**
     * The document.
     *
     * @param gaps with causes and cures
     */
    public static String json(Assessment a, Provenance from, List<CoverageGap> gaps) {
        Json json = new Json();
        json.object(() -> {
            from.fields(json);
            json.field("title", a.design().title());
            json.field("requirement_met", a.requirementMet().orElse(null));
            json.array("requirements", () -> a.requirements().forEach(r -> requirement(json, r)));
            json.field("fullest_stack", a.fullest().key());
            json.object("stacks", () -> a.verdicts().forEach(v -> stack(json, v)));
            GapSummary.write(json, gaps);
            json.array("modes", () -> a.modes().forEach(m -> mode(json, m)));
            a.travel().ifPresent(t -> json.object("travel", () -> travel(json, t)));
            json.object("vibration", () -> {
                for (Axis axis : Axis.ALL) {
                    json.object(axis.letter(), () -> json.field("rms_g", a.rmsG()[axis.ordinal()]));
                }
            });
            json.field("phase_jitter_rad", a.worstJitterRad());
            json.object("phase_jitter_rad_by_axis", () -> a.jitter().forEach(j -> json.field(j.row(), j.rmsRad())));
            json.array("tones", () -> a.tones().forEach(t -> json.object(() -> {
                json.field("name", t.name()).field("frequency_hz", t.frequencyHz()).field("axis", t.axis().letter());
                for (Stack s : Stack.of(a.design())) {
                    json.object(s.key(), () -> json.field("index_rad", t.index().get(s))
                        .field("level_dbc", t.levelDbc().get(s)).field("exact", t.exact(s)));
                }
                json.field("limit_dbc", t.limitDbc());
            })));
            json.array("warnings", () -> a.warnings().forEach(json::item));
            json.field("note", Caution.PREDICTION);
        });
        return json.text();
    }

    public static void requirement(Json json, RequirementResult r) {
        json.object(() -> {
            json.field("name", r.name()).field("met", r.met());
            if (r.hasMargin()) {
                json.field("margin_db", r.marginDb());
            } else {
                json.field("used_share", r.usedShare());
            }
            json.field("frequency_hz", r.frequencyHz()).field("axis", r.axis().isEmpty() ? null : r.axis())
                .field("value", r.value()).field("limit", r.limit()).field("unit", r.unit());
        });
    }

    private static void stack(Json json, StackVerdict v) {
        json.object(v.stack().key(), () -> {
            json.object("worst", () -> json.field("frequency_hz", v.worst().frequencyHz()).field("axis", v.worst().axis())
                .field("residual_ppb_per_g", v.worst().residualPerG() * PPB)
                .field("limit_ppb_per_g", v.worst().limitPerG() * PPB).field("margin_db", v.worst().marginDb()));
            json.object("coverage", () -> {
                json.field("share", v.share());
                pairs(json, "intervals_hz", v.intervals());
                pairs(json, "gaps_hz", v.gaps());
            });
        });
    }

    private static void pairs(Json json, String name, List<double[]> pairs) {
        json.array(name, () -> pairs.forEach(p -> json.pair(p[0], p[1])));
    }

    public static void mode(Json json, ModeProperties m) {
        json.object(() -> json.field("frequency_hz", m.frequencyHz()).field("damping_ratio", m.dampingRatio())
            .field("shape", m.shape()));
    }

    public static void travel(Json json, Travel t) {
        for (Axis a : Axis.ALL) {
            json.object(a.letter(), () -> json.field("sag_mm", t.sag().get(a) * MM)
                .field("random_3sigma_mm", t.random3Sigma().get(a) * MM)
                .field("sustained_mm", t.sustained().get(a) * MM).field("shock_mm", t.shock().get(a) * MM));
        }
    }
}

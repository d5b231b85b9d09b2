package quietband.report.assess;

import quietband.demand.RequirementResult;
import quietband.demand.ResidualPoint;
import quietband.model.Axis;
import quietband.model.Stack;
import quietband.report.file.Json;
import quietband.response.ModeProperties;
import quietband.response.travel.Travel;
import quietband.response.verdict.Assessment;
import quietband.response.verdict.StackVerdict;
import quietband.study.assess.DesignAssessment;
import quietband.tuning.cures.CoverageGap;
import quietband.tuning.cures.Cure;
import quietband.units.Amounts;

/** The summary of an assessment, with the names that others rely on. */
public final class AssessmentSummary {

    private static final double PPB = 1e9;
    private static final double MM = 1e3;

    private AssessmentSummary() { }

    static void fields(Json json, DesignAssessment study) {
        Assessment a = study.assessment();
        json.field("title", a.design().title()).field("requirement_met", a.requirementMet().orElse(null))
            .objects("requirements", a.requirements(), r -> requirement(json, r)).field("fullest_stack", a.fullest().key());
        json.object("stacks", () -> a.verdicts().forEach(v -> json.object(v.stack().key(), () -> stack(json, v))));
        json.objects("gaps", study.gaps(), g -> gap(json, g)).objects("modes", a.modes(), m -> mode(json, m));
        a.travel().ifPresent(t -> travel(json, t));
        json.object("vibration", () -> Axis.ALL.forEach(axis -> json.object(axis.letter(), () ->
            json.field("rms_g", a.rmsG()[axis.ordinal()]))));
        json.field("phase_jitter_rad", a.worstJitterRad());
        json.object("phase_jitter_rad_by_axis", () -> a.jitter().forEach(j -> json.field(j.row(), j.rmsRad())));
        json.objects("tones", a.tones(), t -> {
            json.field("name", t.name()).field("frequency_hz", t.frequencyHz()).field("axis", t.axis().letter());
            Stack.of(a.design()).forEach(s -> json.object(s.key(), () -> json.field("index_rad", t.index().get(s))
                .field("level_dbc", t.levelDbc().get(s)).field("exact", t.exact(s))));
            json.field("limit_dbc", t.limitDbc());
        });
        json.items("warnings", a.warnings());
    }

    /** A requirement and what came of it. */
    public static void requirement(Json json, RequirementResult r) {
        json.field("name", r.name()).field("met", r.met());
        json.field(r.hasMargin() ? "margin_db" : "used_share", r.hasMargin() ? r.marginDb() : r.usedShare())
            .field("frequency_hz", r.frequencyHz()).field("axis", r.axis().isEmpty() ? null : r.axis())
            .field("value", r.value()).field("limit", r.limit()).field("unit", r.unit());
    }

    private static void stack(Json json, StackVerdict v) {
        json.object("worst", () -> worst(json, v.worst()));
        json.object("coverage", () -> json.field("share", v.share()).pairs("intervals_hz", v.intervals()).pairs("gaps_hz", v.gaps()));
    }

    private static void worst(Json json, ResidualPoint w) {
        json.field("frequency_hz", w.frequencyHz()).field("axis", w.axis()).field("residual_ppb_per_g", w.residualPerG() * PPB)
            .field("limit_ppb_per_g", w.limitPerG() * PPB).field("margin_db", w.marginDb());
    }

    /** A mode of the platform. */
    public static void mode(Json json, ModeProperties m) {
        json.field("frequency_hz", m.frequencyHz()).field("damping_ratio", m.dampingRatio()).field("shape", m.shape());
    }

    /** The travel of the platform by axis. */
    public static void travel(Json json, Travel t) {
        json.object("travel", () -> Axis.ALL.forEach(a -> json.object(a.letter(), () -> json.field("sag_mm", t.sag().get(a) * MM)
            .field("random_3sigma_mm", t.random3Sigma().get(a) * MM).field("sustained_mm", t.sustained().get(a) * MM)
            .field("shock_mm", t.shock().get(a) * MM))));
    }

    private static void gap(Json json, CoverageGap g) {
        json.field("stack", g.stack().key()).field("from_hz", g.fromHz()).field("to_hz", g.toHz());
        json.object("worst", () -> worst(json, g.worst()));
        json.field("cause", g.cause()).field("residual_without_cause_ppb_per_g", g.withoutPerG() * PPB)
            .field("platform_amplification", g.amplification()).objects("cause_alone", g.single().stream().toList(), c -> cure(json, c))
            .objects("cause_with_another", g.together().stream().toList(), c -> cure(json, c))
            .objects("other_changes", g.others(), c -> cure(json, c));
    }

    private static void cure(Json json, Cure c) {
        json.field("change", c.key()).field("margin_db", c.marginDb()).objects("values", c.settings(), s ->
            json.field("of", s.of()).field("now", s.now()).field("just_holds", s.holds()).field("unit", s.dimension().base())
                .field("write", Amounts.print(s.holds(), s.dimension())))
            .items("then_not_met", c.missed().stream().map(RequirementResult::name).toList());
    }
}

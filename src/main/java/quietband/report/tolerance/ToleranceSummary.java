package quietband.report.tolerance;

import quietband.lot.Proportion;
import quietband.model.Requirement;
import quietband.report.file.Json;
import quietband.report.file.Provenance;
import quietband.report.page.Caution;
import quietband.tolerance.campaign.MonteCarloResult;
import quietband.tolerance.influence.ToleranceInfluence;
import quietband.tolerance.influence.ToleranceResult;
import quietband.tolerance.judge.RequirementKind;

/** The summary of a Monte Carlo as JSON, with the names that others rely on. */
final class ToleranceSummary {

    private ToleranceSummary() { }

    /** The document. */
    static String json(ToleranceResult f, Provenance from) {
        MonteCarloResult o = f.outcome();
        Json json = new Json();
        json.object(() -> {
            from.fields(json);
            json.field("title", f.plan().nominal().title());
            json.field("units", o.units()).field("partial", o.partial()).field("redrawn", o.redrawn());
            json.object("yield", () -> proportion(json, f.yieldIn(0)));
            json.object("yield_in_all_conditions", () -> proportion(json, f.yieldInAll()));
            json.array("conditions", () -> conditions(json, f));
            f.asked().ifPresent(asked -> json.object("yield_requirement", () -> asked(json, f, asked)));
            json.object("limit_factor", () -> {
                for (int share : new int[] {90, 95, 99}) {
                    json.field("yield_" + share, o.margins().limitFactor(share / 100.0));
                }
            });
            json.object("grid", () -> json.field("points", o.frequencies().length)
                .field("yield_on_points_alone", (double) o.evenlyMet() / o.units())
                .field("units_decided_otherwise", o.evenlyDiffers()));
            f.influence().ifPresent(i -> influence(json, i));
            f.likeliest().ifPresent(l -> json.object("likeliest_failing_unit", () -> {
                json.field("distance_sigma", l.distance());
                json.array("moved", () -> l.parts().forEach(json::item));
                json.array("failed", () -> l.failed().forEach(r -> json.item(r.name())));
            }));
            json.array("notes", () -> f.plan().notes().forEach(json::item));
            json.field("units_per_second", o.units() / f.seconds());
            json.field("note", Caution.PREDICTION);
        });
        return json.text();
    }

    private static void proportion(Json json, Proportion p) {
        json.field("estimate", p.estimate()).field("low", p.low()).field("high", p.high()).field("confidence", p.confidence())
            .field("met", p.good());
    }

    private static void conditions(Json json, ToleranceResult f) {
        for (int i = 0; i < f.outcome().conditions().size(); i++) {
            int c = i;
            json.object(() -> {
                json.field("name", f.outcome().conditions().get(c));
                json.object("yield", () -> proportion(json, f.yieldIn(c)));
                json.object("failed", () -> {
                    for (RequirementKind a : RequirementKind.values()) {
                        if (f.outcome().failed(c, a) > 0) {
                            json.field(a.key(), f.outcome().failed(c, a));
                        }
                    }
                });
            });
        }
    }

    private static void asked(Json json, ToleranceResult f, Requirement.Yield asked) {
        json.field("share", asked.share()).field("confidence", asked.confidence()).field("at_least", f.atLeast())
            .field("met", f.yieldMet().orElse(null));
        if (asked.share() < 1 && asked.confidence() < 1) {
            json.field("units_needed_without_failure", Proportion.unitsNeeded(asked.share(), asked.confidence(), 0));
        }
    }

    private static void influence(Json json, ToleranceInfluence influence) {
        json.object("influence", () -> {
            json.field("evaluations", influence.evaluations()).field("rows", ToleranceInfluence.ROWS)
                .field("halved_on_units", influence.halvedUnits());
            json.array("tolerances", () -> influence.lines().forEach(l -> json.object(() -> json.field("name", l.name())
                .field("first_order", l.sobol().first()).field("total", l.sobol().total()).field("rank_correlation", l.rank())
                .field("yield_from", l.from()).field("yield_halved", l.to()))));
        });
    }
}

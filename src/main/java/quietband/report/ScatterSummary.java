package quietband.report;

import quietband.model.Requirement;
import quietband.tolerance.Asked;
import quietband.tolerance.Findings;
import quietband.tolerance.Influence;
import quietband.tolerance.Outcome;
import quietband.tolerance.Proportion;

/** The summary of a Monte Carlo as JSON, with the names that others rely on. */
final class ScatterSummary {

    private ScatterSummary() { }

    /** The document. */
    static String json(Findings f, Provenance from) {
        Outcome o = f.outcome();
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

    private static void conditions(Json json, Findings f) {
        for (int i = 0; i < f.outcome().conditions().size(); i++) {
            int c = i;
            json.object(() -> {
                json.field("name", f.outcome().conditions().get(c));
                json.object("yield", () -> proportion(json, f.yieldIn(c)));
                json.object("failed", () -> {
                    for (Asked a : Asked.values()) {
                        if (f.outcome().failed(c, a) > 0) {
                            json.field(a.key(), f.outcome().failed(c, a));
                        }
                    }
                });
            });
        }
    }

    private static void asked(Json json, Findings f, Requirement.Yield asked) {
        json.field("share", asked.share()).field("confidence", asked.confidence()).field("at_least", f.atLeast())
            .field("met", f.yieldMet().orElse(null));
        if (asked.share() < 1 && asked.confidence() < 1) {
            json.field("units_needed_without_failure", Proportion.unitsNeeded(asked.share(), asked.confidence(), 0));
        }
    }

    private static void influence(Json json, Influence influence) {
        json.object("influence", () -> {
            json.field("evaluations", influence.evaluations()).field("rows", Influence.ROWS)
                .field("halved_on_units", influence.halvedUnits());
            json.array("tolerances", () -> influence.lines().forEach(l -> json.object(() -> json.field("name", l.name())
                .field("first_order", l.sobol().first()).field("total", l.sobol().total()).field("rank_correlation", l.rank())
                .field("yield_from", l.from()).field("yield_halved", l.to()))));
        });
    }
}

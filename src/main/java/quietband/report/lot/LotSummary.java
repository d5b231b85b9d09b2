package quietband.report.lot;

import java.util.List;
import quietband.lot.BuildCount;
import quietband.lot.ComponentLaw;
import quietband.lot.Proportion;
import quietband.lot.SortRule;
import quietband.lot.SortedLot;
import quietband.report.file.Json;
import quietband.report.file.Provenance;
import quietband.report.page.Caution;

/** The summary of a sorted lot as JSON, with the names that others rely on. */
final class LotSummary {

    private static final List<String> AXES = List.of("x", "y", "z");

    private LotSummary() { }

    /** The document. */
    static String json(SortedLot s, Provenance from) {
        SortRule rule = s.rule();
        Json json = new Json();
        json.object(() -> {
            from.fields(json);
            json.field("count", s.count()).field("accepted", s.acceptedCount()).field("bad_rows", s.lot().bad().size());
            json.field("bad_rows_refused", s.refused()).field("by", rule.by().name().toLowerCase(java.util.Locale.ROOT));
            json.field("limit_ppb_per_g", rule.limitPpbPerG()).field("guard_ppb_per_g", rule.guardPpbPerG());
            json.object("yield", () -> proportion(json, s.yield()));
            json.array("classes", () -> classes(json, s));
            json.object("units_to_build", () -> {
                json.field("good", rule.wanted()).field("confidence", rule.confidence());
                built(json, "at_estimate", BuildCount.of(rule.wanted(), s.yield().estimate(), rule.confidence()));
                built(json, "at_low", BuildCount.of(rule.wanted(), s.yield().atLeast(), rule.confidence()));
            });
            s.risks().ifPresent(r -> json.object("risks", () -> json.field("accepted_bad_share", r.acceptedBad())
                .field("refused_good_share", r.refusedGood())));
            s.law().ifPresent(l -> json.object("law", () -> law(json, s, l)));
            json.field("note", Caution.PREDICTION);
        });
        return json.text();
    }

    private static void proportion(Json json, Proportion p) {
        json.field("estimate", p.estimate()).field("low", p.low()).field("high", p.high()).field("confidence", p.confidence());
    }

    private static void built(Json json, String name, long n) {
        json.field(name, n < 0 ? Double.NaN : n);
    }

    private static void classes(Json json, SortedLot s) {
        int k = 0;
        for (SortedLot.Edge e : s.edges()) {
            String name = LotText.className(s, k++);
            json.object(() -> {
                json.field("class", name).field("edge_ppb_per_g", e.edgePpbPerG()).field("units", e.inClass());
                json.object("share_up_to", () -> proportion(json, e.share()));
                json.field("law_share_up_to", e.lawShare()).field("law_standard_error", e.lawError());
                json.field("built_per_good", e.builtPerGood()).field("law_built_per_good", 1 / e.lawShare());
            });
        }
    }

    private static void law(Json json, SortedLot s, ComponentLaw l) {
        for (int i = 0; i < 3; i++) {
            int axis = i;
            json.object(AXES.get(i), () -> json.field("mean_ppb_per_g", l.mean()[axis]).field("deviation_ppb_per_g", l.sigma(axis)));
        }
        json.object("correlation", () -> json.field("xy", l.correlation(0, 1)).field("xz", l.correlation(0, 2))
            .field("yz", l.correlation(1, 2)));
        json.field("share_within_limit", s.lawShare(s.rule().limitPpbPerG()));
        json.field("standard_error", s.lawError(s.rule().limitPpbPerG()));
        json.field("largest_distance", s.lawDistance());
    }
}

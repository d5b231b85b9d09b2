package quietband.report.shaker;

import java.util.List;
import quietband.identification.shaker.AxisSensitivity;
import quietband.identification.shaker.ResonatorSensitivity;
import quietband.identification.shaker.ShakerRules;
import quietband.identification.shaker.TipOver;
import quietband.report.file.Json;
import quietband.report.file.Provenance;

/** The summary of a run on the shaker as JSON, with the names that others rely on. */
final class ShakerSummary {

    private ShakerSummary() { }

    /** The document: one resonator's figures at the top level too when there is only one. */
    static String json(List<ResonatorSensitivity> units, ShakerRules rules, Provenance from) {
        Json json = new Json();
        json.object(() -> {
            from.fields(json);
            json.field("carrier_hz", rules.carrierHz()).field("multiplier", rules.multiplier()).field("count", units.size());
            if (units.size() == 1) {
                unit(json, units.get(0));
            }
            json.array("resonators", () -> units.forEach(u -> json.object(() -> {
                json.field("serial", u.serial());
                unit(json, u);
            })));
        });
        return json.text();
    }

    private static void unit(Json json, ResonatorSensitivity u) {
        json.field("vector_ppb_per_g", u.vectorPerG() * 1e9).field("vector_uncertainty_ppb_per_g", u.vectorSigmaPerG() * 1e9)
            .field("vector_half_interval_ppb_per_g", u.vectorHalfPerG() * 1e9).field("whole", u.whole());
        json.object("axes", () -> u.axes().forEach((axis, a) -> json.object(axis.letter(), () -> axis(json, a))));
        json.array("notes", () -> u.notes().forEach(json::item));
    }

    private static void axis(Json json, AxisSensitivity a) {
        json.field("mean_ppb_per_g", a.meanPerG() * 1e9).field("sign_known", a.signKnown())
            .field("uncertainty_ppb_per_g", a.sigmaPerG() * 1e9).field("half_interval_ppb_per_g", a.halfPerG() * 1e9)
            .field("spread_ppb_per_g", a.spreadPerG() * 1e9).field("readings", a.points().size()).field("used", a.used());
        TipOver t = a.turnOver();
        if (t != null) {
            json.object("turn_over", () -> json.field("readings", t.readings()).field("sensitivity_ppb_per_g", t.perG() * 1e9)
                .field("uncertainty_ppb_per_g", t.sigmaPerG() * 1e9).field("drift_ppb_per_hour", t.driftPerS() * 3600e9));
        }
        json.array("resonances", () -> a.resonances().forEach(r -> json.object(() -> json.field("frequency_hz", r.frequencyHz())
            .field("uncertainty_hz", r.sigmaHz()).field("q", r.q()).field("share", r.share())
            .field("above_readings", r.beyond()))));
        json.array("notes", () -> a.notes().forEach(json::item));
    }
}

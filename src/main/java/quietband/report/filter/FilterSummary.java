package quietband.report.filter;

import java.util.Optional;
import quietband.demand.ResidualPoint;
import quietband.filter.design.FilterResult;
import quietband.filter.fixedpoint.FilterPeaks;
import quietband.model.Axis;
import quietband.model.DigitalFilter;
import quietband.report.file.Json;
import quietband.report.file.Provenance;
import quietband.report.page.Caution;
import quietband.response.verdict.StackVerdict;

/** The summary of a filter's design as JSON. */
final class FilterSummary {

    private FilterSummary() { }

    static String json(FilterResult r, Provenance from, PortReport port, Optional<MeasuredReport> measured,
                       FactsReport facts) {
        Json json = new Json();
        json.object(() -> {
            from.fields(json);
            json.field("form", r.task().form().key()).field("count", r.task().count())
                .field("goal", r.task().goal().key()).field("max_gain_db", decibels(r.task().maxGain()));
            json.object("residual_before", () -> verdict(json, FilterResult.fullest(r.before())));
            json.object("residual_after", () -> verdict(json, FilterResult.fullest(r.after())));
            json.field("noise_gain_db", noiseGainDb(r));
            json.object("sum_of_squares", () -> json.field("points", r.task().grid().length)
                .field("norm_ppb_per_g", r.found().norm() * 1e9)
                .field("norm_without_bound_ppb_per_g", r.found().normUnbounded() * 1e9));
            json.field("value", r.found().value()).field("value_with_6_db_more_gain", r.found().relaxed());
            json.object("filters", () -> {
                for (Axis axis : Axis.ALL) {
                    json.object(axis.letter(), () -> filter(json, r, axis.ordinal()));
                }
            });
            measured.ifPresent(m -> m.fields(json));
            port.fields(json);
            facts.fields(json);
            json.field("note", Caution.PREDICTION);
        });
        return json.text();
    }

    private static void filter(Json json, FilterResult r, int i) {
        DigitalFilter filter = r.found().filters().get(i);
        json.field("largest_coefficient", FilterPeaks.largest(filter))
            .field("peak_gain_db", decibels(r.found().peaks().get(i).gain()))
            .field("peak_gain_frequency_hz", r.found().peaks().get(i).frequencyHz())
            .field("noise_gain_db", 10 * StrictMath.log10(FilterPeaks.noiseGain(filter)));
    }

    /** Mean of |F|^2 up to half the sample rate of the filter that has most, dB. */
    static double noiseGainDb(FilterResult r) {
        double most = 0;
        for (DigitalFilter filter : r.found().filters()) {
            most = Math.max(most, FilterPeaks.noiseGain(filter));
        }
        return 10 * StrictMath.log10(most);
    }

    static void verdict(Json json, StackVerdict v) {
        ResidualPoint w = v.worst();
        json.field("worst_ratio", FilterResult.worstRatio(v)).field("stack", v.stack().key())
            .field("frequency_hz", w.frequencyHz()).field("axis", w.axis()).field("residual_ppb_per_g", w.residualPerG() * 1e9)
            .field("limit_ppb_per_g", w.limitPerG() * 1e9).field("margin_db", w.marginDb());
    }

    static double decibels(double ratio) {
        return 20 * StrictMath.log10(ratio);
    }
}

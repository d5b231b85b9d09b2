package quietband.report.lot;

import java.io.IOException;
import java.util.List;
import java.util.Locale;
import java.util.stream.IntStream;
import quietband.lot.MeasuredLot;
import quietband.lot.Proportion;
import quietband.lot.SortRule;
import quietband.lot.SortedLot;
import quietband.model.Axis;
import quietband.report.file.CsvWriter;
import quietband.report.file.Json;
import quietband.report.file.Provenance;
import quietband.report.page.Report;
import quietband.study.lot.SortStudy;

/** A sorted lot: the units with their class, the accepted ones as a lot, tables, page, summary. */
public final class LotReport {

    private LotReport() { }

    /** The report. */
    public static Report of(SortStudy study, Provenance from) {
        SortedLot sorted = study.sorted();
        MeasuredLot lot = sorted.lot();
        Report report = new Report("Lot " + from.input(), from).fromReadings();
        report.table("sorted.csv", List.of("serial", "x_ppb_per_g", "y_ppb_per_g", "z_ppb_per_g", "vector_ppb_per_g", "worst_axis",
            "worst_axis_ppb_per_g", "class", "accepted", "chance_within_limit", "line", "note"), table -> units(table, study));
        report.table("accepted.csv", "serial,x_ppb_per_g,y_ppb_per_g,z_ppb_per_g", IntStream.range(0, lot.size())
            .filter(i -> sorted.accepted()[i]).boxed().toList(), (table, i) -> values(table.cell(lot.serials()[i]), lot, i));
        report.table("classes.csv", "class,edge_ppb_per_g,units,share_up_to,low,high,law_share_up_to,law_standard_error,built_per_good,"
            + "law_built_per_good,units_to_build,units_to_build_cautious", study.classes(), (table, k) -> {
                SortedLot.Edge e = k.edge();
                table.cell(LotText.className(sorted, e)).cell(e.edgePpbPerG()).whole(e.inClass()).cell(e.share().estimate())
                    .cell(e.share().low()).cell(e.share().high()).cell(e.fittedShare()).cell(e.fittedError()).cell(e.builtPerGood())
                    .cell(1 / e.fittedShare()).cell(built(k.build())).cell(built(k.cautious()));
            });
        report.table("limits.csv", "limit_ppb_per_g,share,low,high,law_share,law_standard_error,built_per_good,units_to_build",
            study.limits(), (table, l) -> table.cell(l.limitPpbPerG()).cell(l.share().estimate()).cell(l.share().low())
                .cell(l.share().high()).cell(l.fittedShare()).cell(l.fittedError()).cell(1 / l.share().estimate()).cell(built(l.build())));
        if (!lot.bad().isEmpty()) {
            report.table("bad_rows.csv", "line,serial,reason,treated_as", lot.bad(), (table, b) -> table.whole(b.line())
                .known(b.serial()).cell(b.reason()).cell(sorted.refused() > 0 ? "refused" : b.usable() ? "judged" : "unjudged"));
        }
        if (sorted.within().isPresent()) {
            report.table("guard.csv", "guard_ppb_per_g,accepted_share,accepted_bad_share,refused_good_share", study.guards(),
                (table, g) -> table.cell(g.guardPpbPerG()).cell(g.accepted().estimate()).cell(g.risks().acceptedBad())
                    .cell(g.risks().refusedGood()));
        }
        report.summary(json -> fields(json, study));
        LotText.say(report, study, from);
        return report;
    }

    private static double built(long n) {
        return n < 0 ? Double.NaN : n;
    }

    private static CsvWriter values(CsvWriter table, MeasuredLot lot, int i) {
        return table.cell(lot.valuePpbPerG()[0][i]).cell(lot.valuePpbPerG()[1][i]).cell(lot.valuePpbPerG()[2][i]);
    }

    /** Every row of the file in its order, the bad ones among them. */
    private static void units(CsvWriter table, SortStudy study) throws IOException {
        SortedLot sorted = study.sorted();
        List<String> names = sorted.edges().stream().map(e -> LotText.className(sorted, e)).toList();
        List<MeasuredLot.BadRow> bad = sorted.lot().bad();
        int[] lines = sorted.lot().lines();
        int unit = 0;
        int wrong = 0;
        while (unit < lines.length || wrong < bad.size()) {
            boolean badNext = wrong < bad.size() && (unit == lines.length || bad.get(wrong).line() <= lines[unit]);
            boolean both = badNext && unit < lines.length && bad.get(wrong).line() == lines[unit];
            if (badNext && !both) {
                MeasuredLot.BadRow row = bad.get(wrong++);
                table.known(row.serial()).known("").known("").known("").known("").known("").known("")
                    .cell(sorted.refused() > 0 ? "refused" : "unjudged").yes(false).known("").whole(row.line()).cell(row.reason()).end();
            } else {
                unit(table, sorted, unit, names.get(sorted.classOf()[unit++]), both ? bad.get(wrong++).reason() : "");
            }
        }
    }

    private static void unit(CsvWriter table, SortedLot sorted, int i, String in, String note) throws IOException {
        MeasuredLot lot = sorted.lot();
        int worst = lot.worstAxis(i);
        values(table.cell(lot.serials()[i]), lot, i).cell(lot.vector(i)).cell(Axis.ALL.get(worst).letter())
            .cell(Math.abs(lot.valuePpbPerG()[worst][i])).cell(in).yes(sorted.accepted()[i])
            .cell(sorted.within().map(w -> w[i]).orElse(Double.NaN)).whole(lot.lines()[i]).known(note).end();
    }

    private static void fields(Json json, SortStudy study) {
        SortedLot s = study.sorted();
        SortRule rule = s.rule();
        json.field("count", s.count()).field("accepted", s.acceptedCount()).field("bad_rows", s.lot().bad().size());
        json.field("bad_rows_refused", s.refused()).field("by", rule.by().name().toLowerCase(Locale.ROOT));
        json.field("limit_ppb_per_g", rule.limitPpbPerG()).field("guard_ppb_per_g", rule.guardPpbPerG());
        json.object("yield", () -> proportion(json, s.yield()));
        json.objects("classes", study.classes(), k -> {
            SortedLot.Edge e = k.edge();
            json.field("class", LotText.className(s, e)).field("edge_ppb_per_g", e.edgePpbPerG()).field("units", e.inClass());
            json.object("share_up_to", () -> proportion(json, e.share()));
            json.field("law_share_up_to", e.fittedShare()).field("law_standard_error", e.fittedError());
            json.field("built_per_good", e.builtPerGood()).field("law_built_per_good", 1 / e.fittedShare());
        });
        json.object("units_to_build", () -> json.field("good", rule.wanted()).field("confidence", rule.confidence())
            .field("at_estimate", built(study.build())).field("at_low", built(study.cautious())));
        study.risks().ifPresent(r -> json.object("risks", () -> json.field("accepted_bad_share", r.acceptedBad())
            .field("refused_good_share", r.refusedGood())));
        s.fitted().ifPresent(l -> json.object("law", () -> {
            Axis.ALL.forEach(a -> json.object(a.letter(), () -> json.field("mean_ppb_per_g", l.mean()[a.ordinal()])
                .field("deviation_ppb_per_g", l.sigma(a.ordinal()))));
            json.object("correlation", () -> json.field("xy", l.correlation(0, 1)).field("xz", l.correlation(0, 2))
                .field("yz", l.correlation(1, 2)));
            json.field("share_within_limit", study.atLimit().fittedShare()).field("standard_error", study.atLimit().fittedError())
                .field("largest_distance", study.distance());
        }));
    }

    private static void proportion(Json json, Proportion p) {
        json.field("estimate", p.estimate()).field("low", p.low()).field("high", p.high()).field("confidence", p.confidence());
    }
}

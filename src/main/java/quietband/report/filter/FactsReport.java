package quietband.report.filter;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.stream.Collectors;
import quietband.filter.allowed.AllowedErrors.Kind;
import quietband.filter.allowed.Crossover;
import quietband.filter.allowed.PolarityCheck;
import quietband.filter.design.AddedNoise;
import quietband.filter.design.FilterFacts;
import quietband.filter.fixedpoint.FixedDesign;
import quietband.filter.fixedpoint.FixedPoint;
import quietband.filter.fixedpoint.FoundFilters;
import quietband.model.Axis;
import quietband.report.file.Json;
import quietband.report.file.NumberFormat;
import quietband.report.file.QuantityText;
import quietband.report.page.Caution;
import quietband.report.page.Report;
import quietband.study.filter.FilterDesign;

/** What is told of a filter beside its residual: bounds, weights and signs, allowed errors, crossover, noise, whole numbers. */
final class FactsReport {

    private static final String SIGN = "Sign: weight x sensed acceleration is taken away, so +1 g puts minus volts_per_g (weights.csv) on "
        + "the port.";

    private FactsReport() { }

    /** Tables, charts, the lines for a terminal and the parts of the page. */
    static void say(Report report, FilterDesign d) {
        FilterFacts facts = d.facts();
        report.table("allowed.csv", "frequency_hz,axis,gain_percent,phase_deg,delay_us", d.allowed().rows(), (table, a) ->
            table.cell(a.frequencyHz()).cell(a.axis().letter()).cell(100 * a.gain()).cell(Math.toDegrees(a.phase()))
                .cell(1e6 * a.delay()));
        report.table("weights.csv", "axis,ppb_per_g,volts_per_g,counts_per_g", d.sensors(), (table, s) ->
            table.cell(s.axis().letter()).cell(1e9 * s.weightPerG()).cell(s.voltsPerG()).cell(s.countsPerG()));
        report.table("crossover.csv", "more_delay_us,crossover_hz,cancelled_holds_to_hz,margin_db", facts.handOffs(), (table, h) ->
            table.cell(1e6 * h.delay()).cell(h.frequencyHz()).cell(h.holdsTo()).cell(h.marginDb()));
        double rate = d.result().changed().cancellation().orElseThrow().path().sampleRateHz();
        facts.fixed().ifPresent(f -> report.table("firmware.csv", FirmwareTable.COLUMNS, table -> FirmwareTable.write(table, f, rate)));
        List<String> bench = d.bench().stream().map(FactsReport::bench).toList();
        report.lines(binding(d)).lines(allowed(facts)).line(handOff(facts)).line(quiet(facts)).line(words(facts)).line("").line(SIGN)
            .lines(bench).line(String.join(" ", Caution.paragraphs(d.result().changed())));
        report.part("Before and after").say(binding(d)).chart(FilterCharts.residual(d));
        report.part("Filters").say("Ideal is what would leave nothing on any axis at that frequency, whether a device can have it or not.",
            words(facts) + (facts.fixed().isEmpty() ? "."
            : " has integers with coefficient = integer / 2^shift; the word behind a row stands for its value / "
            + "2^scale_log2 (counted in b_shift), so that no input overflows it; the last one is to be shifted left by its scale."))
            .table("Filters", List.of("sensor", "largest coefficient", "peak gain"), d.sensors().stream().map(s -> List.of(
                s.axis().letter(), NumberFormat.brief(s.largest(), 5), FilterReport.peak(s))).toList())
            .charts(FilterCharts.responses(d));
        allowed(report, d);
        report.part("Crossover").say("Above the crossover isolated is better than cancelled, on the worst axis. Delay "
            + "is added to every axis.", quiet(facts)).table("Delay moves the crossover", List.of("more delay", "crossover",
            "cancelled holds to", "margin, combined"), facts.handOffs().stream().map(FactsReport::row).toList());
        report.part("Weights and polarity").say(SIGN).say(bench).table("Weights; counts are those of the sensor's converter",
            List.of("axis", "ppb/g", "V/g at the port", "counts/g"), d.sensors().stream().map(s -> List.of(s.axis().letter(),
            NumberFormat.brief(1e9 * s.weightPerG(), 5), NumberFormat.brief(s.voltsPerG(), 5), NumberFormat.brief(s.countsPerG(), 6)))
            .toList());
    }

    private static List<String> binding(FilterDesign d) {
        FoundFilters found = d.result().found();
        List<String> lines = new ArrayList<>();
        for (FilterFacts.Binding b : d.facts().binding()) {
            lines.add(switch (b.condition()) {
                case "max_gain" -> NumberFormat.text("active constraint: the largest gain of filter %s, %.2f dB, at %s", b.of(),
                    FilterReport.decibels(d.result().task().maxGain()), QuantityText.hz(b.frequencyHz()));
                case "above_no_cancellation" -> NumberFormat.text(
                    "active constraint: phase noise above no cancellation, row %s, %.4f of 0.01 dB at %s", b.of(), b.used() * 0.01,
                    QuantityText.hz(b.frequencyHz()));
                default -> NumberFormat.text("active constraint: the tuning port swings %.0f %% of its range", 100 * b.used());
            });
        }
        if (!Double.isNaN(found.relaxed())) {
            lines.add(NumberFormat.text("price of the gain bound: %s instead of %s with 6 dB more",
                NumberFormat.brief(found.value(), 5), NumberFormat.brief(found.relaxed(), 5)));
        } else if (found.normUnbounded() > 0) {
            double price = found.norm() / found.normUnbounded();
            lines.add("price of bounds and small taps: residual norm " + (price < 10 ? NumberFormat.text(
                "%.2f %% above the least without any", 100 * (price - 1)) : NumberFormat.brief(1e9 * found.norm(), 4)
                + " ppb/g in place of " + NumberFormat.brief(1e9 * found.normUnbounded(), 4) + " without any"));
        }
        return lines.isEmpty() ? List.of("no constraint is active") : lines;
    }

    private static List<String> allowed(FilterFacts facts) {
        if (facts.least().isEmpty()) {
            return List.of("allowed errors: none, the model has no limit of the residual");
        }
        return Axis.ALL.stream().map(axis -> "allowed, alone, sensor " + axis.letter() + ":" + facts.least().stream()
            .filter(l -> l.axis() == axis).map(l -> (l.kind() == Kind.GAIN ? " gain " : l.kind() == Kind.PHASE ? ", phase " : ", delay ")
                + (Double.isFinite(l.value()) ? amount(l.kind(), l.value()) + " at " + QuantityText.hz(l.frequencyHz()) : "any"))
            .collect(Collectors.joining())).toList();
    }

    private static String amount(Kind kind, double v) {
        return switch (kind) {
            case GAIN -> NumberFormat.text("%+.3f %%", 100 * v);
            case PHASE -> NumberFormat.text("%+.3f deg", Math.toDegrees(v));
            case DELAY -> NumberFormat.text("%+.3f us", 1e6 * v);
        };
    }

    private static String handOff(FilterFacts facts) {
        Crossover now = facts.handOffs().get(0);
        if (Double.isNaN(now.frequencyHz())) {
            return "no platform takes over" + (Double.isNaN(now.holdsTo()) ? "" : "; the cancellation holds to "
                + QuantityText.hz(now.holdsTo()));
        }
        Crossover late = facts.handOffs().stream().filter(h -> h.delay() == 10e-6).findFirst().orElse(now);
        return "the platform takes over from the cancellation at " + place(now) + ", with 10 us more delay at " + place(late);
    }

    private static String place(Crossover h) {
        return Double.isInfinite(h.frequencyHz()) ? "no frequency of the band" : QuantityText.hz(h.frequencyHz());
    }

    private static List<String> row(Crossover h) {
        return List.of(NumberFormat.text("%.0f us", 1e6 * h.delay()), Double.isNaN(h.frequencyHz()) ? "no platform" : place(h),
            Double.isNaN(h.holdsTo()) ? "-" : QuantityText.hz(h.holdsTo()),
            Double.isNaN(h.marginDb()) ? "-" : QuantityText.db(h.marginDb()));
    }

    private static String quiet(FilterFacts facts) {
        AddedNoise q = facts.quiet();
        String rise = Double.isNaN(q.riseDb()) ? "" : NumberFormat.text(" (%.2f dB over the static noise at %s)", q.riseDb(),
            QuantityText.hz(q.frequencyHz()));
        return NumberFormat.text("noise added to a unit at rest: %s mrad rms%s", NumberFormat.brief(1e3 * q.addedRad(), 4), rise);
    }

    private static String words(FilterFacts facts) {
        if (facts.fixed().isEmpty()) {
            return facts.bits() > FixedPoint.LONGEST ? "rounding: no word is long enough to cost less than 0.5 dB"
                : "rounding costs less than 0.5 dB with words of " + facts.bits() + " bits and more (--bits)";
        }
        FixedDesign f = facts.fixed().get();
        return NumberFormat.text("words of %d bits: coefficients cost %.3f dB of the worst ratio%s; firmware.csv",
            f.filters().get(0).bits(), f.costDb(), Double.isNaN(f.noiseDb()) ? "" : NumberFormat.text(
                ", rounding of signals is %.1f dB over sensors and converter at %s", f.noiseDb(), QuantityText.hz(f.noiseHz())));
    }

    private static String bench(FilterDesign.BenchSign b) {
        PolarityCheck p = b.check();
        return NumberFormat.text("bench %s: cancellation off, %s turned from horizontal to up (+1 g) moves the frequency by %+.3f "
            + "ppb; shaken with %s g peak at %s (begin with %s g), sidebands at the output are "
            + "%.1f dBc off, %.1f dBc on, and %.1f dBc on with the sign "
            + "reversed", p.axis().letter(), p.axis().letter(), 1e9 * b.weightPerG(), NumberFormat.brief(b.peakG(), 2),
            QuantityText.hz(p.frequencyHz()), NumberFormat.brief(b.startG(), 2), b.offDbc(),
            b.onDbc(), b.wrongDbc());
    }

    static void fields(Json json, FilterDesign d) {
        FilterFacts facts = d.facts();
        json.objects("binding", facts.binding(), b -> json.field("condition", b.condition()).field("of", b.of())
            .field("frequency_hz", b.frequencyHz()).field("used_share", b.used()));
        json.object("allowed", () -> {
            for (Axis axis : facts.least().isEmpty() ? List.<Axis>of() : Axis.ALL) {
                json.object(axis.letter(), () -> facts.least().stream().filter(l -> l.axis() == axis).forEach(l -> {
                    String name = l.kind() == Kind.GAIN ? "gain_percent" : l.kind() == Kind.PHASE ? "phase_deg" : "delay_us";
                    double scale = l.kind() == Kind.GAIN ? 100 : l.kind() == Kind.PHASE ? Math.toDegrees(1) : 1e6;
                    json.field(name, scale * l.value()).field(name.substring(0, name.indexOf('_')) + "_frequency_hz", l.frequencyHz());
                }));
            }
        });
        json.objects("crossover", facts.handOffs(), h -> json.field("more_delay_us", 1e6 * h.delay()).field("frequency_hz", h.frequencyHz())
            .field("cancelled_holds_to_hz", h.holdsTo()).field("margin_db", h.marginDb()));
        AddedNoise q = facts.quiet();
        json.object("static_unit", () -> json.field("added_mrad", 1e3 * q.addedRad()).field("static_mrad", 1e3 * q.staticRad())
            .field("rise_db", q.riseDb()).field("rise_frequency_hz", q.frequencyHz()));
        json.field("word_bits_needed", facts.bits() > FixedPoint.LONGEST ? Double.NaN : facts.bits());
        facts.fixed().ifPresent(f -> json.object("fixed_point", () -> json.field("bits", f.filters().get(0).bits())
            .field("cost_db", f.costDb()).field("signal_rounding_over_sensor_db", f.noiseDb())
            .field("signal_rounding_frequency_hz", f.noiseHz())));
    }

    private static void allowed(Report report, FilterDesign d) {
        Report.Part part = report.part("Allowed errors");
        if (d.allowed().least().isEmpty()) {
            part.say(allowed(d.facts()));
            return;
        }
        part.say("Each alone, everything else as the model stands, until the worst axis meets the limit. The values are those to write "
            + "into cancellation.error. Where it takes least over the band:").table("Allowed errors", List.of("sensor", "error",
            "model has", "from", "to", "at"), d.allowed().least().stream().map(t -> List.of(t.least().axis().letter(),
            t.least().kind().name().toLowerCase(Locale.ROOT), amount(t.least().kind(), t.now()), end(t.least().kind(), t.span().low()),
            end(t.least().kind(), t.span().high()), QuantityText.hz(t.least().frequencyHz()))).toList());
        d.allowed().region().map(FilterCharts::region).ifPresent(part::chart);
    }

    private static String end(Kind kind, double v) {
        return Double.isFinite(v) ? amount(kind, v) : "any";
    }
}

package quietband.report.filter;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import quietband.filter.allowed.AllowedErrors;
import quietband.filter.allowed.AllowedErrors.Kind;
import quietband.filter.allowed.Crossover;
import quietband.filter.allowed.PolarityCheck;
import quietband.filter.design.AddedNoise;
import quietband.filter.design.FilterFacts;
import quietband.filter.design.FilterResult;
import quietband.filter.fixedpoint.FixedDesign;
import quietband.filter.fixedpoint.FixedPoint;
import quietband.model.Axis;
import quietband.model.Design;
import quietband.oscillator.Sidebands;
import quietband.report.file.Json;
import quietband.report.file.NumberFormat;
import quietband.report.file.QuantityText;
import quietband.report.file.ResultDirectory;
import quietband.report.page.CommandPage;
import quietband.report.page.PageTable;

/** What is told of a filter beside its residual: bounds, weights and signs, allowed errors, hand-off, noise, whole numbers. */
final class FactsReport {

    private final FilterResult result;
    private final FilterFacts facts;
    private final Design design;
    private final List<PolarityCheck> polarity;
    private final List<FilterCharts.Drawn> charts;

    FactsReport(FilterResult result, FilterFacts facts) {
        this.result = result;
        this.facts = facts;
        this.design = result.changed();
        this.polarity = PolarityCheck.of(design);
        this.charts = new FilterCharts(result).all(facts);
    }

    void writeTo(ResultDirectory directory) {
        directory.write("allowed.csv", w -> FilterTables.allowed(w, facts.allowed(), result.task().grid()));
        directory.write("weights.csv", w -> FilterTables.weights(w, design));
        directory.write("hand_off.csv", w -> FilterTables.handOff(w, facts));
        double rate = design.cancellation().orElseThrow().path().sampleRateHz();
        facts.fixed().ifPresent(f -> directory.write("firmware.csv", w -> FilterTables.firmware(w, f, rate)));
        charts.forEach(c -> directory.write(c.name() + ".svg", w -> w.write(c.svg())));
    }

    /** For a terminal. */
    List<String> lines() {
        List<String> lines = new ArrayList<>(binding());
        lines.addAll(allowedLines());
        lines.add(handOff());
        lines.add(quiet());
        lines.add(words());
        lines.add("");
        lines.add(sign());
        polarity.forEach(p -> lines.add(bench(p)));
        return lines;
    }

    private List<String> binding() {
        List<String> lines = new ArrayList<>();
        for (FilterFacts.Binding b : facts.binding()) {
            lines.add(switch (b.condition()) {
                case "max_gain" -> String.format(Locale.ROOT, "binds: the largest gain of filter %s, %.2f dB, at %s", b.of(),
                    FilterSummary.decibels(result.task().maxGain()), QuantityText.hz(b.frequencyHz()));
                case "above_no_correction" -> String.format(Locale.ROOT,
                    "binds: phase noise above no correction, row %s, %.4f of 0.01 dB at %s", b.of(), b.used() * 0.01,
                    QuantityText.hz(b.frequencyHz()));
                default -> String.format(Locale.ROOT, "binds: the tuning port swings %.0f %% of its range", 100 * b.used());
            });
        }
        if (!Double.isNaN(result.found().relaxed())) {
            lines.add(String.format(Locale.ROOT, "price of the gain bound: %s instead of %s with 6 dB more", NumberFormat.brief(
                result.found().value(), 5), NumberFormat.brief(result.found().relaxed(), 5)));
        } else if (result.found().normUnbounded() > 0) {
            double price = result.found().norm() / result.found().normUnbounded();
            lines.add("price of bounds and small taps: residual norm " + (price < 10 ? String.format(Locale.ROOT,
                "%.2f %% above the least without any", 100 * (price - 1)) : NumberFormat.brief(1e9 * result.found().norm(), 4)
                + " ppb/g in place of " + NumberFormat.brief(1e9 * result.found().normUnbounded(), 4) + " without any"));
        }
        return lines.isEmpty() ? List.of("no condition binds") : lines;
    }

    private List<String> allowedLines() {
        if (facts.least().isEmpty()) {
            return List.of("allowed errors: none, the model has no limit of the residual");
        }
        List<String> lines = new ArrayList<>();
        for (Axis axis : Axis.ALL) {
            StringBuilder text = new StringBuilder("allowed, alone, sensor " + axis.letter() + ":");
            for (AllowedErrors.Least l : facts.least()) {
                if (l.axis() == axis) {
                    text.append(l.kind() == Kind.GAIN ? " gain " : l.kind() == Kind.PHASE ? ", phase " : ", delay ")
                        .append(Double.isFinite(l.value()) ? amount(l.kind(), l.value()) + " at "
                        + QuantityText.hz(l.frequencyHz()) : "any");
                }
            }
            lines.add(text.toString());
        }
        return lines;
    }

    private static String amount(Kind kind, double v) {
        return switch (kind) {
            case GAIN -> String.format(Locale.ROOT, "%+.3f %%", 100 * v);
            case PHASE -> String.format(Locale.ROOT, "%+.3f deg", Math.toDegrees(v));
            case DELAY -> String.format(Locale.ROOT, "%+.3f us", 1e6 * v);
        };
    }

    private String handOff() {
        Crossover now = facts.handOffs().get(0);
        if (Double.isNaN(now.frequencyHz())) {
            return "no platform takes over" + (Double.isNaN(now.holdsTo()) ? "" : "; the correction holds to "
                + QuantityText.hz(now.holdsTo()));
        }
        Crossover late = facts.handOffs().stream().filter(h -> h.delay() == 10e-6).findFirst().orElse(now);
        return "the platform takes over from the correction at " + place(now) + ", with 10 us more delay at " + place(late);
    }

    private static String place(Crossover h) {
        return Double.isInfinite(h.frequencyHz()) ? "no frequency of the band" : QuantityText.hz(h.frequencyHz());
    }

    private String quiet() {
        AddedNoise q = facts.quiet();
        String rise = Double.isNaN(q.riseDb()) ? "" : String.format(Locale.ROOT, " (%.2f dB over the static noise at %s)", q.riseDb(),
            QuantityText.hz(q.frequencyHz()));
        return String.format(Locale.ROOT, "noise added to a quiet unit: %s mrad rms%s", NumberFormat.brief(1e3 * q.addedRad(), 4), rise);
    }

    private String words() {
        if (facts.fixed().isEmpty()) {
            return facts.bits() > FixedPoint.LONGEST ? "rounding: no word is long enough to cost less than 0.5 dB"
                : "rounding costs less than 0.5 dB with words of " + facts.bits() + " bits and more (--bits)";
        }
        FixedDesign f = facts.fixed().get();
        return String.format(Locale.ROOT, "words of %d bits: coefficients cost %.3f dB of the worst ratio%s; firmware.csv",
            f.filters().get(0).bits(), f.costDb(), Double.isNaN(f.noiseDb()) ? "" : String.format(Locale.ROOT,
            ", rounding of signals is %.1f dB over sensors and converter at %s", f.noiseDb(), QuantityText.hz(f.noiseHz())));
    }

    private static String sign() {
        return "Sign: weight x sensed acceleration is taken away, so +1 g puts minus volts_per_g (weights.csv) on the port.";
    }

    private String bench(PolarityCheck p) {
        double w = design.weightsPerG().get(p.axis().ordinal());
        double f0 = design.oscillator().outputHz();
        return String.format(Locale.ROOT, "bench %s: correction off, %s turned from horizontal to up (+1 g) moves the frequency by %+.3f "
            + "ppb; shaken with 1 g peak at %s, sidebands at the output are %.1f dBc off, %.1f dBc on, and %.1f dBc on with the sign "
            + "reversed", p.axis().letter(), p.axis().letter(), 1e9 * w, QuantityText.hz(p.frequencyHz()), sideband(p.offPerG(), p, f0),
            sideband(p.onPerG(), p, f0), sideband(p.wrongPerG(), p, f0));
    }

    private static double sideband(double y, PolarityCheck p, double f0) {
        return Sidebands.levelDbc(Sidebands.index(y, 1, f0, p.frequencyHz()));
    }

    void fields(Json json) {
        json.array("binding", () -> facts.binding().forEach(b -> json.object(() -> json.field("condition", b.condition())
            .field("of", b.of()).field("frequency_hz", b.frequencyHz()).field("used_share", b.used()))));
        json.object("allowed", () -> {
            for (Axis axis : facts.least().isEmpty() ? List.<Axis>of() : Axis.ALL) {
                json.object(axis.letter(), () -> facts.least().stream().filter(l -> l.axis() == axis).forEach(l -> {
                    String name = l.kind() == Kind.GAIN ? "gain_percent" : l.kind() == Kind.PHASE ? "phase_deg" : "delay_us";
                    double scale = l.kind() == Kind.GAIN ? 100 : l.kind() == Kind.PHASE ? Math.toDegrees(1) : 1e6;
                    json.field(name, scale * l.value()).field(name.substring(0, name.indexOf('_')) + "_frequency_hz", l.frequencyHz());
                }));
            }
        });
        json.array("hand_off", () -> facts.handOffs().forEach(h -> json.object(() -> json.field("more_delay_us", 1e6 * h.delay())
            .field("frequency_hz", h.frequencyHz()).field("correction_alone_holds_to_hz", h.holdsTo())
            .field("margin_db", h.marginDb()))));
        AddedNoise q = facts.quiet();
        json.object("static_unit", () -> json.field("added_mrad", 1e3 * q.addedRad()).field("static_mrad", 1e3 * q.staticRad())
            .field("rise_db", q.riseDb()).field("rise_frequency_hz", q.frequencyHz()));
        json.field("word_bits_needed", facts.bits() > FixedPoint.LONGEST ? Double.NaN : facts.bits());
        facts.fixed().ifPresent(f -> json.object("fixed_point", () -> json.field("bits", f.filters().get(0).bits())
            .field("cost_db", f.costDb()).field("signal_rounding_over_sensor_db", f.noiseDb())
            .field("signal_rounding_frequency_hz", f.noiseHz())));
    }

    /** For the page. */
    List<CommandPage.Part> parts() {
        List<CommandPage.Part> parts = new ArrayList<>();
        parts.add(new CommandPage.Part("Before and after", binding(), List.of(), List.of(charts.get(0).svg())));
        parts.add(new CommandPage.Part("Filters", List.of("Ideal is what would leave nothing on any axis at that frequency, whether a "
            + "device can have it or not.", words() + (facts.fixed().isEmpty() ? "."
            : " has integers with coefficient = integer / 2^shift; the word behind a row stands for its value / "
            + "2^scale_log2 (counted in b_shift), so that no input overflows it; the last one is to be shifted left by its scale.")),
            List.of(filters()), charts.subList(1, 4).stream().map(FilterCharts.Drawn::svg)
            .toList()));
        parts.add(allowedPart());
        parts.add(new CommandPage.Part("Hand-off",
            List.of("Above the hand-off the platform alone leaves less than the correction alone, on "
            + "the worst axis. Delay is added to every axis.", quiet()), List.of(handOffGrid()), List.of()));
        List<String> signs = new ArrayList<>(List.of(sign()));
        polarity.forEach(p -> signs.add(bench(p)));
        parts.add(new CommandPage.Part("Weights and polarity", signs, List.of(weights()), List.of()));
        return parts;
    }

    private PageTable filters() {
        List<List<String>> rows = new ArrayList<>();
        for (Axis axis : Axis.ALL) {
            int i = axis.ordinal();
            rows.add(List.of(axis.letter(), NumberFormat.brief(quietband.filter.fixedpoint.FilterPeaks.largest(result.found()
                .filters().get(i)), 5),
                String.format(Locale.ROOT, "%.2f dB at %s", FilterSummary.decibels(result.found().peaks().get(i).gain()),
                QuantityText.hz(result.found().peaks().get(i).frequencyHz()))));
        }
        return new PageTable("Filters", List.of("sensor", "largest coefficient", "peak gain"), rows);
    }

    private CommandPage.Part allowedPart() {
        if (facts.least().isEmpty()) {
            return new CommandPage.Part("Allowed errors", allowedLines(), List.of(), List.of());
        }
        List<List<String>> rows = new ArrayList<>();
        for (AllowedErrors.Least l : facts.least()) {
            AllowedErrors.Span span = facts.allowed().at(l.axis(), l.frequencyHz()).get(l.kind());
            rows.add(List.of(l.axis().letter(), l.kind().name().toLowerCase(Locale.ROOT), amount(l.kind(), facts.allowed().now(l.kind(),
                l.axis())), end(l.kind(), span.low()), end(l.kind(), span.high()), QuantityText.hz(l.frequencyHz())));
        }
        return new CommandPage.Part("Allowed errors", List.of("Each alone, everything else as the model stands, until the worst axis meets "
            + "the limit. The values are those to write into cancellation.error. Where it takes least over the band:"),
            List.of(new PageTable("Allowed errors", List.of("sensor", "error", "model has", "from", "to", "at"), rows)),
            charts.stream().skip(4).map(FilterCharts.Drawn::svg).toList());
    }

    private static String end(Kind kind, double v) {
        return Double.isFinite(v) ? amount(kind, v) : "any";
    }

    private PageTable handOffGrid() {
        List<List<String>> rows = new ArrayList<>();
        for (Crossover h : facts.handOffs()) {
            rows.add(List.of(String.format(Locale.ROOT, "%.0f us", 1e6 * h.delay()), Double.isNaN(h.frequencyHz()) ? "no platform"
                : place(h), Double.isNaN(h.holdsTo()) ? "-" : QuantityText.hz(h.holdsTo()),
                Double.isNaN(h.marginDb()) ? "-" : QuantityText.db(h.marginDb())));
        }
        return new PageTable("Delay moves the hand-off", List.of("more delay", "hand-off", "correction alone holds to",
            "margin, all measures"),
            rows);
    }

    private PageTable weights() {
        List<List<String>> rows = new ArrayList<>();
        for (Axis axis : Axis.ALL) {
            rows.add(List.of(axis.letter(), NumberFormat.brief(1e9 * design.weightsPerG().get(axis.ordinal()), 5), NumberFormat.brief(
                FilterTables.volts(design, axis), 5), NumberFormat.brief(FilterTables.counts(design, axis), 6)));
        }
        return new PageTable("Weights; counts are those of the sensor's converter", List.of("axis", "ppb/g", "V/g at the port", "counts/g"),
            rows);
    }
}

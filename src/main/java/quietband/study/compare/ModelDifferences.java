package quietband.study.compare;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collection;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.stream.Collectors;
import quietband.model.Axis;
import quietband.model.Cancellation;
import quietband.model.Design;
import quietband.model.DigitalFilter;
import quietband.model.Platform;
import quietband.model.Requirement;
import quietband.model.Tolerance;
import quietband.model.Vec;
import quietband.model.Vibration;
import quietband.model.quantity.NumberSlot;
import quietband.model.quantity.Quantities;
import quietband.spectrum.LogCurve;
import quietband.tuning.cures.ShortestPaths;
import quietband.tuning.cures.ValueChange;

/** What differs between two models, by path: every number, and what is no number. */
final class ModelDifferences {

    private static final String NONE = "none";

    private final Design a;
    private final Design b;
    private final List<ModelDifference> found = new ArrayList<>();

    private ModelDifferences(Design a, Design b) {
        this.a = a;
        this.b = b;
    }

    /** All of them, texts first. */
    static List<ModelDifference> between(Design first, Design second) {
        ModelDifferences d = new ModelDifferences(first, second);
        d.blocks();
        d.texts();
        d.environment();
        d.numbers();
        return d.found;
    }

    private void tell(String path, Object first, Object second) {
        if (!Objects.equals(first, second)) {
            found.add(new ModelDifference(path, ModelDifference.Value.words(said(first)), ModelDifference.Value.words(said(second))));
        }
    }

    private static String said(Object o) {
        String text = o instanceof Optional<?> optional ? optional.map(ModelDifferences::said).orElse(NONE)
            : o instanceof Collection<?> list ? list.stream().map(ModelDifferences::said).collect(Collectors.joining("; "))
            : o instanceof Vec v ? String.format(Locale.ROOT, "{x: %.4g, y: %.4g, z: %.4g}", v.x(), v.y(), v.z())
            : o instanceof Enum<?> word ? word.name().toLowerCase(Locale.ROOT).replace('_', '-')
            : o instanceof Requirement.Yield y ? String.format(Locale.ROOT, "%.4g %% with %.4g %% confidence", 100 * y.share(),
                100 * y.confidence())
            : o instanceof Tolerance t ? tolerance(t)
            : o instanceof Tolerance.Correlation c ? String.join(", ", c.between()) + String.format(Locale.ROOT, ": %.4g", c.coefficient())
            : o instanceof Tolerance.Condition c ? c.name() : String.valueOf(o);
        return text.isEmpty() ? NONE : text.length() > 160 ? text.substring(0, 157) + "..." : text;
    }

    private static String tolerance(Tolerance t) {
        return t.name() + " of " + t.of() + ": " + (t.kind() == Tolerance.Kind.LOT ? t.lot().map(Tolerance.Lot::file).orElse("")
            : String.format(Locale.ROOT, "%s %.4g%s, %s%s, draw per %s", said(t.kind()), t.value(), t.kind() == Tolerance.Kind.ADD
                ? " in SI units" : "", said(t.distribution()), Double.isFinite(t.limit()) ? String.format(Locale.ROOT, " at %.4g",
                t.limit())
                : "", said(t.draw())));
    }

    private void blocks() {
        tell("platform", present(a.platform()), present(b.platform()));
        tell("cancellation", present(a.cancellation()), present(b.cancellation()));
    }

    private static String present(Optional<?> block) {
        return block.isPresent() ? "in place" : NONE;
    }

    private void texts() {
        tell("title", a.title(), b.title());
        tell("oscillator.resonator.cut", a.oscillator().resonator().cut(), b.oscillator().resonator().cut());
        tell("oscillator.resonator.support", a.oscillator().resonator().support(), b.oscillator().resonator().support());
        tell("oscillator.resonator.orientation.axis", a.oscillator().resonator().orientation().axis(),
            b.oscillator().resonator().orientation().axis());
        if (a.platform().isPresent() && b.platform().isPresent()) {
            tell("platform.springs.ends", ends(a.platform().get()), ends(b.platform().get()));
            tell("platform.springs.orientation.axis", turns(a.platform().get()), turns(b.platform().get()));
        }
        if (a.cancellation().isPresent() && b.cancellation().isPresent()) {
            correction(a.cancellation().get(), b.cancellation().get());
        }
    }

    private static String ends(Platform p) {
        return p.springs().stream().map(s -> s.label() + (s.compressionOnly() ? " compression_only" : " bonded"))
            .collect(Collectors.joining(", "));
    }

    private static List<Object> turns(Platform p) {
        return p.springs().stream().map(s -> (Object) s.orientation().axis()).distinct().toList();
    }

    private void correction(Cancellation x, Cancellation y) {
        tell("cancellation.calibrated", x.calibratedEach() ? "each" : "design", y.calibratedEach() ? "each" : "design");
        tell("cancellation.sensor.place", x.sensor().onPlatform() ? "platform" : "housing",
            y.sensor().onPlatform() ? "platform" : "housing");
        tell("cancellation.path.taps", taps(x), taps(y));
        tell("cancellation.path.sections", sections(x), sections(y));
    }

    private static String taps(Cancellation c) {
        return c.path().filters().stream().map(f -> Arrays.toString(f.tapIndex()) + Arrays.toString(f.taps()))
            .distinct().collect(Collectors.joining(", "));
    }

    private static String sections(Cancellation c) {
        return c.path().filters().stream().map(DigitalFilter::sections).map(Arrays::deepToString)
            .distinct().collect(Collectors.joining(", "));
    }

    private void environment() {
        Vibration v = a.vibration();
        Vibration w = b.vibration();
        tell("vibration.apply", v.together() ? "together" : "one_at_a_time", w.together() ? "together" : "one_at_a_time");
        tell("vibration.axes", letters(v), letters(w));
        tell("vibration.gravity", v.gravity(), w.gravity());
        tell("vibration.tones", v.tones().stream().map(t -> t.name() + t.axis().map(x -> " along " + x.letter()).orElse("")).toList(),
            w.tones().stream().map(t -> t.name() + t.axis().map(x -> " along " + x.letter()).orElse("")).toList());
        tell("vibration.shock.shape", v.shock().map(Vibration.Shock::shape), w.shock().map(Vibration.Shock::shape));
        tell("requirement.by", a.requirement().byVector() ? "vector" : "axis", b.requirement().byVector() ? "vector" : "axis");
        tell("requirement.residual", a.requirement().fromPhaseNoise() ? "from_phase_noise" : "points",
            b.requirement().fromPhaseNoise() ? "from_phase_noise" : "points");
        tell("requirement.yield", a.requirement().yield(), b.requirement().yield());
        tell("tolerances", a.tolerances(), b.tolerances());
        tell("correlations", a.correlations(), b.correlations());
        tell("conditions", a.conditions(), b.conditions());
    }

    private static String letters(Vibration v) {
        return v.axes().stream().map(Axis::letter).sorted().collect(Collectors.joining(", "));
    }

    private void numbers() {
        Map<String, Integer> second = places(b.quantities());
        List<ShortestPaths.Change> changes = new ArrayList<>();
        Map<String, String> only = new LinkedHashMap<>();
        Quantities qa = a.quantities();
        for (Map.Entry<String, Integer> e : places(qa).entrySet()) {
            Integer other = second.remove(e.getKey());
            if (other == null) {
                only.putIfAbsent(qa.slot(e.getValue()).quantity(), "first");
            } else if (Double.compare(qa.value(e.getValue()), b.quantities().value(other)) != 0
                && !(follows(a, qa.slot(e.getValue())) && follows(b, qa.slot(e.getValue())))) {
                changes.add(new ShortestPaths.Change(e.getValue(), qa.value(e.getValue()), b.quantities().value(other)));
            }
        }
        second.values().forEach(i -> only.putIfAbsent(b.quantities().slot(i).quantity(), "second"));
        for (ValueChange s : ShortestPaths.of(qa, changes)) {
            found.add(new ModelDifference(s.of(), number(s.now(), s), number(s.holds(), s)));
        }
        only.forEach((quantity, side) -> tell(quantity, side.equals("first") ? "given" : NONE, side.equals("first") ? NONE : "given"));
        if (found.stream().noneMatch(d -> d.of().startsWith("vibration.random"))) {
            tell("vibration.random", profile(a), profile(b));
        }
    }

    /** Whether a number only follows others in a design: output the carrier, inertia the block, weights the sensitivity. */
    private static boolean follows(Design d, NumberSlot slot) {
        String of = slot.quantity();
        if (of.startsWith("platform.inertia")) {
            return d.platform().filter(p -> p.size().isPresent()
                && p.inertia().equals(Platform.Inertia.ofBlock(p.mass(), p.size().get()))).isPresent();
        }
        if (of.startsWith("cancellation.weights")) {
            return d.cancellation().filter(c -> c.weightsPerG().isEmpty()).isPresent();
        }
        return of.equals("oscillator.output") && d.oscillator().outputHz() == d.oscillator().carrierHz();
    }

    private static ModelDifference.Value number(double value, ValueChange s) {
        return Double.isFinite(value) ? new ModelDifference.Value("", value, Optional.of(s.dimension()))
            : ModelDifference.Value.words(NONE);
    }

    /** Slots by path, without absent ones and without the numbers of a block that only one of the two has. */
    private Map<String, Integer> places(Quantities q) {
        Map<String, Integer> places = new LinkedHashMap<>();
        for (int i = 0; i < q.size(); i++) {
            NumberSlot slot = q.slot(i);
            boolean shared = !(slot.path().startsWith("platform.") && (a.platform().isEmpty() || b.platform().isEmpty())
                || slot.path().startsWith("cancellation.") && (a.cancellation().isEmpty() || b.cancellation().isEmpty()));
            if (!slot.absent() && shared) {
                places.put(slot.path(), i);
            }
        }
        return places;
    }

    private static String profile(Design design) {
        List<String> parts = new ArrayList<>();
        for (Axis axis : Axis.ALL) {
            Optional<LogCurve> curve = design.vibration().random().get(axis.ordinal());
            parts.add(curve.map(c -> Arrays.toString(c.frequencies()) + " " + Arrays.toString(c.values())).orElse(NONE));
        }
        return parts.stream().distinct().collect(Collectors.joining("; "));
    }
}

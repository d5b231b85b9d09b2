package quietband.filter.allowed;

import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import quietband.filter.allowed.AllowedErrors.Kind;
import quietband.model.Axis;
import quietband.model.Design;

/**
 * Between which values each of the path's errors may lie so that the fullest stack stays within its residual limit over the band:
 * what {@link AllowedErrors} says of one error at one frequency, kept at every frequency.
 *
 * @param gain  by x, y and z, ratios
 * @param phase by x, y and z, rad
 * @param delay by x, y and z, s
 */
public record ErrorBounds(List<Span> gain, List<Span> phase, List<Span> delay) {

    public ErrorBounds {
        gain = List.copyOf(gain);
        phase = List.copyOf(phase);
        delay = List.copyOf(delay);
    }

    /**
     * What one error may be.
     *
     * @param now  as written
     * @param low  least value, minus infinity where nothing limits it
     * @param high largest value; below {@code low} when no value does
     * @param atHz where the end that is nearer is reached
     */
    public record Span(double now, double low, double high, double atHz) {

        /** Whether some value keeps the limit. */
        public boolean open() {
            return low <= high;
        }

        /** Whether the value as written does. */
        public boolean kept() {
            return low <= now && now <= high;
        }
    }

    /**
     * Works them out.
     *
     * @param frequencies at which the limit is to be kept, Hz, above 0
     * @return empty without a cancellation or a residual limit
     */
    public static Optional<ErrorBounds> of(Design design, double[] frequencies) {
        if (design.cancellation().isEmpty()) {
            return Optional.empty();
        }
        AllowedErrors allowed = new AllowedErrors(design);
        if (!allowed.asked()) {
            return Optional.empty();
        }
        Map<Kind, List<Span>> spans = new EnumMap<>(Kind.class);
        for (Kind kind : Kind.values()) {
            spans.put(kind, new ArrayList<>());
        }
        for (Axis axis : Axis.ALL) {
            Map<Kind, Stretch> found = new EnumMap<>(Kind.class);
            for (double f : frequencies) {
                allowed.reach(axis, f).forEach((kind, span) ->
                    found.computeIfAbsent(kind, k -> new Stretch()).within(span, f));
            }
            found.forEach((kind, stretch) -> spans.get(kind).add(stretch.around(allowed.now(kind, axis))));
        }
        return Optional.of(new ErrorBounds(spans.get(Kind.GAIN), spans.get(Kind.PHASE), spans.get(Kind.DELAY)));
    }

    /** Values that are still allowed. */
    private static final class Stretch {

        private double low = Double.NEGATIVE_INFINITY;
        private double high = Double.POSITIVE_INFINITY;
        private double lowHz = Double.NaN;
        private double highHz = Double.NaN;

        void within(AllowedErrors.Span span, double f) {
            if (span.low() > low) {
                low = span.low();
                lowHz = f;
            }
            if (span.high() < high) {
                high = span.high();
                highHz = f;
            }
        }

        Span around(double now) {
            return new Span(now, low, high, now - low < high - now ? lowHz : highHz);
        }
    }
}

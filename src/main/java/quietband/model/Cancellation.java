package quietband.model;

import java.util.List;
import java.util.Optional;

/**
 * The feed-forward cancellation: sensors, path, tuning port and their errors.
 *
 * @param calibratedEach whether default weights follow each unit's own sensitivity (else the nominal design's)
 * @param weightsPerG    weights written in the file, 1/g; empty when they default to the mounted sensitivity
 * @param sensor         the accelerometers
 * @param path           from the sensor to the tuning port
 * @param tuning         the tuning port
 * @param error          deviation of the path from what is meant
 */
public record Cancellation(boolean calibratedEach, Optional<Vec> weightsPerG, Sensor sensor, Path path,
                           Tuning tuning, PathError error) {

    /** The same with other digital filters, one per axis. */
    public Cancellation withFilters(List<DigitalFilter> filters) {
        return new Cancellation(calibratedEach, weightsPerG, sensor, path.withFilters(filters), tuning, error);
    }

    /** The same with digital filters that pass everything. */
    public Cancellation withoutFilter() {
        return withFilters(List.of(DigitalFilter.NONE, DigitalFilter.NONE, DigitalFilter.NONE));
    }

    /** The same with other errors. */
    public Cancellation withError(PathError other) {
        return new Cancellation(calibratedEach, weightsPerG, sensor, path, tuning, other);
    }

    /**
     * Three accelerometers, one per axis.
     *
     * @param onPlatform    on the platform, else on the housing
     * @param position      from the origin, m
     * @param bandwidthHz   one pole; infinite where there is none
     * @param resonance     of the sensor
     * @param noiseGPerRtHz one-sided noise, g/rtHz
     * @param rangeG        largest acceleration +- in g; infinite where not given
     * @param crossAxis     X, row by row (length 9): what each sensor reads per unit acceleration; 1 on the diagonal
     */
    public record Sensor(boolean onPlatform, Vec position, Vec bandwidthHz, Resonance resonance, Vec noiseGPerRtHz,
                         Vec rangeG, List<Double> crossAxis) {

        public Sensor {
            crossAxis = List.copyOf(crossAxis);
        }
    }

    /**
     * The path's dynamics.
     *
     * @param sampleRateHz  in Hz; 0 for an analog path
     * @param latency       in s
     * @param highPass      analog Butterworth, when given
     * @param lowPass       analog Butterworth, when given
     * @param filters       the digital filter per axis, x, y, z
     * @param converterBits resolution of the converter; 0 when not given
     */
    public record Path(double sampleRateHz, double latency, Optional<Pass> highPass, Optional<Pass> lowPass,
                       List<DigitalFilter> filters, int converterBits) {

        public Path {
            filters = List.copyOf(filters);
        }

        /** The same with other digital filters, one per axis. */
        public Path withFilters(List<DigitalFilter> other) {
            return new Path(sampleRateHz, latency, highPass, lowPass, other, converterBits);
        }

        /** Whether the path is sampled. */
        public boolean sampled() {
            return sampleRateHz > 0;
        }
    }

    /** An analog Butterworth corner: frequency in Hz and order, at least 1. */
    public record Pass(double frequencyHz, int order) { }

    /**
     * Port of the oscillator.
     *
     * @param slopePerV     fractional frequency per volt, may be negative; 0 when not given
     * @param bandwidthHz   one pole; infinite when not given
     * @param rangeV        +- volts; infinite when not given
     * @param noiseVPerRtHz one-sided, V/rtHz
     * @param curvaturePerV y = slope (v + curvature v^2/2), in 1/V
     */
    public record Tuning(double slopePerV, double bandwidthHz, double rangeV, double noiseVPerRtHz,
                         double curvaturePerV) {

        /** No port described: nothing added. */
        public static final Tuning NONE = new Tuning(0, Double.POSITIVE_INFINITY, Double.POSITIVE_INFINITY, 0, 0);
    }

    /** Errors per axis: relative gain, phase in rad (a lead is positive, the same at all frequencies), delay in s. */
    public record PathError(Vec gain, Vec phase, Vec delay) {

        /** None. */
        public static final PathError NONE = new PathError(Vec.ZERO, Vec.ZERO, Vec.ZERO);
    }
}

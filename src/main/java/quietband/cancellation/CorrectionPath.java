package quietband.cancellation;

import org.hipparchus.complex.Complex;
import quietband.model.Cancellation;
import quietband.model.Cancellation.Path;
import quietband.model.Cancellation.PathError;
import quietband.model.Cancellation.Sensor;
import quietband.model.Cancellation.Tuning;

/**
 * The correction of one axis as a function of frequency:
 * <pre>
 *   P = (1 + gain) exp(j phase) exp(-j w delay) * sensor * high_pass * low_pass * filter * hold * exp(-j w latency) * tuning
 * </pre>
 * Above half the sample rate nothing passes.
 */
public final class CorrectionPath {

    private final Sensor sensor;
    private final Path path;
    private final Tuning tuning;
    private final PathError error;
    private final FilterResponse[] filter = new FilterResponse[3];

    /** For one correction. */
    public CorrectionPath(Cancellation cancellation) {
        sensor = cancellation.sensor();
        path = cancellation.path();
        tuning = cancellation.tuning();
        error = cancellation.error();
        for (int i = 0; i < 3; i++) {
            filter[i] = new FilterResponse(path.filters().get(i), path.sampleRateHz());
        }
    }

    /** The filter of an axis, 0 to 2. */
    public FilterResponse filter(int axis) {
        return filter[axis];
    }

    /** The sensor's own response: one pole and one resonance. */
    public Complex sensor(int axis, double f) {
        Complex pole = Analog.pole(f, sensor.bandwidthHz().get(axis));
        return sensor.resonance().on(axis)
            ? pole.multiply(Analog.resonance(f, sensor.resonance().frequencyHz().get(axis), sensor.resonance().q().get(axis)))
            : pole;
    }

    /** Everything after the sensor but the errors: high pass, low pass, filter, hold, latency, tuning pole. */
    public Complex afterSensor(int axis, double f) {
        Complex value = Analog.delay(f, path.latency()).multiply(tuningPole(f));
        if (path.highPass().isPresent()) {
            value = value.multiply(Analog.highPass(f, path.highPass().get()));
        }
        if (path.lowPass().isPresent()) {
            value = value.multiply(Analog.lowPass(f, path.lowPass().get()));
        }
        return value.multiply(filterAndHold(axis, f));
    }

    /** Digital filter and hold; zero above half the sample rate, 1 for an analog path. */
    public Complex filterAndHold(int axis, double f) {
        if (!path.sampled()) {
            return Complex.ONE;
        }
        if (f > path.sampleRateHz() / 2) {
            return Complex.ZERO;
        }
        return filter[axis].at(f).multiply(Analog.hold(f, path.sampleRateHz()));
    }

    /** The pole of the tuning port. */
    public Complex tuningPole(double f) {
        return Analog.pole(f, tuning.bandwidthHz());
    }

    /** Path without errors: sensor and everything after it. */
    public Complex nominal(int axis, double f) {
        return sensor(axis, f).multiply(afterSensor(axis, f));
    }

    /** Relative gain error 1 + gain. */
    public double gain(int axis) {
        return 1 + error.gain().get(axis);
    }

    /** exp(j phase), a constant phase; a lead is positive. */
    public Complex phase(int axis) {
        double p = error.phase().get(axis);
        return p == 0 ? Complex.ONE : new Complex(StrictMath.cos(p), StrictMath.sin(p));
    }

    /** exp(-j w delay) of the delay error. */
    public Complex delay(int axis, double f) {
        return Analog.delay(f, error.delay().get(axis));
    }

    /** P of an axis. */
    public Complex at(int axis, double f) {
        return nominal(axis, f).multiply(phase(axis)).multiply(delay(axis, f)).multiply(gain(axis));
    }

    /** Longest total delay of the path in s (latency, error, hold, taps): how fast its phase winds over frequency. */
    public double windingDelay() {
        double longest = 0;
        for (int i = 0; i < 3; i++) {
            double digital = path.sampled() ? (filter[i].longestDelay() + 1) / path.sampleRateHz() : 0;
            longest = Math.max(longest, path.latency() + Math.abs(error.delay().get(i)) + digital);
        }
        return longest;
    }

    /** |sensor * low_pass| at the lowest frequency that folds into a band up to {@code bandTopHz}: fs - top. */
    public double foldedGain(int axis, double bandTopHz) {
        double f = path.sampleRateHz() - bandTopHz;
        Complex low = path.lowPass().map(p -> Analog.lowPass(f, p)).orElse(Complex.ONE);
        return sensor(axis, f).multiply(low).norm();
    }
}

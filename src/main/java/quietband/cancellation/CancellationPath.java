package quietband.cancellation;

import org.hipparchus.complex.Complex;
import quietband.model.Cancellation;
import quietband.model.Cancellation.Path;
import quietband.model.Cancellation.PathError;
import quietband.model.Cancellation.Sensor;
import quietband.model.Cancellation.Tuning;
import quietband.spectrum.ComplexProduct;

/**
 * The cancellation of one axis as a function of frequency:
 * <pre>
 *   P = (1 + gain) exp(j phase) exp(-j w delay) * sensor * high_pass * low_pass * filter * hold * exp(-j w latency) * tuning
 * </pre>
 * Above half the sample rate nothing passes. What it found at the last frequency is kept, so that one object serves one
 * thread.
 */
public final class CancellationPath {

    private final Sensor sensor;
    private final Path path;
    private final Tuning tuning;
    private final PathError error;
    private final FilterResponse[] filter = new FilterResponse[3];
    private final ComplexProduct[] digital = {new ComplexProduct(), new ComplexProduct(), new ComplexProduct()};
    private final ComplexProduct[] after = {new ComplexProduct(), new ComplexProduct(), new ComplexProduct()};
    private final ComplexProduct[] nominal = {new ComplexProduct(), new ComplexProduct(), new ComplexProduct()};
    private final ComplexProduct scratch = new ComplexProduct();
    private double frequency = Double.NaN;

    /** For one cancellation. */
    public CancellationPath(Cancellation cancellation) {
        sensor = cancellation.sensor();
        path = cancellation.path();
        tuning = cancellation.tuning();
        error = cancellation.error();
        for (int i = 0; i < 3; i++) {
            filter[i] = i > 0 && path.filters().get(i) == path.filters().get(i - 1) ? filter[i - 1]
                : new FilterResponse(path.filters().get(i), path.sampleRateHz());
        }
    }

    /** Works out every element of the three axes at a frequency in Hz, unless that was the last one asked for. */
    private void evaluate(double f) {
        if (f == frequency) {
            return;
        }
        ComplexProduct common = AnalogElements.delay(scratch.set(1, 0), f, path.latency()).pole(f / tuning.bandwidthHz());
        path.highPass().ifPresent(pass -> AnalogElements.highPass(common, f, pass));
        path.lowPass().ifPresent(pass -> AnalogElements.lowPass(common, f, pass));
        for (int i = 0; i < 3; i++) {
            if (i > 0 && filter[i] == filter[i - 1]) {
                digital[i].set(digital[i - 1]);
            } else {
                digital(digital[i].set(1, 0), i, f);
            }
            after[i].set(common).times(digital[i].re(), digital[i].im());
            sensor(nominal[i].set(after[i]), sensor, i, f);
        }
        frequency = f;
    }

    private void digital(ComplexProduct p, int axis, double f) {
        if (!path.sampled()) {
            return;
        }
        if (f > path.sampleRateHz() / 2) {
            p.set(0, 0);
            return;
        }
        AnalogElements.hold(filter[axis].at(p, f), f, path.sampleRateHz());
    }

    /** Multiplies by a sensor's own response: one pole and one resonance. */
    public static ComplexProduct sensor(ComplexProduct p, Sensor sensor, int axis, double f) {
        p.pole(f / sensor.bandwidthHz().get(axis));
        return sensor.resonance().on(axis)
            ? p.resonance(f / sensor.resonance().frequencyHz().get(axis), sensor.resonance().q().get(axis)) : p;
    }

    /** The sensor's own response: one pole and one resonance. */
    public Complex sensor(int axis, double f) {
        return sensor(new ComplexProduct(), sensor, axis, f).value();
    }

    /** Everything after the sensor but the errors: high pass, low pass, filter, hold, latency, tuning pole. */
    public Complex afterSensor(int axis, double f) {
        evaluate(f);
        return after[axis].value();
    }

    /** |afterSensor|^2. */
    public double afterSensorPower(int axis, double f) {
        evaluate(f);
        return after[axis].power();
    }

    /** |filter hold tuning|^2. */
    public double digitalPower(int axis, double f) {
        evaluate(f);
        return digital[axis].power() * tuningPower(f);
    }

    /** |tuning|^2 of the port's pole. */
    public double tuningPower(double f) {
        return new ComplexProduct().pole(f / tuning.bandwidthHz()).power();
    }

    /** Path without errors: sensor and everything after it. */
    public Complex nominal(int axis, double f) {
        evaluate(f);
        return nominal[axis].value();
    }

    /**
     * Writes the product of some of the path's elements for the three axes (length 3 each, modified).
     *
     * @param elements whether the path without errors, the gain, the phase and the delay error are in it; else they are 1
     */
    public void write(double f, Elements elements, double[] re, double[] im) {
        evaluate(f);
        for (int i = 0; i < 3; i++) {
            ComplexProduct p = scratch.set(1, 0);
            if (elements.nominal()) {
                p.set(nominal[i]);
            }
            if (elements.phase()) {
                p.turn(error.phase().get(i));
            }
            if (elements.delay()) {
                AnalogElements.delay(p, f, error.delay().get(i));
            }
            double gain = elements.gain() ? gain(i) : 1;
            re[i] = gain * p.re();
            im[i] = gain * p.im();
        }
    }

    /**
     * Which elements of the path a product has.
     *
     * @param nominal sensor and everything after it, without errors
     */
    public record Elements(boolean nominal, boolean gain, boolean phase, boolean delay) {

        /** The whole path. */
        public static final Elements ALL = new Elements(true, true, true, true);
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
        return AnalogElements.delay(f, error.delay().get(axis));
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
        Complex low = path.lowPass().map(p -> AnalogElements.lowPass(f, p)).orElse(Complex.ONE);
        return sensor(axis, f).multiply(low).norm();
    }
}

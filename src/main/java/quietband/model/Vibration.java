package quietband.model;

import java.util.List;
import java.util.Optional;
import java.util.Set;
import quietband.spectrum.LogCurve;

/**
 * The vibration environment, all of it a translation of the housing.
 *
 * @param together   all driven axes at once (their effects add in power), else one at a time
 * @param axes       which axes are driven for noise and travel
 * @param gravity    direction of gravity as a unit vector; empty when not given
 * @param random     acceleration density per axis x, y, z in g^2/Hz, one-sided; empty where there is none
 * @param tones      sinusoidal lines
 * @param shock      a single pulse, when given
 * @param sustainedG steady acceleration, each axis and both ways, in g
 */
public record Vibration(boolean together, Set<Axis> axes, Optional<Vec> gravity, List<Optional<LogCurve>> random,
                        List<Tone> tones, Optional<Shock> shock, double sustainedG) {

    /** Nothing moves. */
    public static final Vibration NONE = new Vibration(false, Set.copyOf(Axis.ALL), Optional.empty(),
        List.of(Optional.empty(), Optional.empty(), Optional.empty()), List.of(), Optional.empty(), 0);

    public Vibration {
        axes = Set.copyOf(axes);
        random = List.copyOf(random);
        tones = List.copyOf(tones);
    }

    /** The density that drives an axis; empty where the axis is not driven or has none. */
    public Optional<LogCurve> drive(Axis axis) {
        return axes.contains(axis) ? random.get(axis.ordinal()) : Optional.empty();
    }

    /** A sinusoidal line: name, frequency in Hz, peak (not rms) in g, one axis or, when empty, each of them. */
    public record Tone(String name, double frequencyHz, double peakG, Optional<Axis> axis) {

        /** The axes it drives. */
        public List<Axis> axes() {
            return axis.map(List::of).orElse(Axis.ALL);
        }
    }

    /** Pulse shapes; the sawtooth has its peak at the end. */
    public enum ShockShape { HALF_SINE, RECTANGLE, TRIANGLE, SAWTOOTH }

    /** A pulse: shape, peak in g, duration in s. */
    public record Shock(ShockShape shape, double peakG, double duration) { }
}

package quietband.units;

import java.util.List;
import java.util.Optional;

/**
 * A kind of quantity and the units it may be written in. The records use the base unit: SI, but accelerations in g,
 * sensitivities in 1/g, densities in g^2/Hz, accelerometer noise in g/rtHz, levels in dB.
 */
public enum Dimension {
    FREQUENCY("a frequency", "90 Hz", Unit.of("Hz", "1"), Unit.of("kHz", "1e3"), Unit.of("MHz", "1e6"),
        Unit.of("GHz", "1e9")),
    TIME("a time", "8 us", Unit.of("s", "1"), Unit.of("ms", "1e-3"), Unit.of("us", "1e-6"), Unit.of("ns", "1e-9")),
    LENGTH("a length", "24 mm", Unit.of("m", "1"), Unit.of("mm", "1e-3"), Unit.of("um", "1e-6"),
        Unit.of("in", "0.0254")),
    MASS("a mass", "210 g", Unit.of("kg", "1"), Unit.of("g", "1e-3"), Unit.of("mg", "1e-6")),
    FORCE("a force", "6 N", Unit.of("N", "1")),
    STIFFNESS("a stiffness", "12 N/mm", Unit.of("N/m", "1"), Unit.of("N/mm", "1e3"), Unit.of("kN/m", "1e3"),
        Unit.of("lbf/in", "175.126835")),
    DAMPING("a damping", "1.8 N*s/m", Unit.of("N*s/m", "1")),
    INERTIA("a moment of inertia", "84 kg*mm^2", Unit.of("kg*m^2", "1"), Unit.of("kg*mm^2", "1e-6"),
        Unit.of("g*cm^2", "1e-7"), Unit.of("g*mm^2", "1e-9")),
    ANGLE("an angle", "0.5 deg", Unit.of("rad", "1"), Unit.of("mrad", "1e-3"),
        Unit.of("deg", "0.01745329251994329576923690768488612713442871888541725456")),
    RATIO("a ratio", "2 %", Unit.of("", "1"), Unit.of("%", "1e-2")),
    NUMBER("a bare number", "2", Unit.of("", "1")),
    VOLTAGE("a voltage", "4 V", Unit.of("V", "1"), Unit.of("mV", "1e-3"), Unit.of("uV", "1e-6"),
        Unit.of("nV", "1e-9")),
    PER_VOLT("a ratio per volt", "0.5 ppm/V", Unit.of("ppm/V", "1e-6"), Unit.of("ppb/V", "1e-9"),
        Unit.of("%/V", "1e-2")),
    SENSITIVITY("an acceleration sensitivity", "0.35 ppb/g", Unit.of("1/g", "1"), Unit.of("ppm/g", "1e-6"),
        Unit.of("ppb/g", "1e-9")),
    ACCELERATION("an acceleration", "2 g", Unit.of("g", "1"), Unit.ofOver("m/s^2", "9.80665")),
    DENSITY("an acceleration density", "0.01 g^2/Hz", Unit.of("g^2/Hz", "1")),
    ACCELERATION_NOISE("an acceleration noise", "25 ug/rtHz", Unit.of("g/rtHz", "1"), Unit.of("mg/rtHz", "1e-3"),
        Unit.of("ug/rtHz", "1e-6")),
    VOLTAGE_NOISE("a voltage noise", "20 nV/rtHz", Unit.of("V/rtHz", "1"), Unit.of("uV/rtHz", "1e-6"),
        Unit.of("nV/rtHz", "1e-9")),
    DECIBEL("a ratio in decibels", "3 dB", Unit.of("dB", "1")),
    CARRIER_LEVEL("a level below the carrier", "-40 dBc", Unit.of("dBc", "1")),
    PHASE_NOISE("a phase-noise level", "-138 dBc/Hz", Unit.of("dBc/Hz", "1"));

    private final String phrase;
    private final String example;
    @SuppressWarnings("ImmutableEnumChecker") // List.of: cannot be changed
    private final List<Unit> units;

    Dimension(String phrase, String example, Unit... units) {
        this.phrase = phrase;
        this.example = example;
        this.units = List.of(units);
    }

    /** With its article, as messages say it: "a stiffness". */
    public String phrase() {
        return phrase;
    }

    /** An example of a value as a file writes it: "12 N/mm". */
    public String example() {
        return example;
    }

    /** Every accepted unit; the base unit first where it is one of them. */
    public List<Unit> units() {
        return units;
    }

    /** The unit the records use, as text; empty for ratios and bare numbers. */
    public String base() {
        return this == PER_VOLT ? "1/V" : units.get(0).text();
    }

    /** The accepted unit in which a value of the base unit is printed where no other stood before. */
    public Unit plain() {
        return units.get(0);
    }

    /** The unit of this spelling. */
    public Optional<Unit> unit(String text) {
        return units.stream().filter(u -> u.text().equals(text)).findFirst();
    }

    /** Whether values may be scaled and zero means nothing, so that a bare 0 needs no unit; not so for decibels. */
    public boolean linear() {
        return this != DECIBEL && this != CARRIER_LEVEL && this != PHASE_NOISE;
    }

    /** What is added to a value of this dimension: itself, or decibels for a level. */
    public Dimension difference() {
        return linear() ? this : DECIBEL;
    }
}

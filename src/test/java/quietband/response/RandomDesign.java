package quietband.response;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Random;
import java.util.function.DoubleSupplier;

/** A model drawn at random: its text, in units drawn as well, and beside it the numbers in SI, which no reader has touched. */
final class RandomDesign {

    /** One place of a spring; the corner of a relaxing branch in Hz, infinite without one. */
    record Spring(double[] at, double[] k, double[] c, double[] eta, double[] ratio, double[] corner, double mass,
                  double[] axis, double angle) { }

    private static final double NONE = Double.POSITIVE_INFINITY;

    final double[] sensitivity;
    final double[] sensitivityAxis;
    final double sensitivityAngle;
    final double[] crystal;
    final double[] supportHz = {NONE, NONE, NONE};
    final double[] supportQ = {1, 1, 1};
    final double mass;
    final double[] inertia = new double[6];
    final double[] centre;
    final double modal;
    final List<Spring> springs = new ArrayList<>();
    final double[] weights;
    final boolean onPlatform;
    final double[] sensor;
    final double[] bandwidth;
    final double resonanceHz;
    final double resonanceQ;
    final double[] crossAxis = {1, 0, 0, 0, 1, 0, 0, 0, 1};
    final double rate;
    final double latency;
    final double highPassHz;
    final int highPassOrder;
    final double lowPassHz;
    final int lowPassOrder;
    final double[] taps = new double[3];
    final double[] section;
    final double port;
    final double[] gain;
    final double[] phase;
    final double[] delay;

    private final Random random;
    private final StringBuilder text = new StringBuilder("quietband: 1\noscillator: {carrier: 10 MHz, resonator: {sensitivity: ");

    RandomDesign(int seed) {
        random = new Random(seed);
        sensitivity = triple(() -> between(-1.5e-9, 1.5e-9), "ppb/g", 1e-9, "ppm/g", 1e-6);
        crystal = triple(", position: ", () -> between(-0.01, 0.01), "mm", 1e-3, "um", 1e-6);
        sensitivityAxis = triple(", orientation: {axis: ", () -> between(-1, 1), "", 1);
        sensitivityAngle = one(", angle: ", between(-3, 3), "deg", Math.PI / 180, "mrad", 1e-3);
        text.append("}, support_resonance: {");
        for (int i = 0; i < 3; i += 1 + random.nextInt(2)) {
            supportHz[i] = one((i > 0 ? ", " : "") + "xyz".charAt(i) + ": {frequency: ", logBetween(900, 9000), "kHz", 1e3, "Hz", 1);
            supportQ[i] = one(", q: ", logBetween(3, 100), "", 1);
            text.append('}');
        }
        mass = one("}}}\nplatform: {mass: ", logBetween(0.05, 3), "g", 1e-3, "kg", 1);
        for (int i = 0; i < 6; i++) {
            String[] names = {", inertia: {xx: ", ", yy: ", ", zz: ", ", xy: ", ", xz: ", ", yz: "};
            double about = mass * 4e-4;
            inertia[i] = one(names[i], i < 3 ? about * between(0.8, 1.4) : about * between(-0.15, 0.15), "kg*mm^2", 1e-6, "g*cm^2", 1e-7);
        }
        centre = triple("}, centre_of_gravity: ", () -> between(-4e-3, 4e-3), "mm", 1e-3, "in", 0.0254);
        modal = one(", modal_damping: ", between(0, 0.04), "%", 0.01, "", 1);
        double stiffness = mass * Math.pow(2 * Math.PI * logBetween(25, 300), 2) / 4;
        for (int group = 0; group < 2; group++) {
            springs(group, stiffness);
        }
        weights = random.nextBoolean() ? null : triple("]}\ncancellation: {weights: ", () -> between(-1e-9, 1e-9), "ppb/g", 1e-9);
        text.append(weights == null ? "]}\ncancellation: {" : ", ");
        onPlatform = random.nextInt(4) > 0;
        text.append("sensor: {place: ").append(onPlatform ? "platform" : "housing");
        sensor = triple(", position: ", () -> between(-0.02, 0.02), "mm", 1e-3);
        bandwidth = triple(", bandwidth: ", () -> logBetween(2e3, 3e4), "kHz", 1e3, "Hz", 1);
        resonanceHz = one(", resonance: {frequency: ", logBetween(5e3, 5e4), "kHz", 1e3);
        resonanceQ = one(", q: ", logBetween(0.6, 30), "", 1);
        for (int e = 1; e < 8; e++) {
            if (e != 4) {
                crossAxis[e] = one((e == 1 ? "}, cross_axis: {" : ", ") + "xyz".charAt(e / 3) + "xyz".charAt(e % 3) + ": ",
                    between(-0.03, 0.03), "%", 0.01, "", 1);
            }
        }
        rate = one("}}, path: {sample_rate: ", logBetween(2e4, 2e5), "kHz", 1e3);
        latency = one(", latency: ", logBetween(1e-6, 3e-5), "us", 1e-6, "ns", 1e-9);
        highPassHz = one(", high_pass: {frequency: ", logBetween(0.1, 6), "Hz", 1);
        highPassOrder = 1 + random.nextInt(4);
        lowPassHz = one(", order: " + highPassOrder + "}, low_pass: {frequency: ", logBetween(3e3, 3e4), "kHz", 1e3);
        lowPassOrder = 1 + random.nextInt(6);
        text.append(", order: ").append(lowPassOrder).append('}');
        for (int k = 0; k < 3; k++) {
            taps[k] = one(k == 0 ? ", taps: [" : ", ", k == 0 ? 1 : between(-0.4, 0.4), "", 1);
        }
        double radius = between(0.1, 0.9);
        section = new double[] {1, between(-0.5, 0.5), between(-0.3, 0.3), -2 * radius * Math.cos(between(0, 3)), radius * radius};
        text.append("], sections: [").append(Arrays.toString(section)).append(']');
        port = one("}, tuning: {slope: -0.5 ppm/V, bandwidth: ", logBetween(4e3, 2e5), "kHz", 1e3);
        gain = triple("}, error: {gain: ", () -> between(-0.04, 0.04), "%", 0.01, "", 1);
        phase = triple(", phase: ", () -> between(-0.04, 0.04), "deg", Math.PI / 180, "rad", 1);
        delay = triple(", delay: ", () -> between(-5e-6, 8e-6), "us", 1e-6, "s", 1);
        text.append("}}\n");
    }

    private void springs(int group, double stiffness) {
        text.append(group == 0 ? ", springs: [{at: [" : "}, {at: [");
        int many = group == 0 ? 4 : 1 + random.nextInt(3);
        double[][] at = new double[many][];
        for (int n = 0; n < many; n++) {
            double[] corner = {n % 2 == 0 ? 0.02 : -0.02, n / 2 == 0 ? 0.02 : -0.02, 0};
            int[] axis = {0};
            at[n] = triple(n == 0 ? "" : ", ", () -> corner[axis[0]++] + between(-0.01, 0.01), "mm", 1e-3, "um", 1e-6);
        }
        double[] k = triple("], stiffness: ", () -> stiffness * logBetween(0.5, 2), "N/mm", 1e3, "lbf/in", 175.126835);
        double[] c = triple(", damping: ", () -> 2 * between(0, 0.1) * Math.sqrt(stiffness * mass / 4), "N*s/m", 1);
        double[] eta = triple(", loss_factor: ", () -> between(0.005, 0.25), "%", 0.01, "", 1);
        double[] ratio = {0, 0, 0};
        double[] corner = {NONE, NONE, NONE};
        if (random.nextBoolean()) {
            ratio = triple(", relaxation: {stiffness_ratio: ", () -> between(0.1, 2), "", 1, "%", 0.01);
            corner = triple(", corner: ", () -> logBetween(20, 1500), "Hz", 1);
            text.append('}');
        }
        double own = random.nextBoolean() ? 0 : one(", mass: ", mass * logBetween(0.001, 0.02), "g", 1e-3, "mg", 1e-6);
        double[] axis = triple(", orientation: {axis: ", () -> between(-1, 1), "", 1);
        double angle = one(", angle: ", between(-3, 3), "rad", 1, "deg", Math.PI / 180);
        text.append('}');
        for (double[] place : at) {
            springs.add(new Spring(place, k, c, eta, ratio, corner, own, axis, angle));
        }
        text.append(group == 1 ? "}" : "");
    }

    String text() {
        return text.toString();
    }

    private double between(double low, double high) {
        return low + (high - low) * random.nextDouble();
    }

    private double logBetween(double low, double high) {
        return low * Math.pow(high / low, random.nextDouble());
    }

    /** Writes a value in one of the units (name, size, name, size, ..) and gives back what the seven digits written mean. */
    private double one(String before, double value, Object... units) {
        int unit = 2 * random.nextInt(units.length / 2);
        double size = ((Number) units[unit + 1]).doubleValue();
        String digits = String.format(Locale.ROOT, "%.6e", value / size);
        text.append(before).append(digits).append(units[unit].equals("") ? "" : " " + units[unit]);
        return Double.parseDouble(digits) * size;
    }

    private double[] triple(DoubleSupplier value, Object... units) {
        double[] three = new double[3];
        for (int i = 0; i < 3; i++) {
            three[i] = one((i == 0 ? "{" : ", ") + "xyz".charAt(i) + ": ", value.getAsDouble(), units);
        }
        text.append('}');
        return three;
    }

    private double[] triple(String before, DoubleSupplier value, Object... units) {
        text.append(before);
        return triple(value, units);
    }
}

package quietband.study;

import java.nio.file.Path;
import java.util.List;
import quietband.model.edit.ModelFile;

/**
 * A lightly damped platform of 350 g, 80 x 50 x 30 mm, on four springs in the plane of its centre: 36, 60 and 90 N/mm in all along
 * x, y and z with 1.6 N s/m, so that each axis is a single oscillator (x: 51 Hz, 0.7 % of critical), and a resonator of 2 ppb/g on x.
 */
public final class LightPlatform {

    /** Sensitivity along x, 1/g. */
    public static final double SENSITIVITY = 2e-9;
    /** Mass, kg. */
    public static final double MASS = 0.35;
    /** Stiffness of all springs along x, y, z, N/m. */
    public static final List<Double> STIFFNESS = List.of(36e3, 60e3, 90e3);
    /** Damping of all springs along each axis, N s/m. */
    public static final double DAMPING = 1.6;

    private LightPlatform() { }

    /** The model and more lines of its file. */
    public static ModelFile with(String more) {
        return ModelFile.parse(Path.of("light.yaml"), "quietband: 1\n"
            + "oscillator: {carrier: 10 MHz, resonator: {sensitivity: {x: 2 ppb/g}}}\n"
            + "platform: {mass: 350 g, size: {x: 80 mm, y: 50 mm, z: 30 mm}, springs: [{name: four, at: [{x: 30 mm, y: 20 mm}, "
            + "{x: -30 mm, y: 20 mm}, {x: -30 mm, y: -20 mm}, {x: 30 mm, y: -20 mm}], "
            + "stiffness: {x: 9 N/mm, y: 15 N/mm, z: 22.5 N/mm}, damping: 0.4 N*s/m}]}\n" + more);
    }

    /** Transmissibility along x, {re, im}: (k + jwc)/(k - m w^2 + jwc). */
    public static double[] transmissibility(double frequencyHz) {
        double w = 2 * Math.PI * frequencyHz;
        double k = STIFFNESS.get(0);
        double d = k - MASS * w * w;
        double c = DAMPING * w;
        double square = d * d + c * c;
        return new double[] {(k * d + c * c) / square, c * (d - k) / square};
    }

    /** Its size. */
    public static double ratio(double frequencyHz) {
        double[] a = transmissibility(frequencyHz);
        return Math.hypot(a[0], a[1]);
    }
}

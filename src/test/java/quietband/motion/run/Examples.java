package quietband.motion.run;

import java.nio.file.Path;
import java.util.Locale;
import quietband.model.Axis;
import quietband.model.Design;
import quietband.model.edit.ModelFile;
import quietband.oscillator.Sensitivity;
import quietband.response.ResidualResponse;

/** Models for the tests of this package, and the other road's prediction. */
public final class Examples {

    private Examples() { }

    public static Design shipped(String name) {
        return ModelFile.read(Path.of("models", name)).design();
    }

    public static Design parse(String... lines) {
        return ModelFile.parse(Path.of("models", "test.yaml"), "quietband: 1\n" + String.join("\n", lines) + "\n").design();
    }

    /** A resonator of 1 ppb/g on one axis. */
    public static String oscillator(String axis) {
        return "oscillator: {carrier: 10 MHz, resonator: {sensitivity: {" + axis + ": 1 ppb/g}}}";
    }

    /** One mass of 1 kg on one spring in its centre, stiff against rocking by four more without stiffness along x. */
    public static String mass(double frequencyHz, String more, String platformMore) {
        double k = Math.pow(2 * Math.PI * frequencyHz, 2);
        return String.format(Locale.ROOT, "platform:%n  mass: 1 kg%n  size: {x: 100 mm, y: 100 mm, z: 100 mm}%n  springs:%n"
            + "    - {name: middle, at: [{x: 0 mm}], stiffness: {x: %.17g N/m, y: %.17g N/m, z: %.17g N/m}%s}%n"
            + "    - {name: guide, at: [{x: 40 mm, y: 40 mm}, {x: -40 mm, y: -40 mm}, {x: 40 mm, y: -40 mm}, {x: -40 mm, y: 40 mm}], "
            + "stiffness: {x: 0 N/m, y: 100 N/mm, z: 100 N/mm}}%n"
            + "    - {name: top, at: [{z: 40 mm}, {z: -40 mm}], stiffness: {x: 0 N/m, y: 100 N/mm, z: 0 N/m}}%n%s",
            k, k, k, more, platformMore);
    }

    /** Predicted y_j of every stack, complex: row per stack, {re, im}. */
    public static double[][] predicted(Design design, Axis axis, double f) {
        ResidualResponse response = new ResidualResponse(design);
        response.at(f);
        double[] re = new double[3];
        double[] im = new double[3];
        var stacks = quietband.model.Stack.of(design);
        double[][] y = new double[stacks.size()][];
        for (int s = 0; s < y.length; s++) {
            response.residual(stacks.get(s), re, im);
            y[s] = new double[] {re[axis.ordinal()], im[axis.ordinal()]};
        }
        return y;
    }

    /** |H_m G| at a frequency, 1/g. */
    static double scale(Design design, double f) {
        double[] re = new double[3];
        double[] im = new double[3];
        new Sensitivity(design.oscillator().resonator()).at(f, re, im);
        double sum = 0;
        for (int i = 0; i < 3; i++) {
            sum += re[i] * re[i] + im[i] * im[i];
        }
        return Math.sqrt(sum);
    }

    /** Largest |measured - predicted| over the stacks, relative to |H_m G|. */
    static double worst(Design design, Dwell.Request q) {
        Dwell.Result r = Dwell.run(design, q);
        double[][] p = predicted(design, q.axis(), q.frequencyHz());
        double worst = 0;
        for (int s = 0; s < p.length; s++) {
            worst = Math.max(worst, Math.hypot(r.re()[s] - p[s][0], r.im()[s] - p[s][1]));
        }
        return worst / scale(design, q.frequencyHz());
    }
}

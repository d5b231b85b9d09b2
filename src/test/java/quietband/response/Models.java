package quietband.response;

import java.nio.file.Path;
import quietband.model.Design;
import quietband.model.edit.ModelFile;

/** Designs for tests, from model text. */
public final class Models {

    private Models() { }

    /** A design from the text of a model file. */
    public static Design of(String text) {
        return ModelFile.parse(Path.of("test.yaml"), text).design();
    }

    /** A shipped model. */
    public static Design shipped(String name) {
        return ModelFile.read(Path.of("models", name)).design();
    }

    /** An oscillator block of 10 MHz with a sensitivity, and whatever more. */
    public static String oscillator(String more) {
        return "quietband: 1\noscillator: {carrier: 10 MHz, resonator: {sensitivity: {x: 0.3 ppb/g, y: -0.4 ppb/g, z: 1.2 ppb/g}"
            + more + "}}\n";
    }

    /** A platform of 210 g on four springs at the height of its centre: each axis alone, some 100 Hz. */
    public static String platform(String spring, String more) {
        return "platform: {mass: 210 g, size: {x: 62 mm, y: 62 mm, z: 24 mm}" + more + ", springs: [{name: four, at: "
            + "[{x: 24 mm, y: 24 mm}, {x: -24 mm, y: 24 mm}, {x: -24 mm, y: -24 mm}, {x: 24 mm, y: -24 mm}], " + spring + "}]}\n";
    }
}

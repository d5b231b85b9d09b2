package quietband.window.bench;

import java.nio.file.Path;
import java.util.Map;
import quietband.model.edit.ModelFile;

/**
 * One version of the design that is worked on.
 *
 * @param name  for people; unique on a bench
 * @param path  the file it is saved to; references are found from there
 * @param text  of the model
 * @param files contents of files it refers to that are not written yet, by the name it uses
 */
public record DesignVariant(String name, Path path, String text, Map<String, byte[]> files) {

    public DesignVariant {
        files = Map.copyOf(files);
    }

    /** The same with another text. */
    DesignVariant withText(String other) {
        return other.equals(text) ? this : new DesignVariant(name, path, other, files);
    }

    /** The model it is; read again. @throws quietband.model.ModelException when a file it refers to has gone or changed for the worse */
    public ModelFile model() {
        return ModelFile.parse(path, text, files);
    }
}

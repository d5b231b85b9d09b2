package quietband.model.edit;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;

/** The commented model file that a newcomer starts from. */
public final class StartModel {

    private StartModel() { }

    /** Its text; reads without a problem and refers to no other file. */
    public static String text() {
        try (InputStream in = StartModel.class.getResourceAsStream("start.yaml")) {
            return new String(in.readAllBytes(), StandardCharsets.UTF_8);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }
}

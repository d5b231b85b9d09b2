package quietband.model;

import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.HexFormat;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/**
 * A model file as read: its text, the checked design, what is odd about it and the files it refers to.
 * Immutable; a changed model is another one.
 */
public final class ModelFile {

    /** Largest model file that is read, in bytes. */
    public static final int MOST_BYTES = 4_000_000;

    private final Path path;
    private final String text;
    private final boolean mark;
    private final ModelReader.Result result;

    private ModelFile(Path path, String text, boolean mark, Map<String, byte[]> overlay) {
        this.path = path;
        this.text = text;
        this.mark = mark;
        this.result = ModelReader.read(path, text, overlay);
    }

    /**
     * Reads and checks a model file and every file it refers to.
     *
     * @throws ModelException with all problems at once
     */
    public static ModelFile read(Path path) {
        TextFile file = TextFile.read(path, path.toString(), MOST_BYTES);
        return new ModelFile(path, file.text(), file.mark(), Map.of());
    }

    /**
     * Reads a model from a text that is in no file yet.
     *
     * @param path where it would stand: references are found from there and messages name it
     * @throws ModelException with all problems at once
     */
    public static ModelFile parse(Path path, String text) {
        return parse(path, text, Map.of());
    }

    /**
     * Reads a model from a text that may refer to files not written yet.
     *
     * @param files contents that stand for files, by the name the text uses
     */
    public static ModelFile parse(Path path, String text, Map<String, byte[]> files) {
        TextFile file = TextFile.of(path.toString(), text.getBytes(StandardCharsets.UTF_8));
        return new ModelFile(path, file.text(), file.mark(), Map.copyOf(files));
    }

    /** Where it was read from. */
    public Path path() {
        return path;
    }

    /** The whole text, without a byte-order mark. */
    public String text() {
        return text;
    }

    /** The text as stored. */
    public byte[] bytes() {
        return ((mark ? "\ufeff" : "") + text).getBytes(StandardCharsets.UTF_8);
    }

    /** The checked design. */
    public Design design() {
        return result.design();
    }

    /** What is allowed but odd, e.g. stops without clearance; in the order of the file. */
    public List<Problem> warnings() {
        return result.warnings();
    }

    /** Contents of every file it refers to, by the name it uses, in the order of reading. */
    public Map<String, byte[]> files() {
        Map<String, byte[]> files = new LinkedHashMap<>();
        result.files().forEach((name, file) -> files.put(name, file.bytes().clone()));
        return files;
    }

    /**
     * Identifies the model: SHA-256 over the bytes of the file, then for every file it refers to, in the order of
     * reading, over a zero byte, the name the model uses, a zero byte and the bytes of that file; in hexadecimal.
     */
    public String hash() {
        try {
            MessageDigest digest = MessageDigest.getInstance("SHA-256");
            digest.update(bytes());
            result.files().forEach((name, file) -> {
                digest.update((byte) 0);
                digest.update(name.getBytes(StandardCharsets.UTF_8));
                digest.update((byte) 0);
                digest.update(file.bytes());
            });
            return HexFormat.of().formatHex(digest.digest());
        } catch (NoSuchAlgorithmException e) {
            throw new IllegalStateException("every Java has SHA-256", e);
        }
    }
}

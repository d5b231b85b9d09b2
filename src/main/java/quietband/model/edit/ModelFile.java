package quietband.model.edit;

import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.HexFormat;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.function.Consumer;
import quietband.model.Design;
import quietband.model.compile.DerivedNumbers;
import quietband.model.quantity.Quantities;
import quietband.model.read.ModelReader;
import quietband.model.text.FileProblem;
import quietband.model.text.TextFile;

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

    private final Map<String, byte[]> overlay;

    private ModelFile(Path path, String text, boolean mark, Map<String, byte[]> overlay) {
        this.overlay = overlay;
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
    public List<FileProblem> warnings() {
        return result.warnings();
    }

    /** Contents of every file it refers to, by the name it uses, in the order of reading. */
    public Map<String, byte[]> files() {
        Map<String, byte[]> files = new LinkedHashMap<>();
        result.files().forEach((name, file) -> files.put(name, file.bytes().clone()));
        return files;
    }

    /** Every value as it stands in the file, in its order, and the keys its blocks leave out. */
    public List<FileValue> values() {
        return FileValues.of(path.toString(), text);
    }

    /**
     * The model with what a path names set to a piece of YAML, e.g. {@code ("platform.mass", "215 g")} or
     * {@code ("cancellation.path.taps", "[1.3, -0.4]")}. A missing key or block is added; one axis of a value that holds
     * for three makes it a map; one place of a spring group splits the group. Comments and everything else stay.
     *
     * @throws BadPathException        when the path leads nowhere in the format
     * @throws ModelException when the changed model is wrong
     */
    public ModelFile withValue(String at, String yaml) {
        return edited(editor -> editor.set(at, yaml));
    }

    /** The same for several pieces, in order; the model need be right only after the last. */
    public ModelFile withValues(Map<String, String> pieces) {
        return edited(editor -> pieces.forEach(editor::set));
    }

    /**
     * The model with a number set, in the unit that stands there and in full double precision.
     *
     * @param value in the base unit of its dimension
     */
    public ModelFile withNumber(String at, double value) {
        Quantities own = design().quantities();
        int first = own.slotOf(at);
        return !own.slot(first).varies() ? edited(editor -> editor.set(at, value, own.slot(first).dimension()))
            : withQuantities(own.with(at, value));
    }

    /** The model with every number written that differs from its own; {@code to} is of its design's layout. */
    public ModelFile withQuantities(Quantities to) {
        if (!to.sharesLayout(design().quantities())) {
            throw new IllegalArgumentException("numbers of another model's layout");
        }
        Quantities own = design().quantities();
        Quantities written = DerivedNumbers.effective(design().with(to), own);
        return edited(editor -> QuantityWriter.write(editor, own, written));
    }

    /**
     * The model with entries added at the end of a list at its top, such as {@code tolerances}.
     *
     * @param entries each a flow map in YAML; none changes nothing
     */
    public ModelFile withEntries(String list, List<String> entries) {
        return entries.isEmpty() ? this : edited(editor -> editor.append(list, entries));
    }

    /** The model without a key; nothing changes where it is missing. */
    public ModelFile without(String at) {
        return edited(editor -> editor.remove(at));
    }

    /** The model reading other contents for files it refers to, or will refer to, by the name it uses. */
    public ModelFile withFiles(Map<String, byte[]> files) {
        Map<String, byte[]> all = new LinkedHashMap<>(overlay);
        all.putAll(files);
        return new ModelFile(path, text, mark, all);
    }

    /** The model and the files it refers to, as they are to stand beside each other in another directory. */
    public ModelBundle bundle() {
        return ModelBundle.of(path.toString(), text, files());
    }

    private ModelFile edited(Consumer<ModelEditor> change) {
        ModelEditor editor = new ModelEditor(path.toString(), text);
        change.accept(editor);
        return new ModelFile(path, editor.text(), mark, overlay);
    }

    /**
     * Identifies the model: SHA-256 over the bytes of the file, then for every file it refers to, in the order of
     * reading, over a zero byte, the name the model uses, a zero byte and the bytes of that file; in hexadecimal.
     */
    public String hash() {
        MessageDigest digest = sha256();
        digest.update(bytes());
        result.files().forEach((name, file) -> {
            digest.update((byte) 0);
            digest.update(name.getBytes(StandardCharsets.UTF_8));
            digest.update((byte) 0);
            digest.update(file.bytes());
        });
        return HexFormat.of().formatHex(digest.digest());
    }

    private static MessageDigest sha256() {
        try {
            return MessageDigest.getInstance("SHA-256");
        } catch (NoSuchAlgorithmException e) {
            throw new IllegalStateException("every Java has SHA-256", e);
        }
    }
}

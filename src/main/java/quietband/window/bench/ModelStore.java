package quietband.window.bench;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.AtomicMoveNotSupportedException;
import java.nio.file.Files;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.nio.file.StandardOpenOption;
import java.nio.file.attribute.FileAttribute;
import java.nio.file.attribute.PosixFileAttributeView;
import java.nio.file.attribute.PosixFilePermission;
import java.nio.file.attribute.PosixFilePermissions;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import quietband.model.edit.ModelFile;

/** Model files on disk: written whole or not at all, and never over what somebody else wrote meanwhile without being told to. */
public final class ModelStore {

    private static final Set<PosixFilePermission> OWNER = PosixFilePermissions.fromString("rw-------");

    private ModelStore() { }

    /** A file changed on disk since it was read or written here. */
    static final class Changed extends RuntimeException {

        private static final long serialVersionUID = 1;

        Changed(Path path, String what) {
            super(path.getFileName() + " " + what);
        }
    }

    /** The text of a file; empty when there is none. A byte-order mark is no part of it. */
    static Optional<String> text(Path path) {
        if (Files.exists(path) && !Files.isRegularFile(path)) {
            throw new UncheckedIOException(new IOException(path + " is no regular file"));
        }
        try {
            String text = Files.readString(path, StandardCharsets.UTF_8);
            return Optional.of(text.startsWith("\ufeff") ? text.substring(1) : text);
        } catch (NoSuchFileException e) {
            return Optional.empty();
        } catch (IOException e) {
            throw new UncheckedIOException(path + " cannot be read: " + e.getMessage(), e);
        }
    }

    /**
     * Saves the variant in view to its file, and files it refers to that are not written yet beside it.
     *
     * @param even whether to write over a file that changed, or that another program made, since it was read
     * @return the bench after it
     * @throws Changed when it is not told to write over such a file
     */
    public static EditingBench save(EditingBench bench, boolean even) {
        DesignVariant v = bench.variant();
        Optional<String> now = text(v.path());
        Optional<String> known = bench.filed(v.path());
        if (!even && known.isEmpty() && now.isPresent()) {
            throw new Changed(v.path(), "exists already and was not written from here");
        }
        if (!even && known.isPresent() && !now.equals(known)) {
            throw new Changed(v.path(), now.isEmpty() ? "is no longer there" : "changed on disk since it was read");
        }
        Path folder = v.path().toAbsolutePath().getParent();
        for (Map.Entry<String, byte[]> file : v.files().entrySet()) {
            if (!even && Files.exists(folder.resolve(file.getKey()))) {
                throw new Changed(Path.of(file.getKey()), "exists already; the model now brings its own");
            }
        }
        for (Map.Entry<String, byte[]> file : v.files().entrySet()) {
            write(folder.resolve(file.getKey()), file.getValue());
        }
        write(v.path(), bench.model().bytes());
        return bench.saved(v.path(), v.text());
    }

    /** Reads the file of the variant in view again, as one step that can be undone. */
    public static EditingBench reload(EditingBench bench) {
        ModelFile file = ModelFile.read(bench.variant().path());
        return bench.take("read again from disk", file, Map.of()).saved(file.path(), file.text());
    }

    /** Writes a file to a temporary sibling and puts that in its place in one go. */
    public static void write(Path path, byte[] bytes) {
        write(path, bytes, false);
    }

    /** The same so that none but its owner may read it, where files have such permissions. */
    static void writePrivate(Path path, byte[] bytes) {
        write(path, bytes, true);
    }

    private static void write(Path path, byte[] bytes, boolean owned) {
        Path target = path.toAbsolutePath();
        try {
            Path real = Files.isSymbolicLink(target) ? target.toRealPath() : target;
            Files.createDirectories(real.getParent());
            Path temporary = real.resolveSibling("." + real.getFileName() + "." + Long.toHexString(System.nanoTime()) + ".part");
            try {
                boolean posix = real.getFileSystem().supportedFileAttributeViews().contains("posix");
                Files.createFile(temporary, owned && posix ? new FileAttribute<?>[] {PosixFilePermissions.asFileAttribute(OWNER)}
                    : new FileAttribute<?>[0]);
                Files.write(temporary, bytes, StandardOpenOption.WRITE);
                if (!owned) {
                    permit(real, temporary);
                }
                move(temporary, real);
            } finally {
                Files.deleteIfExists(temporary);
            }
        } catch (IOException e) {
            throw new UncheckedIOException(path + " cannot be written: " + e.getMessage(), e);
        }
    }

    /** Who may read and write a file stays as it was. */
    private static void permit(Path before, Path now) throws IOException {
        PosixFileAttributeView view = Files.getFileAttributeView(now, PosixFileAttributeView.class);
        if (view != null && Files.exists(before)) {
            view.setPermissions(Files.getPosixFilePermissions(before));
        }
    }

    private static void move(Path from, Path to) throws IOException {
        try {
            Files.move(from, to, StandardCopyOption.ATOMIC_MOVE, StandardCopyOption.REPLACE_EXISTING);
        } catch (AtomicMoveNotSupportedException e) {
            Files.move(from, to, StandardCopyOption.REPLACE_EXISTING);
        }
    }
}

package quietband.report.file;

import java.io.BufferedWriter;
import java.io.IOException;
import java.io.OutputStreamWriter;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.AccessDeniedException;
import java.nio.file.FileSystemException;
import java.nio.file.Files;
import java.nio.file.LinkOption;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import java.nio.file.attribute.BasicFileAttributes;
import java.security.DigestOutputStream;
import java.util.Collection;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.Set;
import java.util.TreeMap;
import java.util.concurrent.ConcurrentSkipListMap;

/**
 * A result that is written whole or not at all: files go to a temporary sibling, which is exchanged with the target at the
 * end. A target that is not empty is replaced only when it carries the mark of an earlier result and holds nothing
 * the mark does not list.
 */
public final class ResultDirectory implements AutoCloseable {

    private final Path target;
    private final ResultMark mark;
    private final WorkingFolder working;
    private final Map<String, String> files = new ConcurrentSkipListMap<>();
    private final Thread cleaner = new Thread(this::interrupted);
    private volatile Runnable first = () -> { };
    /** Committed or discarded: nothing is opened, exchanged or deleted any more. Guarded by this. */
    private boolean ended;

    /** Writes the content of one file. */
    @FunctionalInterface
    public interface Content {
        /** Called once; the writer is closed afterwards. */
        void to(BufferedWriter writer) throws IOException;
    }

    private ResultDirectory(Path target, ResultMark mark) {
        this.target = target;
        this.mark = mark;
        working = new WorkingFolder(target);
    }

    /**
     * Prepares a result; nothing is at the target before {@link #commit()}.
     *
     * @param target where it shall be
     * @param mark   what is known of it; its list of files is filled in here
     * @param read   files that the result is made from; none of them may lie where the result shall be
     * @throws ResultException when the target may not be replaced or cannot be written
     */
    public static ResultDirectory prepare(Path target, ResultMark mark, Collection<Path> read) {
        Path absolute = target.toAbsolutePath().normalize();
        try {
            if (Files.isSymbolicLink(absolute) && Files.exists(absolute)) {
                absolute = absolute.toRealPath();
            }
            if (absolute.getParent() == null) {
                throw new ResultException(target + ": the root of a file system cannot be a result; name a folder below it");
            }
            checkInputs(absolute, target, read);
            ResultDirectory directory = new ResultDirectory(absolute, mark);
            directory.begin();
            return directory;
        } catch (IOException e) {
            throw unwritable(target, e);
        }
    }

    private static void checkInputs(Path absolute, Path shown, Collection<Path> read) throws IOException {
        Path parent = absolute.getParent();
        Path place = Files.exists(parent) ? parent.toRealPath().resolve(absolute.getFileName()) : absolute;
        if (Path.of("").toRealPath().startsWith(place)) {
            throw new ResultException("'" + shown + "': is the working folder or holds it; name a folder below it with --out");
        }
        for (Path file : read) {
            if (Files.exists(file) && file.toRealPath().startsWith(place)) {
                throw new ResultException(shown + ": holds " + file + ", which is read here and would be deleted; "
                    + "name another place with --out");
            }
        }
    }

    /** The hook first: no moment leaves a folder that nobody removes. */
    private void begin() throws IOException {
        try {
            Runtime.getRuntime().addShutdownHook(cleaner);
            beginWork();
        } catch (IllegalStateException e) {
            throw stopped();
        } catch (IOException | ResultException e) {
            close();
            throw e;
        }
    }

    private synchronized void beginWork() throws IOException {
        if (ended) {
            throw stopped();
        }
        working.begin();
        checkReplaceable(target, target);
    }

    /** Looks until nobody exchanged the target meanwhile. */
    private static void checkReplaceable(Path absolute, Path shown) throws IOException {
        while (true) {
            Object before = identity(absolute);
            Optional<String> refused;
            try {
                refused = refusal(absolute);
            } catch (NoSuchFileException e) {
                refused = Optional.of("changes while it is looked at;");
            } catch (UncheckedIOException e) {
                if (!(e.getCause() instanceof NoSuchFileException)) {
                    throw e.getCause();
                }
                refused = Optional.of("changes while it is looked at;");
            }
            if (Objects.equals(before, identity(absolute))) {
                if (refused.isPresent()) {
                    throw new ResultException(shown + ": " + refused.orElseThrow() + " name another place with --out");
                }
                return;
            }
        }
    }

    private static Object identity(Path folder) {
        try {
            return Files.readAttributes(folder, BasicFileAttributes.class, LinkOption.NOFOLLOW_LINKS).fileKey();
        } catch (IOException e) {
            return null;
        }
    }

    /** Why what is there may not be replaced; empty when it may. */
    private static Optional<String> refusal(Path absolute) throws IOException {
        if (!Files.exists(absolute, LinkOption.NOFOLLOW_LINKS)) {
            return Optional.empty();
        }
        if (!Files.isDirectory(absolute)) {
            return Optional.of("is a file, not a folder;");
        }
        List<String> present = ResultMark.names(absolute);
        Set<String> listed = ResultMark.filesListedIn(absolute.resolve(ResultMark.FILE)).keySet();
        if (!present.isEmpty() && listed.isEmpty()) {
            return Optional.of("is not empty and holds no " + ResultMark.FILE + ", so it is not a result of this program;");
        }
        return present.stream().filter(name -> !listed.contains(name)).findFirst()
            .map(name -> "holds '" + name + "', which no result of this program lists; move it away or");
    }

    private static ResultException unwritable(Path target, IOException e) {
        String why = e instanceof AccessDeniedException ? "permission denied"
            : e instanceof FileSystemException f && f.getReason() != null ? f.getReason()
                : e instanceof FileSystemException || e.getMessage() == null ? "it is gone" : e.getMessage();
        return new ResultException(target + ": cannot be written (" + why + "); name another place with --out");
    }

    private ResultException stopped() {
        return new ResultException(target + ": interrupted; nothing is written");
    }

    /** Writes one text file in UTF-8; a name may hold folders. */
    public void write(String name, Content content) {
        try (DigestOutputStream bytes = open(name)) {
            try (BufferedWriter writer = new BufferedWriter(new OutputStreamWriter(bytes, StandardCharsets.UTF_8.newEncoder()))) {
                content.to(writer);
            }
            files.put(name, name.endsWith(".html") ? "" : ContentHash.of(bytes));
        } catch (IOException e) {
            throw unwritable(target.resolve(name), e);
        }
    }

    private synchronized DigestOutputStream open(String name) throws IOException {
        if (ended) {
            throw stopped();
        }
        Path file = working.content().resolve(name);
        Files.createDirectories(file.getParent());
        return ContentHash.through(Files.newOutputStream(file));
    }

    /** Writes the mark and exchanges the new folder with the target. */
    public synchronized void commit() {
        Map<String, String> all = new TreeMap<>(files);
        all.put(ResultMark.FILE, "");
        write(ResultMark.FILE, w -> mark.withFiles(all).write(w));
        try {
            if (!ResultMark.whole(working.content())) {
                throw new ResultException(target + ": files of the new result went missing before it was finished; run it again");
            }
            checkReplaceable(target, target);
            working.exchange();
        } catch (IOException e) {
            throw unwritable(target, e);
        }
        ended = true;
    }

    /** Files of the replaced result that had been edited by hand: where they are kept, relative to the result's parent. */
    public List<Path> kept() {
        return working.kept().stream().map(p -> target.getParent().relativize(p)).toList();
    }

    /** Where the result is, absolute. */
    public Path target() {
        return target;
    }

    /** Names of the files written, sorted. */
    public List<String> files() {
        return List.copyOf(files.keySet());
    }

    /**
     * What to do first when the program is interrupted, for a result that can be finished early: it runs in the machine's last moments and
     * returns when the result is committed.
     */
    public void whenInterrupted(Runnable finish) {
        first = finish;
    }

    private void interrupted() {
        first.run();
        discard();
    }

    private synchronized void discard() {
        ended = true;
        working.end();
    }

    /** Removes the temporary folder when the result was not committed. */
    @Override
    public void close() {
        discard();
        try {
            Runtime.getRuntime().removeShutdownHook(cleaner);
        } catch (IllegalStateException e) {
            // the machine is shutting down: the hook itself cleans up
            return;
        }
    }
}

package quietband.report.file;

import java.io.BufferedWriter;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.AccessDeniedException;
import java.nio.file.FileSystemException;
import java.nio.file.Files;
import java.nio.file.LinkOption;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import java.util.concurrent.ConcurrentSkipListSet;
import java.util.stream.Stream;

/**
 * A result that is written whole or not at all: files go to a temporary sibling, which is exchanged with the target at the
 * end. A target that is not empty is replaced only when it carries the mark of an earlier result and holds nothing
 * the mark does not list.
 */
public final class ResultDirectory implements AutoCloseable {

    private final Path target;
    private final ResultMark mark;
    private final Path temporary;
    private final Set<String> files = new ConcurrentSkipListSet<>();
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

    private ResultDirectory(Path target, ResultMark mark, Path temporary) {
        this.target = target;
        this.mark = mark;
        this.temporary = temporary;
    }

    /**
     * Prepares a result; nothing is at the target before {@link #commit()}.
     *
     * @param target where it shall be
     * @param mark   what is known of it; its list of files is filled in here
     * @throws ResultException when the target may not be replaced or cannot be written
     */
    public static ResultDirectory prepare(Path target, ResultMark mark) {
        Path absolute = target.toAbsolutePath().normalize();
        try {
            if (Files.isSymbolicLink(absolute) && Files.exists(absolute)) {
                absolute = absolute.toRealPath();
            }
            Path parent = absolute.getParent();
            if (parent == null) {
                throw new ResultException(target + ": the root of a file system cannot be a result; name a folder below it");
            }
            ResultLeftovers.recover(absolute);
            checkReplaceable(absolute, target);
            ResultDirectory directory = new ResultDirectory(absolute, mark, ResultLeftovers.temporary(absolute));
            directory.begin();
            return directory;
        } catch (IOException e) {
            throw unwritable(target, e);
        }
    }

    /** The hook first: no moment leaves a folder that nobody removes. */
    private void begin() throws IOException {
        try {
            Runtime.getRuntime().addShutdownHook(cleaner);
            createFolder();
        } catch (IllegalStateException e) {
            throw stopped();
        } catch (IOException e) {
            close();
            throw e;
        }
    }

    private synchronized void createFolder() throws IOException {
        Files.createDirectory(place(""));
    }

    private static void checkReplaceable(Path absolute, Path shown) throws IOException {
        if (!Files.exists(absolute, LinkOption.NOFOLLOW_LINKS)) {
            return;
        }
        if (!Files.isDirectory(absolute)) {
            throw new ResultException(shown + ": is a file, not a folder; name another place with --out");
        }
        List<String> present = names(absolute);
        if (present.isEmpty()) {
            return;
        }
        Set<String> listed = ResultMark.filesListedIn(absolute.resolve(ResultMark.FILE));
        if (listed.isEmpty()) {
            throw new ResultException(shown + ": is not empty and holds no " + ResultMark.FILE
                + ", so it is not a result of this program; name another place with --out");
        }
        for (String name : present) {
            if (!listed.contains(name)) {
                throw new ResultException(shown + ": holds '" + name + "', which no result of this program lists; "
                    + "move it away or name another place with --out");
            }
        }
    }

    private static List<String> names(Path directory) throws IOException {
        try (Stream<Path> walk = Files.walk(directory)) {
            return walk.filter(p -> !Files.isDirectory(p, LinkOption.NOFOLLOW_LINKS) || isEmptyFolder(directory, p))
                .map(p -> directory.relativize(p).toString().replace('\\', '/')).sorted().toList();
        }
    }

    private static boolean isEmptyFolder(Path top, Path p) {
        if (p.equals(top)) {
            return false;
        }
        try (Stream<Path> inside = Files.list(p)) {
            return inside.findAny().isEmpty();
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    private static ResultException unwritable(Path target, IOException e) {
        String why = e instanceof AccessDeniedException ? "permission denied"
            : e instanceof FileSystemException f && f.getReason() != null ? f.getReason() : e.getClass().getSimpleName();
        return new ResultException(target + ": cannot be written (" + why + "); name another place with --out");
    }

    private ResultException stopped() {
        return new ResultException(target + ": interrupted; nothing is written");
    }

    /** Writes one text file in UTF-8; a name may hold folders. */
    public void write(String name, Content content) {
        try (BufferedWriter writer = open(name)) {
            content.to(writer);
        } catch (IOException e) {
            throw unwritable(target.resolve(name), e);
        }
        files.add(name);
    }

    private synchronized BufferedWriter open(String name) throws IOException {
        return Files.newBufferedWriter(place(name), StandardCharsets.UTF_8);
    }

    /** Copies a file that the result refers to. */
    public synchronized void copy(Path from, String name) {
        try {
            Files.copy(from, place(name), StandardCopyOption.REPLACE_EXISTING);
        } catch (IOException e) {
            throw unwritable(target.resolve(name), e);
        }
        files.add(name);
    }

    private Path place(String name) throws IOException {
        if (ended) {
            throw stopped();
        }
        Path file = temporary.resolve(name);
        Files.createDirectories(file.getParent());
        return file;
    }

    /** Writes the mark and exchanges the temporary folder with the target. */
    public synchronized void commit() {
        Set<String> all = new TreeSet<>(files);
        all.add(ResultMark.FILE);
        write(ResultMark.FILE, w -> mark.withFiles(List.copyOf(all)).write(w));
        try {
            checkReplaceable(target, target);
            ResultLeftovers.exchange(temporary, target);
        } catch (IOException e) {
            throw unwritable(target, e);
        }
        ended = true;
    }

    /** Where the result is, absolute. */
    public Path target() {
        return target;
    }

    /** Names of the files written, sorted. */
    public List<String> files() {
        return List.copyOf(files);
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
        if (!ended) {
            ended = true;
            ResultLeftovers.delete(temporary);
        }
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

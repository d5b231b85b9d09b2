package quietband.report.file;

import static java.nio.file.StandardOpenOption.CREATE;
import static java.nio.file.StandardOpenOption.WRITE;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.channels.FileChannel;
import java.nio.channels.OverlappingFileLockException;
import java.nio.file.Files;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.util.Comparator;
import java.util.List;
import java.util.UUID;
import java.util.regex.Pattern;
import java.util.stream.Stream;

/**
 * The hidden folder beside a result in which one run works: {@code new} is what it writes, {@code old} the result it replaces during
 * the microseconds between two renames (file systems have no portable exchange of two folders), {@code lock} is locked while
 * the run lives. A folder whose lock can be had belongs to a dead run, in whatever container; the next run clears it away, and
 * puts back an old result whose place is not taken by a whole one.
 */
final class WorkingFolder {

    private static final String INFIX = ".quietband-run-";
    private static final Pattern ID = Pattern.compile("[0-9a-f-]{36}");

    private final Path target;
    private final Path folder;
    private FileChannel lock;
    private final EditedFiles edited;

    private WorkingFolder(Path target) {
        this.target = target;
        folder = target.resolveSibling("." + target.getFileName() + INFIX + UUID.randomUUID());
        edited = new EditedFiles(target);
    }

    /** For a run that writes to the target; nothing is on the disk yet. */
    static WorkingFolder beside(Path target) {
        return new WorkingFolder(target);
    }

    /**
     * Clears away what dead runs left, and begins.
     *
     * @param check fails when the target may not be replaced
     */
    void begin(ReplaceCheck check) throws IOException {
        Files.createDirectories(target.getParent());
        try (ExchangeLock here = ExchangeLock.on(target)) {
            recover();
            check.run();
            Files.createDirectories(content());
            lock = FileChannel.open(folder.resolve("lock"), CREATE, WRITE);
            lock.lock();
        }
    }

    /** Where the new result is written. */
    Path content() {
        return folder.resolve("new");
    }

    /** What had been edited by hand and is kept aside, as paths. */
    List<Path> kept() {
        return edited.kept();
    }

    /**
     * Puts the new result in the target's place.
     *
     * @param check fails when the target may not be replaced
     */
    void exchange(ReplaceCheck check) throws IOException {
        try (ExchangeLock here = ExchangeLock.on(target)) {
            check.run();
            if (!Files.exists(target)) {
                Files.move(content(), target, StandardCopyOption.ATOMIC_MOVE);
                return;
            }
            Path old = folder.resolve("old");
            Files.move(target, old, StandardCopyOption.ATOMIC_MOVE);
            try {
                Files.move(content(), target, StandardCopyOption.ATOMIC_MOVE);
            } catch (IOException e) {
                Files.move(old, target, StandardCopyOption.ATOMIC_MOVE);
                throw e;
            }
            edited.keep(old);
            delete(old);
        }
    }

    /** Looks at the target once more. */
    @FunctionalInterface
    interface ReplaceCheck {
        void run() throws IOException;
    }

    /** Takes the folder away. */
    void end() {
        delete(content());
        // an old result that could not be dealt with stays: the next run does
        if (!Files.exists(folder.resolve("old"))) {
            delete(folder);
        }
        try {
            if (lock != null) {
                lock.close();
            }
        } catch (IOException e) {
            // the machine gives it back when the process ends
            return;
        }
    }

    private void recover() throws IOException {
        String prefix = "." + target.getFileName() + INFIX;
        List<Path> others;
        try (Stream<Path> list = Files.list(target.getParent())) {
            others = list.filter(p -> p.getFileName().toString().startsWith(prefix)
                && ID.matcher(p.getFileName().toString().substring(prefix.length())).matches()).toList();
        }
        for (Path other : others) {
            if (dead(other)) {
                recover(other);
            }
        }
    }

    private void recover(Path dead) throws IOException {
        Path old = dead.resolve("old");
        if (Files.exists(old) && !ResultMark.whole(target)) {
            if (Files.exists(target) && !ResultMark.onlyListed(target)) {
                // somebody's own files: neither is touched
                return;
            }
            delete(target);
            Files.move(old, target, StandardCopyOption.ATOMIC_MOVE);
        } else if (Files.exists(old)) {
            edited.keep(old);
        }
        delete(dead);
    }

    private static boolean dead(Path other) throws IOException {
        try (FileChannel channel = FileChannel.open(other.resolve("lock"), WRITE)) {
            return channel.tryLock() != null;
        } catch (NoSuchFileException e) {
            // killed before it had a lock, or after it gave it up
            return true;
        } catch (OverlappingFileLockException e) {
            return false;
        }
    }

    /** Removes a folder of ours with everything in it; what cannot be removed is left to the next run. */
    private static void delete(Path folder) {
        if (!Files.exists(folder)) {
            return;
        }
        try (Stream<Path> walk = Files.walk(folder)) {
            for (Path p : walk.sorted(Comparator.reverseOrder()).toList()) {
                Files.deleteIfExists(p);
            }
        } catch (IOException | UncheckedIOException e) {
            return;
        }
    }
}

package quietband.report.file;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.FileSystemException;
import java.nio.file.Files;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.util.Comparator;
import java.util.List;
import java.util.UUID;
import java.util.stream.Stream;

/**
 * The hidden folder beside a result in which one run works: {@code new} is what it writes, {@code old-N} what stood in its place
 * during the microseconds between two renames (file systems have no portable exchange of two folders). A {@link RunLock} beside it
 * says that the run lives. What dead runs left, in whatever container, the next one clears away, and puts back an old result
 * whose place is not taken by a whole one.
 */
final class WorkingFolder {

    private static final String INFIX = ".quietband-run-";
    private static final String LOCK = ".lock";
    private static final String OLD = "old-";
    /** How often others may be quicker in a row. */
    private static final int TRIES = 1000;

    private final Path target;
    private final EditedFiles edited;
    private Path folder;
    private RunLock lock;

    /** For a run that writes to the target; nothing is on the disk yet. */
    WorkingFolder(Path target) {
        this.target = target;
        edited = new EditedFiles(target);
    }

    /** Begins: takes a folder and clears away what dead runs left. */
    void begin() throws IOException {
        Files.createDirectories(target.getParent());
        while (lock == null) {
            folder = target.resolveSibling("." + target.getFileName() + INFIX + UUID.randomUUID());
            lock = RunLock.begin(lockOf(folder));
        }
        recover();
        Files.createDirectories(content());
    }

    /** Where the new result is written. */
    Path content() {
        return folder.resolve("new");
    }

    /** What had been edited by hand and is kept aside. */
    List<Path> kept() {
        return edited.kept();
    }

    /** Puts the new result in the target's place; of several runs that do so at once the last one stays. */
    void exchange() throws IOException {
        try {
            for (int k = 0; !moved(content(), target, k == TRIES); k++) {
                Path old = folder.resolve(OLD + k);
                if (moved(target, old, false) && !ResultMark.onlyListed(old)) {
                    throw new FileSystemException(target.toString(), null, "somebody wrote into it");
                }
            }
        } finally {
            // the old one back in its place where the new one did not come
            putBack(folder);
        }
    }

    /**
     * Renames a folder; false when that fails, mostly because its new place is taken or it is gone.
     *
     * @param last whether it throws instead
     */
    private static boolean moved(Path from, Path to, boolean last) throws IOException {
        try {
            Files.move(from, to, StandardCopyOption.ATOMIC_MOVE);
            return true;
        } catch (FileSystemException e) {
            if (last) {
                throw e;
            }
            return false;
        }
    }

    /** Takes the folder away; an old result that could not be dealt with stays, and the next run does. */
    void end() {
        if (lock == null) {
            return;
        }
        try {
            if (olds(folder).isEmpty()) {
                delete(folder);
            }
            if (!Files.exists(folder)) {
                lock.close();
            }
        } catch (IOException e) {
            // the machine gives the lock back when the process ends; the next run clears up
            return;
        }
    }

    private void recover() throws IOException {
        String prefix = "." + target.getFileName() + INFIX;
        List<Path> locks;
        try (Stream<Path> list = Files.list(target.getParent())) {
            locks = list.filter(p -> p.getFileName().toString().startsWith(prefix) && p.toString().endsWith(LOCK)).toList();
        }
        for (Path other : locks) {
            try (RunLock dead = RunLock.ofDead(other)) {
                if (dead != null) {
                    String name = other.getFileName().toString();
                    recover(other.resolveSibling(name.substring(0, name.length() - LOCK.length())));
                }
            }
        }
    }

    private void recover(Path dead) throws IOException {
        List<Path> olds = olds(dead);
        Path there = dead.resolve(OLD + (olds.isEmpty() ? 0 : number(olds.get(olds.size() - 1)) + 1));
        // half a result of ours makes room; looked at aside, where nobody exchanges it
        if (!olds.isEmpty() && moved(target, there, false) && !ResultMark.whole(there) && ResultMark.onlyListed(there)) {
            delete(there);
        }
        putBack(dead);
        delete(dead);
    }

    /** The last result that stepped aside goes back when its place is empty; of others what somebody edited is kept. */
    private void putBack(Path run) throws IOException {
        List<Path> olds = olds(run);
        for (int i = olds.size() - 1; i >= 0; i--) {
            if (Files.exists(target) || !moved(olds.get(i), target, false)) {
                edited.keep(olds.get(i));
                delete(olds.get(i));
            }
        }
    }

    /** The last one stepped aside last. */
    private static List<Path> olds(Path folder) throws IOException {
        try (Stream<Path> list = Files.list(folder)) {
            return list.filter(p -> p.getFileName().toString().startsWith(OLD))
                .sorted(Comparator.comparingInt(WorkingFolder::number)).toList();
        } catch (NoSuchFileException e) {
            return List.of();
        }
    }

    private static int number(Path old) {
        return Integer.parseInt(old.getFileName().toString().substring(OLD.length()));
    }

    private static Path lockOf(Path folder) {
        return folder.resolveSibling(folder.getFileName() + LOCK);
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

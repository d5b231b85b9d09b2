package quietband.report.file;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.util.Comparator;
import java.util.List;
import java.util.stream.Stream;

/**
 * The hidden siblings of a result directory while it is exchanged, and their recovery after a process was killed. File systems
 * have no portable exchange of two folders, so the old result steps aside under a hidden name for the
 * microseconds between two renames; should the process die there, the next command puts it back.
 */
final class ResultLeftovers {

    private static final String NEW = ".quietband-new-";
    private static final String OLD = ".quietband-old-";

    private ResultLeftovers() { }

    /** Name of this process's temporary sibling. */
    static Path temporary(Path target) {
        return target.resolveSibling("." + target.getFileName() + NEW + ProcessHandle.current().pid() + "-"
            + Long.toHexString(System.nanoTime()));
    }

    /** Puts the temporary folder in the target's place. */
    static void exchange(Path temporary, Path target) throws IOException {
        if (!Files.exists(target)) {
            Files.move(temporary, target, StandardCopyOption.ATOMIC_MOVE);
            return;
        }
        Path aside = target.resolveSibling(temporary.getFileName().toString().replace(NEW, OLD));
        Files.move(target, aside, StandardCopyOption.ATOMIC_MOVE);
        try {
            Files.move(temporary, target, StandardCopyOption.ATOMIC_MOVE);
        } catch (IOException e) {
            Files.move(aside, target, StandardCopyOption.ATOMIC_MOVE);
            throw e;
        }
        delete(aside);
    }

    /** Cleans up after dead processes: an old result whose place is empty goes back, everything else of theirs goes. */
    static void recover(Path target) throws IOException {
        Path parent = target.getParent();
        if (!Files.isDirectory(parent)) {
            return;
        }
        List<Path> siblings;
        String prefix = "." + target.getFileName() + ".quietband-";
        try (Stream<Path> list = Files.list(parent)) {
            siblings = list.filter(p -> p.getFileName().toString().startsWith(prefix)).toList();
        }
        for (Path p : siblings) {
            String name = p.getFileName().toString();
            if (alive(name)) {
                continue;
            }
            if (name.contains(OLD) && !Files.exists(target)) {
                Files.move(p, target, StandardCopyOption.ATOMIC_MOVE);
            } else {
                delete(p);
            }
        }
    }

    private static boolean alive(String name) {
        int at = Math.max(name.lastIndexOf(NEW), name.lastIndexOf(OLD)) + NEW.length();
        String pid = name.substring(at).replaceAll("-.*", "");
        try {
            long owner = Long.parseLong(pid);
            // a container numbers its processes from 1 again: what carries this process's number is a predecessor's
            return owner != ProcessHandle.current().pid() && ProcessHandle.of(owner).filter(ProcessHandle::isAlive).isPresent();
        } catch (NumberFormatException e) {
            return true;
        }
    }

    /** Removes a folder of ours with everything in it; what cannot be removed is left to the next recovery. */
    static void delete(Path folder) {
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

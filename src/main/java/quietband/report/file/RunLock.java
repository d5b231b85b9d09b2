package quietband.report.file;

import static java.nio.file.StandardOpenOption.CREATE_NEW;
import static java.nio.file.StandardOpenOption.WRITE;

import java.io.IOException;
import java.nio.channels.FileChannel;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Set;
import java.util.concurrent.ConcurrentHashMap;

/**
 * Says that a run lives, to every process and container that sees its folder: the operating system's lock on a hidden file beside
 * the result. A killed process loses its lock with its life; one that was not killed takes the file away.
 */
final class RunLock implements AutoCloseable {

    /** Of this process: to open and close such a file would give up its lock (POSIX). */
    private static final Set<Path> HELD = ConcurrentHashMap.newKeySet();

    private final Path file;
    private final FileChannel channel;

    private RunLock(Path file, FileChannel channel) {
        this.file = file;
        this.channel = channel;
    }

    /** A new one; null when somebody took it for a dead run's just before it was locked: try another name. */
    static RunLock begin(Path file) throws IOException {
        HELD.add(file);
        FileChannel channel = FileChannel.open(file, CREATE_NEW, WRITE);
        return locked(file, channel, channel.lock() != null);
    }

    /** That of a dead run; null when the run lives, or another run just clears up after it. */
    static RunLock ofDead(Path file) throws IOException {
        if (!HELD.add(file)) {
            return null;
        }
        FileChannel channel;
        try {
            channel = FileChannel.open(file, WRITE);
        } catch (IOException e) {
            HELD.remove(file);
            return null;
        }
        return locked(file, channel, channel.tryLock() != null);
    }

    private static RunLock locked(Path file, FileChannel channel, boolean got) throws IOException {
        if (got && Files.exists(file)) {
            return new RunLock(file, channel);
        }
        channel.close();
        HELD.remove(file);
        return null;
    }

    @Override
    public void close() throws IOException {
        Files.deleteIfExists(file);
        channel.close();
        HELD.remove(file);
    }
}

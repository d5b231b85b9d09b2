package quietband.report.file;

import static java.nio.file.StandardOpenOption.CREATE;
import static java.nio.file.StandardOpenOption.WRITE;

import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.channels.FileChannel;
import java.nio.file.Files;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.UUID;
import java.util.concurrent.locks.ReentrantLock;

/**
 * Lets one run at a time, of any process or container on the machine, exchange what is at a place: the operating system's lock on a
 * hidden file beside it, which is gone when nobody holds it. A killed process loses its lock with its life.
 */
final class ExchangeLock implements AutoCloseable {

    /** Locked byte: far behind the token, so that the token can be read everywhere. */
    private static final long PLACE = 1 << 20;
    private static final ReentrantLock WITHIN_PROCESS = new ReentrantLock();

    private final Path file;
    private final FileChannel channel;

    private ExchangeLock(Path file, FileChannel channel) {
        this.file = file;
        this.channel = channel;
    }

    /** Waits until nobody else exchanges what is at the target; held and closed by one thread. */
    static ExchangeLock on(Path target) throws IOException {
        Path file = target.resolveSibling("." + target.getFileName() + ".quietband-lock");
        WITHIN_PROCESS.lock();
        ExchangeLock lock = null;
        try {
            while (lock == null) {
                lock = tried(file);
            }
            return lock;
        } finally {
            if (lock == null) {
                WITHIN_PROCESS.unlock();
            }
        }
    }

    /** Null when the file that was waited for is no longer the one at its place: its holder took it away. */
    private static ExchangeLock tried(Path file) throws IOException {
        FileChannel channel = FileChannel.open(file, CREATE, WRITE);
        boolean ours = false;
        try {
            channel.lock(PLACE, 1, false);
            byte[] token = UUID.randomUUID().toString().getBytes(java.nio.charset.StandardCharsets.US_ASCII);
            channel.truncate(0).write(ByteBuffer.wrap(token));
            ours = Arrays.equals(token, Files.readAllBytes(file));
        } catch (NoSuchFileException e) {
            return null;
        } finally {
            if (!ours) {
                channel.close();
            }
        }
        return ours ? new ExchangeLock(file, channel) : null;
    }

    @Override
    public void close() throws IOException {
        try {
            Files.deleteIfExists(file);
            channel.close();
        } finally {
            WITHIN_PROCESS.unlock();
        }
    }
}

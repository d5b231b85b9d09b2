package quietband.report.file;

import java.io.IOException;
import java.io.InputStream;
import java.io.OutputStream;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.security.DigestOutputStream;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.HexFormat;
import java.util.List;

/** SHA-256 of what files hold, in hexadecimal. */
public final class ContentHash {

    private ContentHash() { }

    /** A stream that hashes what goes through it. */
    static DigestOutputStream through(OutputStream to) {
        try {
            return new DigestOutputStream(to, MessageDigest.getInstance("SHA-256"));
        } catch (NoSuchAlgorithmException e) {
            throw new IllegalStateException("every Java has SHA-256", e);
        }
    }

    /** Of what went through; once. */
    static String of(DigestOutputStream stream) {
        return HexFormat.of().formatHex(stream.getMessageDigest().digest());
    }

    /** Of files, one after the other. @throws UncheckedIOException with the name of one that cannot be read */
    public static String of(List<Path> files) {
        DigestOutputStream stream = through(OutputStream.nullOutputStream());
        for (Path file : files) {
            try (InputStream in = Files.newInputStream(file)) {
                in.transferTo(stream);
            } catch (IOException e) {
                throw new UncheckedIOException(file + ": " + e.getMessage(), e);
            }
        }
        return of(stream);
    }
}

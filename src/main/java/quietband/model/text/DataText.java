package quietband.model.text;

import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStream;
import java.io.Reader;
import java.nio.ByteBuffer;
import java.nio.CharBuffer;
import java.nio.charset.CharsetDecoder;
import java.nio.charset.CoderResult;
import java.nio.charset.StandardCharsets;
import java.nio.file.AccessDeniedException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;

/**
 * The text of a long file of data, as UTF-8, read piece by piece: without a byte-order mark, and with a {@link ModelException} that
 * names the line where bytes are no text or a line does not end.
 */
public final class DataText extends Reader {

    private static final int LONGEST_LINE = 1_000_000;
    private static final int PIECE = 1 << 16;

    private final String shown;
    private final InputStream in;
    private final CharsetDecoder decoder = StandardCharsets.UTF_8.newDecoder();
    private final ByteBuffer bytes = ByteBuffer.allocate(PIECE).limit(0);
    private final CharBuffer chars = CharBuffer.allocate(PIECE).limit(0);
    private boolean begun;
    private boolean ended;
    private int line = 1;
    private int length;

    /** For the bytes of a file. */
    public DataText(InputStream in, String shown) {
        this.in = in;
        this.shown = shown;
    }

    /** Opens a file. @throws ModelException when it is no regular file or may not be read */
    public static BufferedReader open(Path path) throws IOException {
        String shown = path.toString();
        requireRegular(path, shown, "name a file");
        try {
            return new BufferedReader(new DataText(Files.newInputStream(path), shown));
        } catch (AccessDeniedException e) {
            throw ModelException.of(shown, "may not be read", "check its permissions");
        }
    }

    /** Refuses a directory, a device, a pipe and what is not there, before it is opened: reading them might never end. */
    public static void requireRegular(Path path, String shown, String advice) {
        if (Files.isDirectory(path)) {
            throw ModelException.of(shown, "is a directory", advice);
        }
        if (!Files.exists(path)) {
            throw ModelException.of(shown, "there is no such file", advice.equals("name a file") ? "check the name and the directory"
                : advice);
        }
        if (!Files.isRegularFile(path)) {
            throw ModelException.of(shown, "is no regular file", advice);
        }
    }

    @Override
    public int read(char[] into, int from, int most) throws IOException {
        while (!chars.hasRemaining()) {
            if (ended) {
                return -1;
            }
            fill();
        }
        int n = Math.min(most, chars.remaining());
        chars.get(into, from, n);
        return n;
    }

    private void fill() throws IOException {
        bytes.compact();
        int n = in.read(bytes.array(), bytes.position(), bytes.remaining());
        bytes.position(bytes.position() + Math.max(0, n)).flip();
        chars.clear();
        CoderResult result = decoder.decode(bytes, chars, n < 0);
        ended = n < 0;
        chars.flip();
        if (!begun && chars.hasRemaining()) {
            begun = true;
            chars.position(chars.get(0) == '\ufeff' ? 1 : 0);
        }
        for (int i = chars.position(); i < chars.limit(); i++) {
            boolean end = chars.get(i) == '\n';
            line += end ? 1 : 0;
            length = end ? 0 : length + 1;
            if (length > LONGEST_LINE) {
                throw wrong("has more than " + LONGEST_LINE + " characters in a line", "this is no table of data");
            }
        }
        if (result.isError()) {
            throw wrong("is not UTF-8 text", "save it as UTF-8; binary files cannot be read");
        }
    }

    private ModelException wrong(String found, String advice) {
        return new ModelException(List.of(new FileProblem(shown, line, 0, "", found, advice)));
    }

    @Override
    public void close() throws IOException {
        in.close();
    }
}

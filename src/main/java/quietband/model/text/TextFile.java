package quietband.model.text;

import java.io.IOException;
import java.io.InputStream;
import java.nio.ByteBuffer;
import java.nio.CharBuffer;
import java.nio.charset.CoderResult;
import java.nio.charset.StandardCharsets;
import java.nio.file.AccessDeniedException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;

/**
 * A text file read whole, as UTF-8, with one clear {@link ModelException} for everything that is no such file.
 *
 * @param shown how messages call it
 * @param bytes as stored; not copied, so not to be modified
 * @param mark  whether it starts with a byte-order mark
 * @param text  without that mark
 */
public record TextFile(String shown, byte[] bytes, boolean mark, String text) {

    /** Reads a regular file of at most so many bytes. */
    public static TextFile read(Path path, String shown, int mostBytes) {
        DataText.requireRegular(path, shown, "name a file");
        try {
            if (Files.size(path) > mostBytes) {
                throw tooLarge(shown, Files.size(path), mostBytes);
            }
            try (InputStream in = Files.newInputStream(path)) {
                byte[] bytes = in.readNBytes(mostBytes + 1);
                if (bytes.length > mostBytes) {
                    throw tooLarge(shown, bytes.length, mostBytes);
                }
                return of(shown, bytes);
            }
        } catch (AccessDeniedException e) {
            throw ModelException.of(shown, "may not be read", "check its permissions");
        } catch (IOException e) {
            throw ModelException.of(shown, "cannot be read", String.valueOf(e.getMessage()));
        }
    }

    /** Decodes and looks for bytes that no text has. */
    public static TextFile of(String shown, byte[] bytes) {
        CharBuffer chars = CharBuffer.allocate(bytes.length);
        CoderResult result = StandardCharsets.UTF_8.newDecoder().decode(ByteBuffer.wrap(bytes), chars, true);
        String text = chars.flip().toString();
        if (result.isError()) {
            int line = 1 + (int) text.chars().filter(c -> c == '\n').count();
            throw new ModelException(List.of(new FileProblem(shown, line, 0, "", "is not UTF-8 text",
                "save it as UTF-8; binary files cannot be read")));
        }
        boolean mark = text.startsWith("\ufeff");
        String plain = mark ? text.substring(1) : text;
        refuseControls(shown, plain);
        return new TextFile(shown, bytes, mark, plain);
    }

    private static void refuseControls(String shown, String text) {
        int line = 1;
        int lineStart = 0;
        for (int i = 0; i < text.length(); i++) {
            char c = text.charAt(i);
            if (c == '\n') {
                line++;
                lineStart = i + 1;
            } else if ((c < ' ' && c != '\t' && c != '\r') || (c >= 0x7f && c < 0xa0 && c != 0x85)
                || c == 0xfeff || c >= 0xfffe) {
                throw new ModelException(List.of(new FileProblem(shown, line, i - lineStart + 1, "",
                    String.format(java.util.Locale.ROOT, "control character U+%04X", (int) c), "this is no text file, or was damaged")));
            }
        }
    }

    private static ModelException tooLarge(String shown, long size, int most) {
        return ModelException.of(shown, "has " + size / 1_000_000 + " MB", "at most " + most / 1_000_000
            + " MB are read");
    }
}

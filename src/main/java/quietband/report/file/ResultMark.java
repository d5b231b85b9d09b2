package quietband.report.file;

import com.fasterxml.jackson.core.JsonFactory;
import com.fasterxml.jackson.core.JsonParser;
import com.fasterxml.jackson.core.JsonToken;
import java.io.IOException;
import java.io.Writer;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;

/**
 * The mark of a result directory, {@code quietband-result.json}.
 *
 * @param command   that wrote it
 * @param version   of the program
 * @param modelHash SHA-256 of the model or data it was made from, hexadecimal
 * @param seed      of all randomness in it
 * @param files     every file of the directory, the mark included
 */
public record ResultMark(String command, String version, String modelHash, long seed, List<String> files) {

    /** Its name. */
    public static final String FILE = "quietband-result.json";

    private static final long LARGEST = 1 << 20;

    public ResultMark {
        files = List.copyOf(files);
    }

    /** Before the files are known. */
    public ResultMark(String command, String version, String modelHash, long seed) {
        this(command, version, modelHash, seed, List.of());
    }

    /** The same with a list of files. */
    ResultMark withFiles(List<String> names) {
        return new ResultMark(command, version, modelHash, seed, names);
    }

    void write(Writer writer) throws IOException {
        Json json = new Json();
        json.object(() -> {
            json.field("command", command).field("version", version).field("model_hash", modelHash).field("seed", seed);
            json.array("files", () -> files.forEach(json::item));
        });
        writer.write(json.text());
    }

    /** The files a mark lists; empty when there is no mark or it cannot be read as one. */
    static Set<String> filesListedIn(Path mark) throws IOException {
        Set<String> files = new TreeSet<>();
        if (!Files.isRegularFile(mark) || Files.size(mark) > LARGEST) {
            return files;
        }
        try (JsonParser parser = new JsonFactory().createParser(mark.toFile())) {
            boolean ours = false;
            while (parser.nextToken() != null) {
                if (parser.currentToken() == JsonToken.FIELD_NAME && parser.currentName().equals("command")) {
                    ours = true;
                } else if (parser.currentToken() == JsonToken.FIELD_NAME && parser.currentName().equals("files")
                    && parser.nextToken() == JsonToken.START_ARRAY) {
                    while (parser.nextToken() == JsonToken.VALUE_STRING) {
                        files.add(parser.getText());
                    }
                }
            }
            return ours ? files : Set.of();
        } catch (com.fasterxml.jackson.core.JacksonException e) {
            return Set.of();
        }
    }
}

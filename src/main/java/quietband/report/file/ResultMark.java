package quietband.report.file;

import com.fasterxml.jackson.core.JacksonException;
import com.fasterxml.jackson.core.JsonFactory;
import com.fasterxml.jackson.core.JsonParser;
import com.fasterxml.jackson.core.JsonToken;
import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.io.Writer;
import java.nio.file.Files;
import java.nio.file.LinkOption;
import java.nio.file.Path;
import java.util.Collections;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import java.util.stream.Stream;

/**
 * The mark of a result directory, {@code quietband-result.json}.
 *
 * @param command   that wrote it
 * @param version   of the program
 * @param modelHash SHA-256 of the model or data it was made from, hexadecimal
 * @param seed      of all randomness in it
 * @param files     every file of the directory, the mark included, with the SHA-256 of what it holds; empty for
 *                  the mark and for pages, which have the day in them
 */
public record ResultMark(String command, String version, String modelHash, long seed, Map<String, String> files) {

    /** Its name. */
    public static final String FILE = "quietband-result.json";

    private static final long LARGEST = 1 << 20;

    public ResultMark {
        files = Collections.unmodifiableMap(new TreeMap<>(files));
    }

    /** Before the files are known. */
    public ResultMark(String command, String version, String modelHash, long seed) {
        this(command, version, modelHash, seed, Map.of());
    }

    /** The same with a list of files. */
    ResultMark withFiles(Map<String, String> hashes) {
        return new ResultMark(command, version, modelHash, seed, hashes);
    }

    void write(Writer writer) throws IOException {
        Json json = new Json();
        json.object(() -> {
            json.field("command", command).field("version", version).field("model_hash", modelHash).field("seed", seed);
            json.array("files", () -> files.keySet().forEach(json::item));
            json.object("sha256", () -> files.forEach((name, hash) -> {
                if (!hash.isEmpty()) {
                    json.field(name, hash);
                }
            }));
        });
        writer.write(json.text());
    }

    /** The files a mark lists, with their hashes where it has them; empty when there is no mark or it cannot be read as one. */
    static Map<String, String> filesListedIn(Path mark) throws IOException {
        Map<String, String> files = new TreeMap<>();
        if (!Files.isRegularFile(mark) || Files.size(mark) > LARGEST) {
            return files;
        }
        try (InputStream in = Files.newInputStream(mark); JsonParser parser = new JsonFactory().createParser(in)) {
            boolean ours = false;
            while (parser.nextToken() != null) {
                if (parser.currentToken() != JsonToken.FIELD_NAME) {
                    continue;
                }
                String field = parser.currentName();
                ours |= field.equals("command");
                if (field.equals("files") && parser.nextToken() == JsonToken.START_ARRAY) {
                    while (parser.nextToken() == JsonToken.VALUE_STRING) {
                        files.putIfAbsent(parser.getText(), "");
                    }
                } else if (field.equals("sha256") && parser.nextToken() == JsonToken.START_OBJECT) {
                    while (parser.nextToken() == JsonToken.FIELD_NAME) {
                        String name = parser.currentName();
                        files.computeIfPresent(name, (n, none) -> text(parser));
                    }
                }
            }
            return ours ? files : Map.of();
        } catch (JacksonException | UncheckedIOException e) {
            return Map.of();
        }
    }

    private static String text(JsonParser parser) {
        try {
            return parser.nextToken() == JsonToken.VALUE_STRING ? parser.getText() : "";
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    /** Whether a folder is a result with every file that its mark lists. */
    static boolean whole(Path folder) throws IOException {
        Set<String> listed = filesListedIn(folder.resolve(FILE)).keySet();
        return !listed.isEmpty() && names(folder).containsAll(listed);
    }

    /** Whether a folder holds nothing but what its mark lists. */
    static boolean onlyListed(Path folder) throws IOException {
        return filesListedIn(folder.resolve(FILE)).keySet().containsAll(names(folder));
    }

    /** Every file of a folder, and every empty folder in it: relative, with / between folders, sorted. */
    static List<String> names(Path directory) throws IOException {
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
}

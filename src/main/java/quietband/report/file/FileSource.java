package quietband.report.file;

import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Collectors;

/** What the comments of data files say about where their figures come from: source, status, and that they are invented. */
public final class FileSource {

    private FileSource() { }

    /** One sentence for each file that says something, by name without its folder. */
    public static List<String> of(Map<String, byte[]> files) {
        return files.entrySet().stream().flatMap(e -> of(e.getKey(), new String(e.getValue(), StandardCharsets.UTF_8)).stream()).toList();
    }

    /** "name: Source: ... Status: ..."; empty when the comments say nothing. */
    public static Optional<String> of(String name, String text) {
        String said = text.lines().filter(l -> l.startsWith("#")).map(l -> l.substring(1).strip())
            .filter(l -> l.startsWith("Source:") || l.startsWith("Status:") || l.startsWith("INVENTED"))
            .map(l -> l.endsWith(".") ? l : l + ".").collect(Collectors.joining(" "));
        return said.isEmpty() ? Optional.empty() : Optional.of(name.substring(name.lastIndexOf('/') + 1) + ": " + said);
    }
}

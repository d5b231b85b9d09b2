package quietband.model.edit;

import java.nio.file.Path;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Set;
import quietband.model.text.FlowText;
import quietband.model.text.TextEdits;
import quietband.model.text.YamlNode;
import quietband.model.text.YamlReader;

/**
 * A model and the files it refers to, ready to be written into one directory.
 *
 * @param text  of the model, with every reference inside the directory
 * @param files contents by relative name, with / between directories
 */
public record ModelBundle(String text, Map<String, byte[]> files) {

    public ModelBundle {
        files = Map.copyOf(files);
    }

    /**
     * Packs a model. A reference inside the model's directory stays as it is; one that is absolute or leads out of it
     * becomes {@code files/NAME}, with a number in front where that is taken.
     */
    static ModelBundle of(String shown, String text, Map<String, byte[]> contents) {
        Map<String, byte[]> files = new LinkedHashMap<>();
        Map<String, String> renamed = new LinkedHashMap<>();
        contents.forEach((name, bytes) -> {
            if (inside(name)) {
                files.put(plain(name), bytes);
            }
        });
        contents.forEach((name, bytes) -> {
            if (!inside(name)) {
                String last = String.valueOf(Path.of(name).getFileName());
                String free = "files/" + last;
                for (int i = 2; files.containsKey(free); i++) {
                    free = "files/" + i + "-" + last;
                }
                files.put(free, bytes);
                renamed.put(name, free);
            }
        });
        return new ModelBundle(rename(shown, text, renamed), files);
    }

    private static boolean inside(String name) {
        Path path = Path.of(name).normalize();
        return !path.isAbsolute() && !path.startsWith("..");
    }

    private static String plain(String name) {
        return Path.of(name).normalize().toString().replace('\\', '/');
    }

    private static String rename(String shown, String text, Map<String, String> renamed) {
        if (renamed.isEmpty()) {
            return text;
        }
        TextEdits edits = new TextEdits(text);
        visit(YamlReader.read(shown, text), renamed, edits);
        return edits.apply();
    }

    /** Rewrites the values of the keys that name files. */
    private static void visit(YamlNode node, Map<String, String> renamed, TextEdits edits) {
        for (YamlNode.Pair pair : node.pairs()) {
            YamlNode value = pair.value();
            boolean names = Set.of("filter", "file", "lot").contains(pair.key().text()) && value.isScalar();
            String other = names ? renamed.get(value.text().strip()) : null;
            if (other != null) {
                edits.replace(value.span().start(), edits.end(value), FlowText.quoted(other));
            } else if (!value.alias()) {
                visit(value, renamed, edits);
            }
        }
        node.items().stream().filter(item -> !item.alias()).forEach(item -> visit(item, renamed, edits));
    }
}

package quietband.model;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import quietband.units.Dimension;

/** Walks a model's text along the format and lists every value in it, and every key that its blocks leave out. */
final class FileValues {

    private final String text;
    private final List<FileValue> values = new ArrayList<>();

    private FileValues(String text) {
        this.text = text;
    }

    /** The values in the order of the file, those left out behind those of their block. */
    static List<FileValue> of(String file, String text) {
        FileValues list = new FileValues(text);
        list.block(ModelForm.ROOT, NodeReader.read(file, text), "");
        return List.copyOf(list.values);
    }

    private void block(Form.Block form, Node node, String path) {
        for (Node.Pair pair : node.pairs()) {
            form.key(pair.key().text()).ifPresent(key -> value(key, pair.value(), pair.key(), path));
        }
        for (Key key : form.keys()) {
            if (node.get(key.name()) == null) {
                values.add(left(key, path));
            }
        }
    }

    private static FileValue left(Key key, String block) {
        return new FileValue(join(block, key.name()), block, key.name(), "", "", false, words(key.form()),
            dimension(key.form()), key.form() instanceof Form.Text, key.doc(), "", Examples.of(key));
    }

    private void value(Key key, Node node, Node where, String block) {
        String path = join(block, key.name());
        Form form = key.form() instanceof Form.WordOr other && !node.isScalar() ? other.other() : key.form();
        if (form instanceof Form.Block inner && node.isMap()) {
            block(inner, node, path);
        } else if (form instanceof Form.AxisBlock axes && node.isMap()) {
            axes(axes, node, path);
        } else if (form instanceof Form.Entries entries && node.isList()) {
            entries(entries, node, path);
        } else if (form instanceof Form.Places places && node.isList()) {
            for (int i = 0; i < node.items().size(); i++) {
                String place = block + "[" + (i + 1) + "]";
                spread(new Key(key.name(), places.each(), false, 0, key.doc()), node.items().get(i), where, place);
            }
        } else if (form instanceof Form.Spread) {
            spread(key, node, where, block);
        } else {
            add(key, node, where, block, path, "");
        }
    }

    private void spread(Key key, Node node, Node where, String block) {
        String path = join(block, key.name());
        if (!node.isMap()) {
            add(key, node, where, block, path, "");
            return;
        }
        for (Node.Pair pair : node.pairs()) {
            add(key, pair.value(), where, block, join(path, pair.key().text()), pair.key().text());
        }
    }

    private void axes(Form.AxisBlock form, Node node, String path) {
        boolean perAxis = node.pairs().stream().anyMatch(p -> Axis.of(p.key().text()) != null);
        if (!perAxis) {
            block(form.each(), node, path);
            return;
        }
        for (Node.Pair pair : node.pairs()) {
            if (pair.value().isMap()) {
                block(form.each(), pair.value(), join(path, pair.key().text()));
            }
        }
    }

    private void entries(Form.Entries form, Node node, String path) {
        for (int i = 0; i < node.items().size(); i++) {
            Node item = node.items().get(i);
            Node named = form.each().key("name").isPresent() ? item.get("name") : null;
            String name = named == null || !named.text().strip().matches("[^.\\[\\]]+") ? "" + (i + 1) : named.text().strip();
            block(form.each(), item, join(path, name));
        }
    }

    private void add(Key key, Node node, Node where, String block, String path, String part) {
        values.add(new FileValue(path, block, key.name(), part, node.isNull() ? "" : shown(node), true, words(key.form()),
            dimension(key.form()), key.form() instanceof Form.Text, key.doc(), comment(node, where),
            Examples.of(key)));
    }

    private String shown(Node node) {
        return node.isScalar() ? node.text().replaceAll("\\s+", " ").strip() : FlowText.of(node, text);
    }

    private static List<String> words(Form form) {
        return form instanceof Form.Choice choice ? choice.words() : List.of();
    }

    private static Optional<Dimension> dimension(Form form) {
        return form instanceof Form.Num num ? Optional.of(num.dimension())
            : form instanceof Form.Spread spread ? Optional.of(spread.each().dimension()) : Optional.empty();
    }

    /** What stands behind a mark on the value's last line, else on that of its key. */
    private String comment(Node node, Node key) {
        String own = comment(node.span().end());
        return own.isEmpty() && key.line() != node.line() ? comment(key.span().end()) : own;
    }

    private String comment(int from) {
        int end = text.indexOf('\n', from);
        String rest = text.substring(Math.min(from, text.length()), end < 0 ? text.length() : end);
        int mark = rest.indexOf(" #");
        return mark < 0 ? "" : rest.substring(mark + 2).strip();
    }

    private static String join(String path, String key) {
        return path.isEmpty() ? key : path + "." + key;
    }
}

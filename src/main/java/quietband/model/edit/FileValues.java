package quietband.model.edit;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import quietband.model.Axis;
import quietband.model.format.FormatKey;
import quietband.model.format.FormatNode;
import quietband.model.format.ModelForm;
import quietband.model.format.ValueExamples;
import quietband.model.text.FlowText;
import quietband.model.text.YamlNode;
import quietband.model.text.YamlReader;
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
        list.block(ModelForm.ROOT, YamlReader.read(file, text), "");
        return List.copyOf(list.values);
    }

    private void block(FormatNode.Block form, YamlNode node, String path) {
        for (YamlNode.Pair pair : node.pairs()) {
            form.key(pair.key().text()).ifPresent(key -> value(key, pair.value(), pair.key(), path));
        }
        for (FormatKey key : form.keys()) {
            if (node.get(key.name()) == null) {
                values.add(left(key, path));
            }
        }
    }

    private static FileValue left(FormatKey key, String block) {
        return new FileValue(join(block, key.name()), block, key.name(), "", "", false, words(key.form()),
            dimension(key.form()), key.form() instanceof FormatNode.Text, key.doc(), "", ValueExamples.of(key));
    }

    private void value(FormatKey key, YamlNode node, YamlNode where, String block) {
        String path = join(block, key.name());
        FormatNode form = key.form() instanceof FormatNode.WordOr other && !node.isScalar() ? other.other() : key.form();
        if (form instanceof FormatNode.Block inner && node.isMap()) {
            block(inner, node, path);
        } else if (form instanceof FormatNode.AxisBlock axes && node.isMap()) {
            axes(axes, node, path);
        } else if (form instanceof FormatNode.Entries entries && node.isList()) {
            entries(entries, node, path);
        } else if (form instanceof FormatNode.Places places && node.isList()) {
            for (int i = 0; i < node.items().size(); i++) {
                String place = block + "[" + (i + 1) + "]";
                spread(new FormatKey(key.name(), places.each(), false, 0, key.doc()), node.items().get(i), where, place);
            }
        } else if (form instanceof FormatNode.Spread) {
            spread(key, node, where, block);
        } else {
            add(key, node, where, block, path, "");
        }
    }

    private void spread(FormatKey key, YamlNode node, YamlNode where, String block) {
        String path = join(block, key.name());
        if (!node.isMap()) {
            add(key, node, where, block, path, "");
            return;
        }
        for (YamlNode.Pair pair : node.pairs()) {
            add(key, pair.value(), where, block, join(path, pair.key().text()), pair.key().text());
        }
    }

    private void axes(FormatNode.AxisBlock form, YamlNode node, String path) {
        boolean perAxis = node.pairs().stream().anyMatch(p -> Axis.of(p.key().text()) != null);
        if (!perAxis) {
            block(form.each(), node, path);
            return;
        }
        for (YamlNode.Pair pair : node.pairs()) {
            if (pair.value().isMap()) {
                block(form.each(), pair.value(), join(path, pair.key().text()));
            }
        }
    }

    private void entries(FormatNode.Entries form, YamlNode node, String path) {
        for (int i = 0; i < node.items().size(); i++) {
            YamlNode item = node.items().get(i);
            YamlNode named = form.each().key("name").isPresent() ? item.get("name") : null;
            String name = named == null || !named.text().strip().matches("[^.\\[\\]]+") ? "" + (i + 1) : named.text().strip();
            block(form.each(), item, join(path, name));
        }
    }

    private void add(FormatKey key, YamlNode node, YamlNode where, String block, String path, String part) {
        values.add(new FileValue(path, block, key.name(), part, node.isNull() ? "" : shown(node), true, words(key.form()),
            dimension(key.form()), key.form() instanceof FormatNode.Text, key.doc(), comment(node, where),
            ValueExamples.of(key)));
    }

    private String shown(YamlNode node) {
        return node.isScalar() ? node.text().replaceAll("\\s+", " ").strip() : FlowText.of(node, text);
    }

    private static List<String> words(FormatNode form) {
        return form instanceof FormatNode.Choice choice ? choice.words() : List.of();
    }

    private static Optional<Dimension> dimension(FormatNode form) {
        return form instanceof FormatNode.Num num ? Optional.of(num.dimension())
            : form instanceof FormatNode.Spread spread ? Optional.of(spread.each().dimension()) : Optional.empty();
    }

    /** What stands behind a mark on the value's last line, else on that of its key. */
    private String comment(YamlNode node, YamlNode key) {
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

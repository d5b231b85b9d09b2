package quietband.model.edit;

import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import quietband.model.Axis;
import quietband.model.format.FormatKey;
import quietband.model.format.FormatNode;
import quietband.model.format.ModelForm;
import quietband.model.quantity.BadPathException;
import quietband.model.quantity.NumberAddress;
import quietband.model.text.FlowText;
import quietband.model.text.GroupSplit;
import quietband.model.text.SpellingSuggestion;
import quietband.model.text.TextEdits;
import quietband.model.text.YamlNode;

/** Follows a path through nodes and format to what it names, and collects the edits that change it there. */
final class PathEdits {

    private final String path;
    private final TextEdits edits;
    private final Optional<String> value;
    private String rewritten;

    /** @param value what to set; empty to remove */
    PathEdits(String path, String text, Optional<String> value) {
        this.path = path;
        this.edits = new TextEdits(text);
        this.value = value;
    }

    /** A text in which the path leads further: to be walked again instead of making the edits. */
    Optional<String> rewritten() {
        return Optional.ofNullable(rewritten);
    }

    TextEdits edits() {
        return edits;
    }

    void from(YamlNode root, List<NumberAddress.Token> tokens) {
        block(root, ModelForm.ROOT, tokens);
    }

    private void child(YamlNode parent, int index, FormatNode form, List<NumberAddress.Token> rest, int place) {
        YamlNode node = parent.pairs().get(index).value();
        if (rest.isEmpty() && place == 0) {
            arrive(parent, index);
        } else if (form instanceof FormatNode.Block block) {
            block(node, block, rest);
        } else if (form instanceof FormatNode.AxisBlock axes) {
            axisBlock(parent, index, axes, rest);
        } else if (form instanceof FormatNode.Entries entries) {
            entries(node, entries, rest);
        } else if (form instanceof FormatNode.WordOr other && node.isList()) {
            child(parent, index, other.other(), rest, place);
        } else if (form instanceof FormatNode.Places places) {
            places(node, places, rest, place);
        } else if (form instanceof FormatNode.Spread spread) {
            spread(parent, parent.pairs().get(index).key(), node, spread, rest);
        } else {
            throw new BadPathException(path, "leads below a single value", "leave out '" + rest.get(0).name() + "'");
        }
    }

    private void arrive(YamlNode parent, int index) {
        YamlNode.Pair pair = parent.pairs().get(index);
        if (value.isPresent()) {
            edits.replace(parent, pair.key(), pair.value(), value.get());
        } else {
            edits.remove(parent, index);
        }
    }

    private static int indexOf(YamlNode map, String key) {
        for (int i = 0; i < map.pairs().size(); i++) {
            if (map.pairs().get(i).key().text().equals(key)) {
                return i;
            }
        }
        return -1;
    }

    private void block(YamlNode node, FormatNode.Block form, List<NumberAddress.Token> rest) {
        block(node, form, rest, 0);
    }

    private void block(YamlNode node, FormatNode.Block form, List<NumberAddress.Token> rest, int place) {
        String name = rest.get(0).name();
        FormatKey key = form.key(name).orElseThrow(() -> new BadPathException(path, "there is no key '" + name + "'",
            SpellingSuggestion.advice(name, form.names(), "known here: " + String.join(", ", form.names()))));
        int index = indexOf(node, name);
        List<NumberAddress.Token> deeper = rest.subList(1, rest.size());
        if (index >= 0) {
            child(node, index, key.form(), deeper, place);
        } else if (value.isPresent()) {
            edits.insert(node, form.names(), name, nested(key.form(), deeper));
        }
    }

    /** What stands at a key that is missing so far: the value, in maps for the rest of the path. */
    private String nested(FormatNode form, List<NumberAddress.Token> rest) {
        if (rest.isEmpty()) {
            return value.orElseThrow();
        }
        String name = rest.get(0).name();
        if (form instanceof FormatNode.Spread spread && spread.keys().contains(name) && rest.size() == 1) {
            return "{" + name + ": " + value.orElseThrow() + "}";
        }
        if (form instanceof FormatNode.AxisBlock axes) {
            String last = rest.get(rest.size() - 1).name();
            boolean axis = Axis.of(last) != null;
            String inner = nested(axes.each(), axis ? rest.subList(0, rest.size() - 1) : rest);
            return axis ? "{" + last + ": " + inner + "}" : inner;
        }
        if (form instanceof FormatNode.Block block && block.key(name).isPresent()) {
            boolean turn = block.key("axis").filter(k -> k.form() instanceof FormatNode.Direction).isPresent();
            return "{" + (turn && !name.equals("axis") ? "axis: z, " : "") + name + ": "
                + nested(block.key(name).get().form(), rest.subList(1, rest.size())) + "}";
        }
        throw new BadPathException(path, "there is nothing to set at '" + name + "'", "set what encloses it");
    }

    private void axisBlock(YamlNode parent, int index, FormatNode.AxisBlock form, List<NumberAddress.Token> rest) {
        YamlNode node = parent.pairs().get(index).value();
        YamlNode key = parent.pairs().get(index).key();
        boolean perAxis = node.pairs().stream().anyMatch(p -> Axis.of(p.key().text()) != null);
        String last = rest.get(rest.size() - 1).name();
        boolean first = Axis.of(rest.get(0).name()) != null;
        if (!first && Axis.of(last) == null) {
            if (!perAxis) {
                block(node, form.each(), rest);
            } else {
                node.pairs().forEach(pair -> block(pair.value(), form.each(), rest));
            }
            return;
        }
        String axis = first ? rest.get(0).name() : last;
        List<NumberAddress.Token> inner = first ? rest.subList(1, rest.size()) : rest.subList(0, rest.size() - 1);
        if (!perAxis) {
            String one = FlowText.of(node, edits.text());
            TextEdits apart = new TextEdits(edits.text());
            apart.replace(parent, key, node, FormatNode.Spread.XYZ.stream().map(a -> a + ": " + one)
                .collect(Collectors.joining(", ", "{", "}")));
            rewritten = apart.apply();
        } else if (indexOf(node, axis) >= 0) {
            child(node, indexOf(node, axis), form.each(), inner, 0);
        } else if (value.isPresent()) {
            edits.insert(node, FormatNode.Spread.XYZ, axis, nested(form.each(), inner));
        }
    }

    private void entries(YamlNode list, FormatNode.Entries form, List<NumberAddress.Token> rest) {
        NumberAddress.Token token = rest.get(0);
        int family = token.index() > 0 ? find(list, token.name() + "-" + token.index()) : -1;
        int exact = find(list, token.name());
        if (exact >= 0) {
            entry(list, exact, form, rest.subList(1, rest.size()), token.index());
        } else if (family >= 0) {
            entry(list, family, form, rest.subList(1, rest.size()), 0);
        } else if (form.each().key(token.name()).isPresent()) {
            list.items().forEach(item -> block(item, form.each(), rest));
        } else {
            boolean any = false;
            for (int i = 0; i < list.items().size(); i++) {
                if (NumberAddress.family(token.name(), name(list, i))) {
                    entry(list, i, form, rest.subList(1, rest.size()), 0);
                    any = true;
                }
            }
            if (!any) {
                List<String> known = IntStream.range(0, list.items().size())
                    .mapToObj(i -> name(list, i)).toList();
                throw new BadPathException(path, "there is no entry '" + token.name() + "'",
                    SpellingSuggestion.advice(token.name(), known, "known: " + String.join(", ", known)));
            }
        }
    }

    private static String name(YamlNode list, int index) {
        YamlNode name = list.items().get(index).get("name");
        return name == null ? "" + (index + 1) : name.text().strip();
    }

    private static int find(YamlNode list, String name) {
        for (int i = 0; i < list.items().size(); i++) {
            if (name(list, i).equals(name)) {
                return i;
            }
        }
        int number = name.matches("[0-9]{1,6}") ? Integer.parseInt(name) : 0;
        boolean there = number >= 1 && number <= list.items().size();
        return there && !NumberAddress.family(name, name(list, number - 1)) ? number - 1 : -1;
    }

    private void entry(YamlNode list, int index, FormatNode.Entries form, List<NumberAddress.Token> rest, int place) {
        YamlNode entry = list.items().get(index);
        YamlNode at = entry.get("at");
        if (rest.isEmpty()) {
            if (value.isEmpty() || place > 0) {
                throw new BadPathException(path, "is a whole entry", "name a key in it");
            }
            edits.replace(entry.span().start(), edits.end(entry), value.get());
        } else if (place == 0 || rest.get(0).name().equals("at")) {
            block(entry, form.each(), rest, place);
        } else if (at == null || place > at.items().size()) {
            throw new BadPathException(path, "there is no place " + place, at == null ? "" : "the group has "
                + at.items().size());
        } else if (at.items().size() == 1) {
            block(entry, form.each(), rest);
        } else {
            rewritten = GroupSplit.of(edits.text(), list, entry, name(list, index));
        }
    }

    private void places(YamlNode list, FormatNode.Places form, List<NumberAddress.Token> rest, int place) {
        for (int i = 0; i < list.items().size(); i++) {
            YamlNode item = list.items().get(i);
            if (place != 0 && place != i + 1) {
                continue;
            }
            if (rest.isEmpty()) {
                edits.replace(item.span().start(), edits.end(item), value.orElseThrow(
                    () -> new BadPathException(path, "is a place in a list", "set at as a whole")));
            } else {
                spread(list, null, item, form.each(), rest);
            }
        }
    }

    private void spread(YamlNode parent, YamlNode key, YamlNode node, FormatNode.Spread form, List<NumberAddress.Token> rest) {
        String axis = rest.get(0).name();
        if (!form.keys().contains(axis) || rest.size() > 1) {
            throw new BadPathException(path, "there is no '" + axis + "' here", "known: " + String.join(", ", form.keys()));
        }
        if (node.isMap() && indexOf(node, axis) >= 0) {
            arrive(node, indexOf(node, axis));
        } else if (node.isMap() && value.isPresent()) {
            edits.insert(node, form.keys(), axis, value.get());
        } else if (node.isScalar()) {
            String old = FlowText.of(node, edits.text());
            edits.replace(parent, key, node, form.keys().stream().filter(k -> value.isPresent() || !k.equals(axis))
                .map(k -> k + ": " + (k.equals(axis) ? value.get() : old)).collect(Collectors.joining(", ", "{", "}")));
        }
    }
}

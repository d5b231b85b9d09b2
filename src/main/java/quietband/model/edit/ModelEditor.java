package quietband.model.edit;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import quietband.model.format.FormatKey;
import quietband.model.format.FormatNode;
import quietband.model.format.ModelForm;
import quietband.model.quantity.BadPathException;
import quietband.model.quantity.NumberAddress;
import quietband.model.text.TextEdits;
import quietband.model.text.YamlAliases;
import quietband.model.text.YamlNode;
import quietband.model.text.YamlReader;
import quietband.units.Amounts;
import quietband.units.Dimension;
import quietband.units.Unit;
import quietband.units.WrongAmountException;

/**
 * Changes values in the text of a model by path and leaves everything else byte for byte. Nothing is checked beyond
 * the path; the changed text is to be read again.
 */
final class ModelEditor {

    private final String file;
    private String text;
    private YamlNode root;
    /** Exchanges of single numbers that are still to be made in the text, which is read once for all of them. */
    private TextEdits pending = new TextEdits("");

    /** An editor of a model's text, without byte-order mark. */
    ModelEditor(String file, String text) {
        this.file = file;
        update(text);
        if (hasAnchor(root)) {
            update(YamlAliases.expand(text, root));
        }
    }

    private void update(String changed) {
        text = changed;
        root = YamlReader.read(file, changed);
        pending = new TextEdits(changed);
    }

    /** Makes what is pending; whether there was something. */
    private boolean settle() {
        boolean some = !pending.none();
        if (some) {
            update(pending.apply());
        }
        return some;
    }

    private static boolean hasAnchor(YamlNode node) {
        return !node.anchor().isEmpty() || node.items().stream().anyMatch(ModelEditor::hasAnchor)
            || node.pairs().stream().anyMatch(p -> hasAnchor(p.key()) || hasAnchor(p.value()));
    }

    /** The text as changed so far. */
    String text() {
        return pending.apply();
    }

    /** Sets what a path names to a piece of YAML; missing keys and blocks are added. @throws BadPathException */
    void set(String path, String value) {
        edit(path, Optional.of(value));
        // it may be a name that the next path goes through
        settle();
    }

    /** Takes the key a path names out, with its value; nothing happens where it is missing. @throws BadPathException */
    void remove(String path) {
        edit(path, Optional.empty());
    }

    /** Adds entries, each a flow map, at the end of a list at the top of the file; the list is made where it is missing. */
    void append(String key, List<String> entries) {
        settle();
        YamlNode list = root.get(key);
        if (list == null || list.isNull() || list.items().isEmpty()) {
            set(key, entries.size() == 1 ? "[" + entries.get(0) + "]" : "- " + String.join("\n- ", entries));
            return;
        }
        TextEdits edits = new TextEdits(text);
        int last = edits.end(list.items().get(list.items().size() - 1));
        if (list.style() == YamlNode.Style.FLOW) {
            edits.replace(last, last, ",\n  " + String.join(",\n  ", entries));
        } else {
            int stop = edits.lineStop(last);
            String lead = "\n" + " ".repeat(list.column() - 1) + "- ";
            edits.replace(stop, stop, lead + String.join(lead, entries));
        }
        update(edits.apply());
    }

    /**
     * The piece of YAML at a path, the first one where it names several; empty where there is none. Exchanges of single numbers that are
     * pending are not in it: they change neither what stands where nor in which unit.
     */
    Optional<String> current(String path) {
        List<NumberAddress.Token> tokens = NumberAddress.tokens(path);
        String seen = text;
        for (int round = 0; tokens != null && round < 8; round++) {
            PathEdits walk = new PathEdits(path, seen, Optional.of("0"));
            walk.from(round == 0 ? root : YamlReader.read(file, seen), spread(tokens));
            if (walk.rewritten().isEmpty()) {
                return walk.edits().replaced();
            }
            seen = walk.rewritten().get();
        }
        return Optional.empty();
    }

    /**
     * Sets what a path names to a number, printed in full precision in the unit that stands there, or in a fitting
     * one where there is none.
     *
     * @param value in the base unit of the dimension
     */
    void set(String path, double value, Dimension dimension) {
        Optional<Unit> unit = current(path).flatMap(old -> unit(old, dimension));
        edit(path, Optional.of(unit.map(u -> Amounts.print(value, u)).orElseGet(() -> Amounts.print(value, dimension))));
    }

    /** The unit of the first amount in a piece of YAML. */
    private static Optional<Unit> unit(String piece, Dimension dimension) {
        for (String part : piece.split("[,:{}\\[\\]\n]")) {
            Optional<Unit> unit = amountUnit(part.strip().replaceAll("^['\"]|['\"]$", ""), dimension);
            if (unit.isPresent()) {
                return unit;
            }
        }
        return Optional.empty();
    }

    private static Optional<Unit> amountUnit(String text, Dimension dimension) {
        try {
            return Amounts.amount(text, dimension).unit();
        } catch (WrongAmountException e) {
            return Optional.empty();
        }
    }

    private void edit(String path, Optional<String> value) {
        List<NumberAddress.Token> tokens = NumberAddress.tokens(path);
        if (tokens == null) {
            throw new BadPathException(path, "is no path", "join keys with dots, e.g. platform.springs.stiffness.x");
        }
        for (int round = 0; round < 9; round++) {
            PathEdits walk = new PathEdits(path, text, value);
            walk.from(root, spread(tokens));
            boolean found = walk.rewritten().isEmpty();
            if (found && walk.edits().exchangesOneValue() && pending.join(walk.edits())) {
                return;
            }
            if (settle()) {
                // the same again in the text as it is now
                continue;
            }
            update(found ? walk.edits().apply() : walk.rewritten().get());
            if (found) {
                return;
            }
        }
        throw new BadPathException(path, "cannot be changed here", "");
    }

    /** Writes {@code springs[1]} as {@code springs}, {@code 1}; an index behind an entry's name stays. */
    private static List<NumberAddress.Token> spread(List<NumberAddress.Token> tokens) {
        List<NumberAddress.Token> result = new ArrayList<>();
        FormatNode form = ModelForm.ROOT;
        for (NumberAddress.Token token : tokens) {
            FormatNode next = form instanceof FormatNode.Block block
                ? block.key(token.name()).map(FormatKey::form).orElse(null) : null;
            FormatNode inner = next instanceof FormatNode.WordOr other ? other.other() : next;
            if (inner instanceof FormatNode.Entries && token.index() > 0) {
                result.add(new NumberAddress.Token(token.name(), 0));
                result.add(new NumberAddress.Token("" + token.index(), 0));
            } else {
                result.add(token);
            }
            form = inner instanceof FormatNode.AxisBlock axes ? axes.each() : inner;
        }
        return result;
    }
}

package quietband.model.text;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;

/**
 * Splits a group of springs into one entry per place, named with the number of the place; comments stay. The entries
 * of a group without a name go to the end of the list, so that other groups keep their numbers.
 */
public final class GroupSplit {

    private final TextEdits edits;
    private final YamlNode list;
    private final YamlNode entry;
    private final String name;

    private GroupSplit(String text, YamlNode list, YamlNode entry, String name) {
        this.edits = new TextEdits(text);
        this.list = list;
        this.entry = entry;
        this.name = name;
    }

    /** The changed text; the entry has several places. */
    public static String of(String text, YamlNode list, YamlNode entry, String name) {
        return new GroupSplit(text, list, entry, name).split();
    }

    private String split() {
        YamlNode at = entry.get("at");
        YamlNode.Pair atPair = entry.pairs().stream().filter(p -> p.key().text().equals("at")).findFirst().orElseThrow();
        Optional<YamlNode.Pair> named = entry.pairs().stream().filter(p -> p.key().text().equals("name")).findFirst();
        boolean flow = entry.style() == YamlNode.Style.FLOW;
        int start = entry.span().start() + (flow ? 1 : 0);
        named.ifPresentOrElse(n -> edits.replace(entry, n.key(), n.value(), name + "-1"), () -> edits.replace(start,
            start, "name: " + name + "-1" + (flow ? ", " : "\n" + " ".repeat(entry.column() - 1))));
        edits.replace(entry, atPair.key(), at, FlowText.list(List.of(at.items().get(0)), edits.text()));
        StringBuilder others = new StringBuilder();
        int dash = entry.style() == YamlNode.Style.BLOCK || list.style() == YamlNode.Style.BLOCK ? dashColumn() : 0;
        for (int i = 1; i < at.items().size(); i++) {
            List<String> pairs = pairs(i, at);
            if (list.style() == YamlNode.Style.FLOW) {
                others.append(", {").append(String.join(", ", pairs)).append("}");
            } else if (entry.style() == YamlNode.Style.FLOW) {
                others.append("\n").append(" ".repeat(dash)).append("- {").append(String.join(", ", pairs)).append("}");
            } else {
                String indent = "\n" + " ".repeat(entry.column() - 1);
                others.append("\n").append(" ".repeat(dash)).append("-")
                    .append(" ".repeat(Math.max(1, entry.column() - dash - 2)))
                    .append(pairs.stream().collect(Collectors.joining(indent)));
            }
        }
        YamlNode before = named.isPresent() ? entry : list.items().get(list.items().size() - 1);
        int stop = list.style() == YamlNode.Style.FLOW ? edits.end(before) : edits.lineStop(edits.end(before));
        edits.replace(stop, stop, others.toString());
        return edits.apply();
    }

    private int dashColumn() {
        int dash = edits.text().lastIndexOf('-', entry.span().start() - 1);
        return dash - edits.lineStart(dash);
    }

    private List<String> pairs(int place, YamlNode at) {
        List<String> pairs = new ArrayList<>();
        if (entry.get("name") == null) {
            pairs.add("name: " + name + "-" + (place + 1));
        }
        for (YamlNode.Pair pair : entry.pairs()) {
            pairs.add(switch (pair.key().text()) {
                case "name" -> "name: " + name + "-" + (place + 1);
                case "at" -> "at: " + FlowText.list(List.of(at.items().get(place)), edits.text());
                default -> FlowText.pair(pair, edits.text());
            });
        }
        return pairs;
    }
}

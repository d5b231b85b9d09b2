package quietband.model.text;

/** Writes out every alias of a text and drops the anchors, so that one place can be changed without others. */
public final class YamlAliases {

    private YamlAliases() { }

    public static String expand(String text, YamlNode root) {
        TextEdits edits = new TextEdits(text);
        visit(root, edits);
        return edits.apply();
    }

    private static void visit(YamlNode node, TextEdits edits) {
        if (node.alias()) {
            edits.replace(node.span().start(), node.span().end(), FlowText.of(node, edits.text()));
            return;
        }
        String anchor = "&" + node.anchor();
        int start = node.span().start();
        if (!node.anchor().isEmpty() && edits.text().startsWith(anchor, start)) {
            int end = start + anchor.length();
            while (end < edits.text().length() && edits.text().charAt(end) == ' ') {
                end++;
            }
            edits.replace(start, end, "");
        }
        for (YamlNode.Pair pair : node.pairs()) {
            visit(pair.key(), edits);
            visit(pair.value(), edits);
        }
        node.items().forEach(item -> visit(item, edits));
    }
}

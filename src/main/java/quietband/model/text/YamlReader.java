package quietband.model.text;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.Iterator;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.snakeyaml.engine.v2.api.LoadSettings;
import org.snakeyaml.engine.v2.api.lowlevel.Parse;
import org.snakeyaml.engine.v2.common.Anchor;
import org.snakeyaml.engine.v2.common.FlowStyle;
import org.snakeyaml.engine.v2.events.AliasEvent;
import org.snakeyaml.engine.v2.events.CollectionStartEvent;
import org.snakeyaml.engine.v2.events.Event;
import org.snakeyaml.engine.v2.events.NodeEvent;
import org.snakeyaml.engine.v2.events.ScalarEvent;
import org.snakeyaml.engine.v2.exceptions.Mark;
import org.snakeyaml.engine.v2.exceptions.MarkedYamlEngineException;
import org.snakeyaml.engine.v2.exceptions.YamlEngineException;

/** Turns YAML text into nodes with places. Refuses tags, several documents, self-reference and absurd nesting. */
public final class YamlReader {

    private static final int DEEPEST = 40;
    private static final int MOST_NODES = 300_000;

    private final String file;
    private final int[] offsets;
    private final Iterator<Event> events;
    private final Map<String, YamlNode> anchors = new HashMap<>();
    private int nodes;

    private YamlReader(String file, String text) {
        this.file = file;
        this.offsets = text.codePoints().anyMatch(Character::isSupplementaryCodePoint) ? offsets(text) : null;
        LoadSettings settings = LoadSettings.builder().setCodePointLimit(Integer.MAX_VALUE).build();
        this.events = new Parse(settings).parseString(text).iterator();
    }

    /** The root node of the only document. */
    public static YamlNode read(String file, String text) {
        YamlReader reader = new YamlReader(file, text);
        try {
            return reader.document();
        } catch (MarkedYamlEngineException e) {
            Mark mark = e.getProblemMark().or(e::getContextMark).orElse(null);
            throw new ModelException(List.of(new FileProblem(file, mark == null ? 0 : mark.getLine() + 1,
                mark == null ? 0 : mark.getColumn() + 1, "", "not valid YAML: " + said(e), advice(e))));
        } catch (YamlEngineException e) {
            throw ModelException.of(file, "not valid YAML: " + said(e), "");
        }
    }

    private static String said(YamlEngineException e) {
        String problem = e instanceof MarkedYamlEngineException marked ? marked.getProblem() : e.getMessage();
        return YamlNode.shorten(problem == null ? "cannot be read" : problem.replace("\\t(TAB)", "a tab"))
            .replaceAll("\\.$", "");
    }

    private static String advice(MarkedYamlEngineException e) {
        String all = e.getProblem() + " " + e.getContext();
        if (all.contains("TAB") || all.contains("\\t")) {
            return "indent with spaces";
        }
        return "check brackets, quotes, colons and the indentation here";
    }

    private YamlNode document() {
        YamlNode root = null;
        while (events.hasNext()) {
            Event event = events.next();
            switch (event.getEventId()) {
                case DocumentStart -> {
                    if (root != null) {
                        throw at(event, "a second document starts", "one model a file");
                    }
                    root = node(events.next(), 0, new ArrayList<>());
                }
                default -> { }
            }
        }
        if (root == null || root.isNull()) {
            throw ModelException.of(file, "is empty", "'quietband new' writes a commented start");
        }
        return root;
    }

    private YamlNode node(Event event, int depth, List<String> open) {
        if (++nodes > MOST_NODES) {
            throw at(event, "more than " + MOST_NODES + " values", "a model is far smaller");
        }
        if (depth > DEEPEST) {
            throw at(event, "nested more than " + DEEPEST + " deep", "a model is far flatter");
        }
        String anchor = ((NodeEvent) event).getAnchor().map(Anchor::getValue).orElse("");
        if (event instanceof AliasEvent) {
            return alias(event, anchor, open);
        }
        refuseTag(event);
        YamlNode node = event instanceof ScalarEvent scalar ? scalar(scalar, anchor)
            : collection((CollectionStartEvent) event, anchor, depth, open);
        if (!anchor.isEmpty()) {
            anchors.put(anchor, node);
        }
        return node;
    }

    private YamlNode alias(Event event, String anchor, List<String> open) {
        if (open.contains(anchor)) {
            throw at(event, "alias '*" + anchor + "' contains itself", "write the value out");
        }
        YamlNode target = anchors.get(anchor);
        if (target == null) {
            throw at(event, "alias '*" + anchor + "' has no anchor '&" + anchor + "' before it",
                "write the value out or add the anchor");
        }
        return new YamlNode(target.kind(), target.text(), target.style(), target.pairs(), target.items(),
            span(event, event.getEndMark()), anchor, true);
    }

    private void refuseTag(Event event) {
        Optional<String> tag = event instanceof ScalarEvent scalar ? scalar.getTag()
            : ((CollectionStartEvent) event).getTag();
        if (tag.isPresent()) {
            throw at(event, "tag '" + YamlNode.shorten(tag.get()) + "'", "tags are not used here; leave it out");
        }
    }

    private YamlNode scalar(ScalarEvent event, String anchor) {
        YamlNode.Style style = event.isPlain() ? YamlNode.Style.PLAIN
            : event.isSQuoted() || event.isDQuoted() ? YamlNode.Style.QUOTED : YamlNode.Style.LITERAL;
        return new YamlNode(YamlNode.Kind.SCALAR, event.getValue(), style, List.of(), List.of(),
            span(event, event.getEndMark()), anchor, false);
    }

    private YamlNode collection(CollectionStartEvent event, String anchor, int depth, List<String> open) {
        boolean map = event.getEventId() == Event.ID.MappingStart;
        Event.ID last = map ? Event.ID.MappingEnd : Event.ID.SequenceEnd;
        List<YamlNode.Pair> pairs = new ArrayList<>();
        List<YamlNode> items = new ArrayList<>();
        open.add(anchor.isEmpty() ? null : anchor);
        Event next = events.next();
        int end = offset(event.getEndMark());
        while (next.getEventId() != last) {
            YamlNode first = node(next, depth + 1, open);
            if (map) {
                YamlNode value = node(events.next(), depth + 1, open);
                pairs.add(new YamlNode.Pair(first, value));
                end = value.span().end() > first.span().end() ? value.span().end() : first.span().end() + 1;
            } else {
                items.add(first);
                end = Math.max(end, first.span().end());
            }
            next = events.next();
        }
        open.remove(open.size() - 1);
        boolean flow = event.getFlowStyle() == FlowStyle.FLOW;
        YamlNode.Span span = flow ? span(event, next.getEndMark()) : span(event, end);
        return new YamlNode(map ? YamlNode.Kind.MAP : YamlNode.Kind.LIST, "", flow ? YamlNode.Style.FLOW : YamlNode.Style.BLOCK,
            List.copyOf(pairs), List.copyOf(items), span, anchor, false);
    }

    private YamlNode.Span span(Event event, Optional<Mark> end) {
        return span(event, offset(end));
    }

    private YamlNode.Span span(Event event, int end) {
        Mark start = event.getStartMark().orElseThrow();
        return new YamlNode.Span(offset(event.getStartMark()), end, start.getLine() + 1, start.getColumn() + 1);
    }

    private int offset(Optional<Mark> mark) {
        int index = mark.orElseThrow().getIndex();
        return offsets == null ? index : offsets[Math.min(index, offsets.length - 1)];
    }

    private static int[] offsets(String text) {
        int[] result = new int[text.codePointCount(0, text.length()) + 1];
        int at = 0;
        for (int i = 0; i < result.length; i++) {
            result[i] = at;
            at += at < text.length() ? Character.charCount(text.codePointAt(at)) : 0;
        }
        return result;
    }

    private ModelException at(Event event, String found, String advice) {
        Mark mark = event.getStartMark().orElseThrow();
        return new ModelException(List.of(
            new FileProblem(file, mark.getLine() + 1, mark.getColumn() + 1, "", found, advice)));
    }
}

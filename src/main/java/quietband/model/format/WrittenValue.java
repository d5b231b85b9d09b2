package quietband.model.format;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import quietband.model.text.YamlNode;

/**
 * A place of the format with what a model file has there, or with the default where it has nothing: the typed value
 * tree between YAML and the records. Every key of the format is there, so that looking up never fails.
 */
public final class WrittenValue {

    private static final double[] NO_NUMBERS = {};

    private final FormatNode form;
    private final String path;
    private final YamlNode node;
    private final boolean given;
    private final Map<String, WrittenValue> children = new LinkedHashMap<>();
    private final List<WrittenValue> items = new ArrayList<>();
    private double[] numbers = NO_NUMBERS;
    private boolean[] absent = {};
    private String text = "";
    private Object value;
    private boolean bad;
    private int slot = -1;

    /** Something at a path; the node is where messages point, also when nothing is given there. */
    public WrittenValue(FormatNode form, String path, YamlNode node, boolean given) {
        this.form = form;
        this.path = path;
        this.node = node;
        this.given = given;
    }

    /** The same with everything below it copied, so that it can have slots of its own. */
    public WrittenValue copy() {
        WrittenValue copy = new WrittenValue(form, path, node, given);
        children.forEach((key, child) -> copy.children.put(key, child.copy()));
        items.forEach(item -> copy.items.add(item.copy()));
        copy.numbers = numbers;
        copy.absent = absent;
        copy.text = text;
        copy.value = value;
        copy.bad = bad;
        return copy;
    }

    public FormatNode form() {
        return form;
    }

    public String path() {
        return path;
    }

    public YamlNode node() {
        return node;
    }

    /** Whether the file has it. */
    public boolean given() {
        return given;
    }

    /** Whether it, or anything below it, could not be read. */
    public boolean bad() {
        return bad || children.values().stream().anyMatch(WrittenValue::bad) || items.stream().anyMatch(WrittenValue::bad);
    }

    /** Given and readable. */
    public boolean good() {
        return given && !bad();
    }

    public WrittenValue spoil() {
        bad = true;
        return this;
    }

    public void put(String key, WrittenValue child) {
        children.put(key, child);
    }

    public Map<String, WrittenValue> children() {
        return children;
    }

    public WrittenValue get(String key) {
        WrittenValue child = children.get(key);
        if (child == null) {
            throw new IllegalArgumentException("the format has no key " + key + " at " + path);
        }
        return child;
    }

    public List<WrittenValue> items() {
        return items;
    }

    public WrittenValue numbers(double[] read, boolean[] missing) {
        numbers = read;
        absent = missing;
        return this;
    }

    public double[] numbers() {
        return numbers;
    }

    public double number() {
        return numbers[0];
    }

    /** Whether the number at an index has neither a value nor a default. */
    public boolean absent(int index) {
        return absent[index];
    }

    public void markAbsent(int index) {
        absent[index] = true;
    }

    public WrittenValue text(String read) {
        text = read;
        return this;
    }

    /** The text, word or letter; empty when left out. */
    public String text() {
        return text;
    }

    public WrittenValue value(Object read) {
        value = read;
        return this;
    }

    public Object value() {
        return value;
    }

    public void slot(int first) {
        slot = first;
    }

    /** Number of the first slot of its numbers. */
    public int slot() {
        return slot;
    }
}

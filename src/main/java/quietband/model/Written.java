package quietband.model;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/**
 * A place of the format with what a model file has there, or with the default where it has nothing: the typed value
 * tree between YAML and the records. Every key of the format is there, so that looking up never fails.
 */
final class Written {

    private static final double[] NO_NUMBERS = {};

    private final Form form;
    private final String path;
    private final Node node;
    private final boolean given;
    private final Map<String, Written> children = new LinkedHashMap<>();
    private final List<Written> items = new ArrayList<>();
    private double[] numbers = NO_NUMBERS;
    private boolean[] absent = {};
    private String text = "";
    private Object value;
    private boolean bad;
    private int slot = -1;

    /** Something at a path; the node is where messages point, also when nothing is given there. */
    Written(Form form, String path, Node node, boolean given) {
        this.form = form;
        this.path = path;
        this.node = node;
        this.given = given;
    }

    /** The same with everything below it copied, so that it can have slots of its own. */
    Written copy() {
        Written copy = new Written(form, path, node, given);
        children.forEach((key, child) -> copy.children.put(key, child.copy()));
        items.forEach(item -> copy.items.add(item.copy()));
        copy.numbers = numbers;
        copy.absent = absent;
        copy.text = text;
        copy.value = value;
        copy.bad = bad;
        return copy;
    }

    Form form() {
        return form;
    }

    String path() {
        return path;
    }

    Node node() {
        return node;
    }

    /** Whether the file has it. */
    boolean given() {
        return given;
    }

    /** Whether it, or anything below it, could not be read. */
    boolean bad() {
        return bad || children.values().stream().anyMatch(Written::bad) || items.stream().anyMatch(Written::bad);
    }

    /** Given and readable. */
    boolean good() {
        return given && !bad();
    }

    Written spoil() {
        bad = true;
        return this;
    }

    void put(String key, Written child) {
        children.put(key, child);
    }

    Map<String, Written> children() {
        return children;
    }

    Written get(String key) {
        Written child = children.get(key);
        if (child == null) {
            throw new IllegalArgumentException("the format has no key " + key + " at " + path);
        }
        return child;
    }

    List<Written> items() {
        return items;
    }

    Written numbers(double[] read, boolean[] missing) {
        numbers = read;
        absent = missing;
        return this;
    }

    double[] numbers() {
        return numbers;
    }

    double number() {
        return numbers[0];
    }

    /** Whether the number at an index has neither a value nor a default. */
    boolean absent(int index) {
        return absent[index];
    }

    void markAbsent(int index) {
        absent[index] = true;
    }

    Written text(String read) {
        text = read;
        return this;
    }

    /** The text, word or letter; empty when left out. */
    String text() {
        return text;
    }

    Written value(Object read) {
        value = read;
        return this;
    }

    Object value() {
        return value;
    }

    void slot(int first) {
        slot = first;
    }

    /** Number of the first slot of its numbers. */
    int slot() {
        return slot;
    }
}

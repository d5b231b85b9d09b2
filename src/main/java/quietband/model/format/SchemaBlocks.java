package quietband.model.format;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import quietband.units.Amounts;

/** JSON Schema of blocks, lists and what their keys have to do with one another. */
final class SchemaBlocks {

    private final SchemaNumbers numbers = new SchemaNumbers();

    /** What number definitions refer to. */
    Map<String, Object> definitions() {
        return numbers.definitions();
    }

    /**
     * A block.
     *
     * @param path   of the block without list entries; decides about extra rules
     * @param strict whether it is incomplete even when empty; else an empty map is the key left out
     */
    Map<String, Object> block(String path, FormatNode.Block form, boolean strict) {
        Map<String, Object> properties = new LinkedHashMap<>();
        for (FormatKey key : form.keys()) {
            properties.put(key.name(), property(path.isEmpty() ? key.name() : path + "." + key.name(), key));
        }
        Map<String, Object> schema = new LinkedHashMap<>();
        schema.put("type", "object");
        schema.put("properties", properties);
        schema.put("additionalProperties", false);
        Map<String, Object> complete = new LinkedHashMap<>();
        List<String> required = form.keys().stream().filter(FormatKey::required).map(FormatKey::name).toList();
        if (!required.isEmpty()) {
            complete.put("required", required);
        }
        complete.putAll(SchemaRules.of(path));
        if (strict) {
            schema.put("minProperties", 1);
            schema.putAll(complete);
        } else if (!complete.isEmpty()) {
            schema.put("if", Map.of("minProperties", 1));
            schema.put("then", complete);
        }
        return schema;
    }

    private Map<String, Object> property(String path, FormatKey key) {
        Map<String, Object> schema = new LinkedHashMap<>();
        schema.put("description", key.doc());
        if (Double.isFinite(key.fallback()) && numbers.dimension(key.form()) != null) {
            schema.put("default", key.fallback() == 0 ? Integer.valueOf(0)
                : Amounts.print(key.fallback(), numbers.dimension(key.form())));
        }
        schema.putAll(form(path, key.form(), key.required()));
        return schema;
    }

    private Map<String, Object> form(String path, FormatNode form, boolean required) {
        if (form instanceof FormatNode.Block block) {
            return block(path, block, required);
        }
        if (form instanceof FormatNode.AxisBlock axes) {
            return axisBlock(path, axes, required);
        }
        if (form instanceof FormatNode.Entries entries) {
            return SchemaNumbers.ordered("type", "array", "minItems", entries.least(), "items",
                block(path, entries.each(), true));
        }
        if (form instanceof FormatNode.WordOr other) {
            return Map.of("anyOf", List.of(Map.of("const", other.word()), form(path, other.other(), required)));
        }
        if (form instanceof FormatNode.Places places) {
            return SchemaNumbers.ordered("type", "array", "minItems", 1, "items", numbers.spread(places.each()));
        }
        return numbers.leaf(form);
    }

    private Map<String, Object> axisBlock(String path, FormatNode.AxisBlock form, boolean required) {
        Map<String, Object> one = block(path, form.each(), required);
        List<Object> anyAxis = FormatNode.Spread.XYZ.stream().map(a -> (Object) Map.of("required", List.of(a))).toList();
        Map<String, Object> axes = new LinkedHashMap<>();
        FormatNode.Spread.XYZ.forEach(a -> axes.put(a, one));
        return SchemaNumbers.ordered("if", SchemaNumbers.ordered("type", "object", "anyOf", anyAxis), "then",
            SchemaNumbers.ordered("properties", axes, "additionalProperties", false), "else", one);
    }
}

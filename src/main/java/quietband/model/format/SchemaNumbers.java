package quietband.model.format;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.TreeMap;
import java.util.stream.Collectors;
import quietband.model.quantity.NumberRange;
import quietband.units.Amounts;
import quietband.units.Dimension;
import quietband.units.Unit;

/** JSON Schema of numbers with units and of the other leaves. Numbers are defined once and referred to. */
final class SchemaNumbers {

    private static final String DIGITS = "(?:[0-9]+\\.?[0-9]*|\\.[0-9]+)(?:[eE][+-]?[0-9]{1,4})?";
    private static final FormatNode.Num BARE = new FormatNode.Num(Dimension.NUMBER, NumberRange.ANY);

    private final Map<String, Object> definitions = new TreeMap<>();

    Map<String, Object> definitions() {
        return definitions;
    }

    /** The dimension of a number or of each of a map of numbers; null for others. */
    Dimension dimension(FormatNode form) {
        return form instanceof FormatNode.Num num ? num.dimension()
            : form instanceof FormatNode.Spread spread ? spread.each().dimension() : null;
    }

    static Map<String, Object> ordered(Object... pairs) {
        Map<String, Object> map = new LinkedHashMap<>();
        for (int i = 0; i < pairs.length; i += 2) {
            map.put((String) pairs[i], pairs[i + 1]);
        }
        return map;
    }

    Map<String, Object> leaf(FormatNode form) {
        if (form instanceof FormatNode.Num num) {
            return number(num);
        }
        if (form instanceof FormatNode.Spread spread) {
            return spread(spread);
        }
        if (form instanceof FormatNode.Text text) {
            return text(text);
        }
        if (form instanceof FormatNode.Choice choice) {
            return choice.words().equals(List.of("1")) ? Map.of("enum", List.of(1, "1")) : Map.of("enum", choice.words());
        }
        if (form instanceof FormatNode.Direction direction) {
            List<String> letters = direction.signed()
                ? List.of("x", "y", "z", "-x", "-y", "-z", "+x", "+y", "+z") : FormatNode.Spread.XYZ;
            return Map.of("anyOf", List.of(Map.of("enum", letters), axes(number(BARE), false)));
        }
        if (form instanceof FormatNode.OneAxis) {
            return Map.of("enum", FormatNode.Spread.XYZ);
        }
        if (form instanceof FormatNode.AxisSet) {
            return ordered("type", "array", "minItems", 1, "uniqueItems", true, "items",
                Map.of("enum", FormatNode.Spread.XYZ));
        }
        if (form instanceof FormatNode.Coefficients coefficients) {
            Map<String, Object> row = coefficients.width() == 1 ? number(BARE) : ordered("type", "array", "minItems",
                coefficients.width(), "maxItems", coefficients.width(), "items", number(BARE));
            Map<String, Object> list = ordered("type", "array", "items", row);
            return Map.of("anyOf", List.of(list, axes(list, true)));
        }
        if (form instanceof FormatNode.Labels) {
            return ordered("type", "array", "minItems", 2, "uniqueItems", true, "items",
                Map.of("type", List.of("string", "number", "boolean")));
        }
        return Map.of("anyOf", List.of(Map.of("type", "number"),
            ordered("type", "string", "pattern", "^\\s*[+-]?" + DIGITS + "\\s*\\S*\\s*$")));
    }

    private static Map<String, Object> axes(Map<String, Object> each, boolean emptyToo) {
        Map<String, Object> properties = new LinkedHashMap<>();
        FormatNode.Spread.XYZ.forEach(a -> properties.put(a, each));
        Map<String, Object> schema = ordered("type", "object", "properties", properties, "additionalProperties", false);
        if (!emptyToo) {
            schema.put("minProperties", 1);
        }
        return schema;
    }

    private static Map<String, Object> text(FormatNode.Text text) {
        return text.kind() == FormatNode.Kind.NAME
            ? ordered("type", List.of("string", "integer"), "pattern", "^\\s*[A-Za-z0-9-]+\\s*$")
            : ordered("type", List.of("string", "number", "boolean"), "pattern", "\\S");
    }

    Map<String, Object> spread(FormatNode.Spread form) {
        Map<String, Object> properties = new LinkedHashMap<>();
        form.keys().forEach(key -> properties.put(key, number(form.each())));
        Map<String, Object> map = ordered("type", "object", "properties", properties, "additionalProperties", false);
        if (form.missing() == FormatNode.Missing.REFUSED) {
            map.put("if", Map.of("minProperties", 1));
            map.put("then", Map.of("required", form.keys()));
        }
        return Map.of("anyOf", List.of(number(form.each()), map));
    }

    private Map<String, Object> number(FormatNode.Num num) {
        NumberRange range = num.range();
        String sign = range.low() < 0 ? "" : range.open() ? "_above_0" : "_from_" + plain(range.low());
        String name = num.dimension().name().toLowerCase(Locale.ROOT) + sign
            + (Double.isFinite(range.high()) ? "_to_" + plain(range.high()) : "") + (range.whole() ? "_whole" : "");
        definitions.computeIfAbsent(name, n -> definition(num));
        return Map.of("$ref", "#/$defs/" + name);
    }

    private static String plain(double value) {
        return Amounts.print(value);
    }

    private static Map<String, Object> definition(FormatNode.Num num) {
        NumberRange range = num.range();
        boolean bare = num.dimension() == Dimension.RATIO || num.dimension() == Dimension.NUMBER;
        List<Object> choices = new ArrayList<>();
        if (bare) {
            Map<String, Object> number = ordered("type", range.whole() ? "integer" : "number");
            if (Double.isFinite(range.low())) {
                number.put(range.open() ? "exclusiveMinimum" : "minimum", range.low());
            }
            if (Double.isFinite(range.high())) {
                number.put("maximum", range.high());
            }
            choices.add(number);
        } else if (num.dimension().linear() && range.holds(0)) {
            choices.add(Map.of("const", 0));
        }
        String signs = range.low() >= 0 ? "\\+?" : "[+-]?";
        String nonZero = range.low() == 0 && range.open() ? "(?=[0-9.]*[1-9])" : "";
        String units = num.dimension().units().stream().map(Unit::text).map(SchemaNumbers::escaped)
            .collect(Collectors.joining("|"));
        String pattern = "^\\s*" + signs + nonZero + DIGITS + "\\s*(?:" + units + ")\\s*$";
        if (!bare && num.dimension().linear() && range.holds(0)) {
            pattern += "|^\\s*[+-]?0+(?:\\.0*)?\\s*$";
        }
        choices.add(ordered("type", "string", "pattern", pattern));
        return ordered("description", num.dimension().phrase() + ", e.g. " + num.dimension().example(), "anyOf",
            choices);
    }

    private static String escaped(String unit) {
        return unit.replace("^", "\\^").replace("*", "\\*").replace("/", "\\/");
    }
}

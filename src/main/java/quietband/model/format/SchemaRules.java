package quietband.model.format;

import java.util.Arrays;
import java.util.List;
import java.util.Map;

/** Rules of the JSON Schema about keys that need or exclude one another, by the path of their block. */
final class SchemaRules {

    private SchemaRules() { }

    static Map<String, Object> of(String path) {
        return switch (path) {
            case "platform" -> Map.of("anyOf", List.of(needs("size"), needs("inertia")));
            case "cancellation.path" -> SchemaNumbers.ordered(
                "dependentRequired", SchemaNumbers.ordered("filter", List.of("sample_rate"), "taps", List.of("sample_rate"),
                    "sections", List.of("sample_rate"), "converter_bits", List.of("sample_rate")),
                "dependentSchemas", Map.of("filter", Map.of("not",
                    Map.of("anyOf", List.of(needs("taps"), needs("sections"))))));
            case "vibration.random" -> oneOf("file", "points");
            case "tolerances" -> SchemaNumbers.ordered("oneOf", List.of(needs("scale"), needs("add"), needs("lot")),
                "dependentSchemas", Map.of("truncate_at", SchemaNumbers.ordered("required", List.of("distribution"),
                    "properties", Map.of("distribution", Map.of("const", "truncated")))));
            case "conditions.change" -> oneOf("set", "scale", "add");
            default -> Map.of();
        };
    }

    private static Map<String, Object> oneOf(String... keys) {
        return Map.of("oneOf", Arrays.stream(keys).map(SchemaRules::needs).toList());
    }

    private static Map<String, Object> needs(String key) {
        return Map.of("required", List.of(key));
    }
}

package quietband.model.format;

import com.fasterxml.jackson.core.JsonFactory;
import com.fasterxml.jackson.core.JsonGenerator;
import com.fasterxml.jackson.core.util.DefaultIndenter;
import com.fasterxml.jackson.core.util.DefaultPrettyPrinter;
import java.io.IOException;
import java.io.StringWriter;
import java.io.UncheckedIOException;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/** The format of a model file as a JSON Schema, for editors. */
public final class ModelSchema {

    private ModelSchema() { }

    /**
     * The schema as text, draft 2020-12. It accepts every good model and refuses those that are bad by structure:
     * unknown or missing keys, wrong units, signs and words. What depends on several values or on other files is
     * checked when a model is read.
     */
    public static String text() {
        SchemaBlocks blocks = new SchemaBlocks();
        Map<String, Object> schema = new LinkedHashMap<>();
        schema.put("$schema", "https://json-schema.org/draft/2020-12/schema");
        schema.put("title", "quietband model");
        schema.putAll(blocks.block("", ModelForm.ROOT, true));
        schema.put("$defs", blocks.definitions());
        StringWriter out = new StringWriter();
        DefaultPrettyPrinter printer = new DefaultPrettyPrinter().withObjectIndenter(new DefaultIndenter("  ", "\n"));
        try (JsonGenerator json = new JsonFactory().createGenerator(out)) {
            json.setPrettyPrinter(printer);
            write(json, schema);
        } catch (IOException e) {
            throw new UncheckedIOException("a text in memory takes every write", e);
        }
        return out + "\n";
    }

    private static void write(JsonGenerator json, Object value) throws IOException {
        if (value instanceof Map<?, ?> map) {
            json.writeStartObject();
            for (Map.Entry<?, ?> entry : map.entrySet()) {
                json.writeFieldName((String) entry.getKey());
                write(json, entry.getValue());
            }
            json.writeEndObject();
        } else if (value instanceof List<?> list) {
            json.writeStartArray();
            for (Object item : list) {
                write(json, item);
            }
            json.writeEndArray();
        } else if (value instanceof Integer number) {
            json.writeNumber(number);
        } else if (value instanceof Double number) {
            json.writeNumber(number);
        } else if (value instanceof Boolean flag) {
            json.writeBoolean(flag);
        } else {
            json.writeString((String) value);
        }
    }
}

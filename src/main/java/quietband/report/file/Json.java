package quietband.report.file;

import com.fasterxml.jackson.core.JsonFactory;
import com.fasterxml.jackson.core.JsonGenerator;
import com.fasterxml.jackson.core.util.DefaultIndenter;
import com.fasterxml.jackson.core.util.DefaultPrettyPrinter;
import java.io.IOException;
import java.io.StringWriter;
import java.io.UncheckedIOException;
import java.util.function.Consumer;
import java.util.function.ToDoubleFunction;
import quietband.model.Axis;

/** Writes indented JSON; numbers as {@link NumberFormat#json}, what is not finite as null. */
public final class Json {

    private final StringWriter out = new StringWriter();
    private final JsonGenerator generator;

    /** An empty document. */
    public Json() {
        try {
            generator = new JsonFactory().createGenerator(out);
            DefaultIndenter lines = new DefaultIndenter("  ", "\n");
            generator.setPrettyPrinter(new DefaultPrettyPrinter().withObjectIndenter(lines));
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    private interface Step {
        void run() throws IOException;
    }

    private Json step(Step step) {
        try {
            step.run();
            return this;
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    /** An object as the document or as an item of an array. */
    public Json object(Runnable content) {
        return step(() -> {
            generator.writeStartObject();
            content.run();
            generator.writeEndObject();
        });
    }

    /** An object as a field. */
    public Json object(String name, Runnable content) {
        step(() -> generator.writeFieldName(name));
        return object(content);
    }

    /** An array as a field. */
    public Json array(String name, Runnable content) {
        return step(() -> {
            generator.writeArrayFieldStart(name);
            content.run();
            generator.writeEndArray();
        });
    }

    /** An array of objects as a field, one for each of some things. */
    public <T> Json objects(String name, Iterable<T> of, Consumer<T> content) {
        return array(name, () -> of.forEach(each -> object(() -> content.accept(each))));
    }

    /** An array of texts as a field. */
    public Json items(String name, Iterable<String> texts) {
        return array(name, () -> texts.forEach(this::item));
    }

    /** An object as a field, with a number for each axis. */
    public Json axes(String name, ToDoubleFunction<Axis> value) {
        return object(name, () -> Axis.ALL.forEach(a -> field(a.letter(), value.applyAsDouble(a))));
    }

    /** An array of pairs of numbers as a field. */
    public Json pairs(String name, Iterable<double[]> pairs) {
        return array(name, () -> pairs.forEach(p -> pair(p[0], p[1])));
    }

    /** A pair of numbers as an item of an array. */
    public Json pair(double a, double b) {
        return step(() -> {
            generator.writeStartArray();
            generator.writeNumber(NumberFormat.json(a));
            generator.writeNumber(NumberFormat.json(b));
            generator.writeEndArray();
        });
    }

    /** A text as a field; null writes null. */
    public Json field(String name, String value) {
        return step(() -> {
            generator.writeFieldName(name);
            if (value == null) {
                generator.writeNull();
            } else {
                generator.writeString(value);
            }
        });
    }

    /** A number as a field. */
    public Json field(String name, double value) {
        return step(() -> {
            generator.writeFieldName(name);
            if (Double.isFinite(value)) {
                generator.writeNumber(NumberFormat.json(value));
            } else {
                generator.writeNull();
            }
        });
    }

    /** A whole number as a field. */
    public Json field(String name, long value) {
        return step(() -> generator.writeNumberField(name, value));
    }

    /** A truth value as a field; null writes null. */
    public Json field(String name, Boolean value) {
        return step(() -> {
            generator.writeFieldName(name);
            if (value == null) {
                generator.writeNull();
            } else {
                generator.writeBoolean(value);
            }
        });
    }

    /** A text as an item of an array. */
    public Json item(String value) {
        return step(() -> generator.writeString(value));
    }

    /** The document with a line end. */
    public String text() {
        step(generator::close);
        return out + "\n";
    }
}

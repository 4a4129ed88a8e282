package countstave.json;

import com.fasterxml.jackson.core.JsonFactory;
import com.fasterxml.jackson.core.JsonFactoryBuilder;
import com.fasterxml.jackson.core.JsonGenerator;
import com.fasterxml.jackson.core.StreamWriteFeature;
import java.io.IOException;
import java.io.Writer;
import java.math.BigDecimal;
import java.math.RoundingMode;

/** A JSON document (RFC 8259) on its way out: the library's generator, with our layout, numbers and escapes. */
public final class JsonStream {

    /** Rates are read by people and meters: four places are a ten-thousandth of a syllable. */
    private static final int PLACES = 4;

    /** A number of more digits than this is written with an exponent: 1E999999 shall not fill a disk. */
    private static final int MOST_DIGITS = 40;

    private static final JsonFactory FACTORY = new JsonFactoryBuilder().characterEscapes(new Escapes())
            .disable(StreamWriteFeature.AUTO_CLOSE_TARGET).disable(StreamWriteFeature.FLUSH_PASSED_TO_STREAM)
            .build();

    private final JsonGenerator out;

    /**
     * @param target where the text goes; not closed here
     * @param lines how deep an array may lie whose values get a line each; the document itself lies at 1
     */
    public JsonStream(Writer target, int lines) {
        try {
            out = FACTORY.createGenerator(target);
        } catch (IOException e) {
            throw new IllegalStateException("nothing has been written yet", e);
        }
        out.setPrettyPrinter(new Lines(lines));
    }

    /** Opens an object: a value of an array, or the document. */
    public JsonStream object() throws IOException {
        out.writeStartObject();
        return this;
    }

    public JsonStream object(String name) throws IOException {
        out.writeFieldName(name);
        return object();
    }

    public JsonStream array(String name) throws IOException {
        out.writeFieldName(name);
        out.writeStartArray();
        return this;
    }

    public JsonStream endObject() throws IOException {
        out.writeEndObject();
        return this;
    }

    public JsonStream endArray() throws IOException {
        out.writeEndArray();
        return this;
    }

    public JsonStream text(String name, String value) throws IOException {
        out.writeFieldName(name);
        return text(value);
    }

    /** A text; null is written as an empty one. */
    public JsonStream text(String value) throws IOException {
        out.writeString(value == null ? "" : value);
        return this;
    }

    public JsonStream flag(String name, boolean value) throws IOException {
        out.writeBooleanField(name, value);
        return this;
    }

    public JsonStream number(String name, int value) throws IOException {
        out.writeNumberField(name, value);
        return this;
    }

    /** A number, rounded to four places, without an exponent. */
    public JsonStream number(String name, double value) throws IOException {
        double finite = Math.min(value, Double.MAX_VALUE);
        return number(name, BigDecimal.valueOf(finite).setScale(PLACES, RoundingMode.HALF_UP));
    }

    /** A number in full, without zeros at its end; absurdly large or small ones with an exponent. */
    public JsonStream number(String name, BigDecimal value) throws IOException {
        BigDecimal plain = value.signum() == 0 ? BigDecimal.ZERO : value.stripTrailingZeros();
        boolean absurd = Math.abs((long) plain.precision() - plain.scale()) > MOST_DIGITS || plain.scale() > MOST_DIGITS;
        out.writeFieldName(name);
        out.writeNumber(absurd ? plain.toString() : plain.toPlainString());
        return this;
    }

    /** Begins a value that somebody else puts there, once everything before it has been handed on. */
    void elsewhere(String name) throws IOException {
        out.writeFieldName(name);
        out.writeRawValue("");
    }

    /** Hands on what was gathered. */
    void flush() throws IOException {
        out.flush();
    }

    /** Ends the document, which has been closed, with a line feed. */
    public void end() throws IOException {
        out.writeRaw('\n');
        out.close();
    }
}

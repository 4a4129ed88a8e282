package countstave.json;

import java.io.IOException;
import java.math.BigDecimal;
import java.util.ArrayDeque;
import java.util.Deque;

/** A JSON document on its way out: objects and arrays that know their commas and lines. */
final class JsonStream {

    /** What is open: an array or an object, and whether something stands in it. */
    private static final class Level {
        final boolean array;
        boolean filled;

        Level(boolean array) {
            this.array = array;
        }
    }

    private final JsonText out;
    private final int lines;
    private final Deque<Level> open = new ArrayDeque<>();

    /**
     * @param target where the text goes; not closed here
     * @param lines how deep an array may lie whose values get a line each; the document itself lies at 1
     */
    JsonStream(Appendable target, int lines) {
        this.out = new JsonText(target);
        this.lines = lines;
    }

    /** Opens an object: a value of an array, or the document. */
    JsonStream object() throws IOException {
        value();
        out.raw("{");
        open.push(new Level(false));
        return this;
    }

    JsonStream object(String name) throws IOException {
        name(name);
        out.raw("{");
        open.push(new Level(false));
        return this;
    }

    JsonStream array(String name) throws IOException {
        name(name);
        out.raw("[");
        open.push(new Level(true));
        return this;
    }

    JsonStream endObject() throws IOException {
        out.raw("}");
        open.pop();
        return this;
    }

    JsonStream endArray() throws IOException {
        out.raw("]");
        open.pop();
        return this;
    }

    JsonStream text(String name, String value) throws IOException {
        name(name);
        out.text(value);
        return this;
    }

    /** A text as a value of an array. */
    JsonStream text(String value) throws IOException {
        value();
        out.text(value);
        return this;
    }

    JsonStream flag(String name, boolean value) throws IOException {
        name(name);
        out.raw(Boolean.toString(value));
        return this;
    }

    JsonStream number(String name, int value) throws IOException {
        name(name);
        out.raw(Integer.toString(value));
        return this;
    }

    JsonStream number(String name, double value) throws IOException {
        name(name);
        out.number(value);
        return this;
    }

    JsonStream number(String name, BigDecimal value) throws IOException {
        name(name);
        out.number(value);
        return this;
    }

    /** Ends the document with a line feed. */
    void end() throws IOException {
        out.raw("\n").flush();
    }

    private void name(String name) throws IOException {
        comma();
        out.text(name).raw(":");
    }

    private void value() throws IOException {
        if (!open.isEmpty()) {
            comma();
            if (open.size() <= lines) {
                out.raw("\n" + " ".repeat(open.size() / 2));
            }
        }
    }

    private void comma() throws IOException {
        Level level = open.peek();
        if (level.filled) {
            out.raw(",");
        }
        level.filled = true;
    }
}

package countstave.chart.font;

import java.util.function.Consumer;

/** Walks once over a JSON text, handing out only what is asked for. For trusted files inside the program. */
final class JsonScanner {

    private final String text;
    private int at;

    JsonScanner(String text) {
        this.text = text;
    }

    /** Calls {@code member} with each name; it must consume the value (or {@link #skip} it). */
    void object(Consumer<String> member) {
        expect('{');
        while (peek() != '}') {
            String name = string();
            expect(':');
            member.accept(name);
            if (peek() == ',') {
                at++;
            }
        }
        at++;
    }

    boolean atNumber() {
        char c = peek();
        return c == '-' || Character.isDigit(c);
    }

    double number() {
        peek();
        int start = at;
        while (at < text.length() && "+-.eE0123456789".indexOf(text.charAt(at)) >= 0) {
            at++;
        }
        return Double.parseDouble(text.substring(start, at));
    }

    /** An array of two numbers. */
    double[] pair() {
        expect('[');
        double first = number();
        expect(',');
        double second = number();
        expect(']');
        return new double[] {first, second};
    }

    /** Passes over one value of any kind. */
    void skip() {
        char c = peek();
        if (c == '"') {
            string();
        } else if (c == '{' || c == '[') {
            skipNested();
        } else {
            while (",}] \t\r\n".indexOf(text.charAt(at)) < 0) {
                at++;
            }
        }
    }

    private void skipNested() {
        int depth = 0;
        do {
            char c = text.charAt(at);
            if (c == '"') {
                string();
                continue;
            }
            if (c == '{' || c == '[') {
                depth++;
            } else if (c == '}' || c == ']') {
                depth--;
            }
            at++;
        } while (depth > 0);
    }

    /** A string without escapes other than {@code \"}: SMuFL metadata has no others in what we read. */
    private String string() {
        expect('"');
        int start = at;
        while (text.charAt(at) != '"') {
            at += text.charAt(at) == '\\' ? 2 : 1;
        }
        return text.substring(start, at++);
    }

    private char peek() {
        while (Character.isWhitespace(text.charAt(at))) {
            at++;
        }
        return text.charAt(at);
    }

    private void expect(char c) {
        if (peek() != c) {
            throw new IllegalStateException("'" + c + "' expected at character " + at + ", found '" + peek() + "'");
        }
        at++;
    }
}

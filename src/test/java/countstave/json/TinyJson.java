package countstave.json;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/** A strict reader of RFC 8259 texts, written apart from the writer it checks. */
public final class TinyJson {

    private final String text;
    private int at;

    private TinyJson(String text) {
        this.text = text;
    }

    /** Objects become maps, arrays lists, numbers BigDecimal. */
    public static Object read(String text) {
        TinyJson reader = new TinyJson(text);
        Object value = reader.value();
        reader.blanks();
        reader.check(reader.at == text.length(), "something follows the value");
        return value;
    }

    private Object value() {
        blanks();
        char c = text.charAt(at);
        if (c == '{') {
            return object();
        }
        if (c == '[') {
            return array();
        }
        if (c == '"') {
            return string();
        }
        for (Object word : new Object[] {true, false}) {
            if (text.startsWith(word.toString(), at)) {
                at += word.toString().length();
                return word;
            }
        }
        java.util.regex.Matcher number = java.util.regex.Pattern.compile("-?(0|[1-9][0-9]*)(\\.[0-9]+)?([eE][+-]?[0-9]+)?")
                .matcher(text).region(at, text.length());
        check(number.lookingAt(), "no value");
        at = number.end();
        return new BigDecimal(number.group());
    }

    private Map<String, Object> object() {
        Map<String, Object> result = new LinkedHashMap<>();
        at++;
        blanks();
        if (text.charAt(at) == '}') {
            at++;
            return result;
        }
        do {
            blanks();
            String key = string();
            blanks();
            check(text.charAt(at++) == ':', "a colon is missing");
            check(result.put(key, value()) == null, "twice the key " + key);
            blanks();
        } while (text.charAt(at++) == ',');
        check(text.charAt(at - 1) == '}', "an object is not closed");
        return result;
    }

    private List<Object> array() {
        List<Object> result = new ArrayList<>();
        at++;
        blanks();
        if (text.charAt(at) == ']') {
            at++;
            return result;
        }
        do {
            result.add(value());
            blanks();
        } while (text.charAt(at++) == ',');
        check(text.charAt(at - 1) == ']', "an array is not closed");
        return result;
    }

    private String string() {
        check(text.charAt(at++) == '"', "a string is missing");
        StringBuilder result = new StringBuilder();
        while (text.charAt(at) != '"') {
            char c = text.charAt(at++);
            check(c >= ' ', "a bare control character");
            if (c == '\\') {
                c = text.charAt(at++);
                int index = "\"\\/bfnrt".indexOf(c);
                if (c == 'u') {
                    result.append((char) Integer.parseInt(text.substring(at, at + 4), 16));
                    at += 4;
                } else {
                    check(index >= 0, "an unknown escape");
                    result.append("\"\\/\b\f\n\r\t".charAt(index));
                }
            } else {
                result.append(c);
            }
        }
        at++;
        return result.toString();
    }

    private void blanks() {
        while (at < text.length() && " \t\r\n".indexOf(text.charAt(at)) >= 0) {
            at++;
        }
    }

    private void check(boolean right, String message) {
        if (!right) {
            throw new AssertionError(message + " at " + at);
        }
    }
}

package countstave.musicxml;

import countstave.plain.SafeText;
import java.util.List;

/** Texts of a score, as {@link SafeText} makes them fit to be shown, in one line and not too long. */
final class Plain {

    private static final int SHOWN = 60;

    private static final int LONGEST_NAME = 200;

    private Plain() {
    }

    /** As {@link SafeText#line}; null becomes "". */
    static String line(String text) {
        return text == null ? "" : SafeText.line(text);
    }

    /** As {@link #line}, cut to what fits in a message. */
    static String shown(String text) {
        String line = line(text);
        return line.codePointCount(0, line.length()) <= SHOWN ? line
                : line.substring(0, line.offsetByCodePoints(0, SHOWN)) + "…";
    }

    /** As {@link #line}, cut to what a part, a bar or an id may be called: names stand in every message. */
    static String name(String text) {
        String line = line(text);
        return line.length() <= LONGEST_NAME ? line
                : line.substring(0, line.offsetByCodePoints(0, line.codePointCount(0, LONGEST_NAME) - 1)) + "…";
    }

    /** The first of several texts that is not empty once it is a plain line; "" if none is. */
    static String firstOf(List<String> texts) {
        for (String text : texts) {
            String line = line(text);
            if (!line.isEmpty()) {
                return line;
            }
        }
        return "";
    }
}

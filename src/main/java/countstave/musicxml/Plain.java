package countstave.musicxml;

import java.util.List;

/** Makes texts from a file fit to be shown: no control characters, no line breaks, no direction overrides. */
final class Plain {

    private static final int SHOWN = 60;

    private static final int LONGEST_NAME = 200;

    private Plain() {
    }

    /**
     * The text in one line: white space runs become one space, and characters that a terminal or a page could take as
     * a command (control and direction characters; XML allows some of them) are dropped. Null becomes "".
     */
    static String line(String text) {
        if (text == null) {
            return "";
        }
        if (isPlain(text)) {
            return text;
        }
        StringBuilder out = new StringBuilder(text.length());
        boolean space = false;
        for (int i = 0; i < text.length();) {
            int c = text.codePointAt(i);
            i += Character.charCount(c);
            if (Character.isWhitespace(c)) {
                space = out.length() > 0;
            } else if (!isCommand(c)) {
                if (space) {
                    out.append(' ');
                    space = false;
                }
                out.appendCodePoint(c);
            }
        }
        return out.toString();
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

    private static boolean isPlain(String text) {
        for (int i = 0; i < text.length(); i++) {
            char c = text.charAt(i);
            if (c < '!' || c > '~') {
                return false;
            }
        }
        return true;
    }

    private static boolean isCommand(int c) {
        int type = Character.getType(c);
        return type == Character.CONTROL || type == Character.SURROGATE
                || c >= 0x202A && c <= 0x202E || c >= 0x2066 && c <= 0x2069 || c == 0x200E || c == 0x200F
                || c == 0xFEFF;
    }
}

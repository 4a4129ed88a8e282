package countstave.plain;

/**
 * Text from a file, or from a command line, made fit to be shown: nothing of it is obeyed, moves the cursor, turns a line
 * around or cannot be written. What would be is shown as U+FFFD, so that nobody takes the text for another; what cannot be
 * seen and does nothing is left out. Every text that a person gets to see goes through here.
 */
public final class SafeText {

    private static final int REPLACEMENT = 0xFFFD;
    private static final int LEFT_OUT = -1;

    private SafeText() {
    }

    /** The text with its blanks; white space of other kinds, such as a line feed, is shown as U+FFFD too. */
    public static String of(String text) {
        if (isPlain(text, ' ')) {
            return text;
        }
        StringBuilder safe = new StringBuilder(text.length());
        for (int i = 0; i < text.length(); i += Character.charCount(text.codePointAt(i))) {
            append(text.codePointAt(i), safe);
        }
        return safe.toString();
    }

    /** The text in one line: a run of white space of any kind is one blank, at the ends it is left out. */
    public static String line(String text) {
        if (isPlain(text, '!')) {
            return text;
        }
        StringBuilder safe = new StringBuilder(text.length());
        boolean space = false;
        for (int i = 0; i < text.length(); i += Character.charCount(text.codePointAt(i))) {
            int c = text.codePointAt(i);
            if (Character.isWhitespace(c)) {
                space = true;
            } else if (shown(c) != LEFT_OUT) {
                if (space && safe.length() > 0) {
                    safe.append(' ');
                }
                space = false;
                append(c, safe);
            }
        }
        return safe.toString();
    }

    private static void append(int c, StringBuilder safe) {
        int shown = shown(c);
        if (shown != LEFT_OUT) {
            safe.appendCodePoint(shown);
        }
    }

    private static boolean isPlain(String text, char first) {
        for (int i = 0; i < text.length(); i++) {
            if (text.charAt(i) < first || text.charAt(i) > '~') {
                return false;
            }
        }
        return true;
    }

    /** The character, what stands in its place, or {@link #LEFT_OUT}. */
    private static int shown(int c) {
        return switch (Character.getType(c)) {
            case Character.CONTROL, Character.SURROGATE, Character.LINE_SEPARATOR, Character.PARAGRAPH_SEPARATOR ->
                REPLACEMENT;
            case Character.FORMAT -> format(c);
            default -> c;
        };
    }

    private static int format(int c) {
        return switch (c) {
            // joiners belong to the spelling of several scripts and do no harm
            case 0x200C, 0x200D -> c;
            // soft hyphen, marks of direction, spaces without width, operators that are not seen, byte order mark
            case 0xAD, 0x61C, 0x180E, 0x200B, 0x200E, 0x200F, 0x2060, 0x2061, 0x2062, 0x2063, 0x2064, 0xFEFF -> LEFT_OUT;
            default -> REPLACEMENT;
        };
    }
}

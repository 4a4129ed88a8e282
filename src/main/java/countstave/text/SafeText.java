package countstave.text;

/** Text from a file, made safe for a terminal: nothing of it is obeyed, moves the cursor or turns the line around. */
public final class SafeText {

    private SafeText() {
    }

    /** The text with every control or invisible formatting character and every lone surrogate replaced by U+FFFD. */
    public static String of(String text) {
        if (isPlain(text)) {
            return text;
        }
        StringBuilder safe = new StringBuilder(text.length());
        for (int i = 0; i < text.length(); i += Character.charCount(text.codePointAt(i))) {
            int c = text.codePointAt(i);
            safe.appendCodePoint(isSafe(c) ? c : 0xFFFD);
        }
        return safe.toString();
    }

    private static boolean isPlain(String text) {
        for (int i = 0; i < text.length(); i++) {
            if (text.charAt(i) < ' ' || text.charAt(i) >= 0x7F) {
                return false;
            }
        }
        return true;
    }

    private static boolean isSafe(int c) {
        return switch (Character.getType(c)) {
            // joiners belong to the spelling of several scripts and do no harm
            case Character.FORMAT -> c == 0x200C || c == 0x200D;
            case Character.CONTROL, Character.SURROGATE, Character.LINE_SEPARATOR, Character.PARAGRAPH_SEPARATOR -> false;
            default -> true;
        };
    }
}

package countstave.text;

/** Text from a file, made safe for a terminal: nothing of it is obeyed, moves the cursor or turns the line around. */
public final class SafeText {

    private SafeText() {
    }

    /** The text with every control or invisible formatting character and every lone surrogate replaced by U+FFFD. */
    public static String of(String text) {
        if (text.chars().allMatch(c -> c >= ' ' && c < 0x7F)) {
            return text;
        }
        StringBuilder safe = new StringBuilder(text.length());
        text.codePoints().forEach(c -> safe.appendCodePoint(isSafe(c) ? c : 0xFFFD));
        return safe.toString();
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

package countstave.text;

/**
 * How many columns a text takes on a terminal: two for East Asian wide characters and emoji, none for marks that sit on
 * the letter before, one for the rest. After Unicode Standard Annex 11 (East Asian Width), by blocks.
 */
public final class CellWidth {

    private CellWidth() {
    }

    public static int of(String text) {
        int width = 0;
        for (int i = 0; i < text.length(); i += Character.charCount(text.codePointAt(i))) {
            width += of(text.codePointAt(i));
        }
        return width;
    }

    public static int of(int c) {
        if (c < 0x300) {
            return 1;
        }
        int type = Character.getType(c);
        if (type == Character.NON_SPACING_MARK || type == Character.ENCLOSING_MARK || type == Character.FORMAT
                || c >= 0x1160 && c <= 0x11FF) {
            return 0;
        }
        return isWide(c) ? 2 : 1;
    }

    private static boolean isWide(int c) {
        return c >= 0x1100 && c <= 0x115F || c >= 0x2E80 && c <= 0x303E || c >= 0x3041 && c <= 0xA4CF
                || c >= 0xA960 && c <= 0xA97F || c >= 0xAC00 && c <= 0xD7A3 || c >= 0xF900 && c <= 0xFAFF
                || c >= 0xFE30 && c <= 0xFE6F || c >= 0xFF01 && c <= 0xFF60 || c >= 0xFFE0 && c <= 0xFFE6
                || c >= 0x1F300 && c <= 0x1FAFF || c >= 0x20000 && c <= 0x3FFFD;
    }
}

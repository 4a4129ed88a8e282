package countstave.json;

import com.fasterxml.jackson.core.SerializableString;
import com.fasterxml.jackson.core.io.CharacterEscapes;
import com.fasterxml.jackson.core.io.SerializedString;

/** Besides what JSON asks for, what a terminal might obey or a script take for the end of a line is escaped. */
final class Escapes extends CharacterEscapes {

    private static final long serialVersionUID = 1L;
    private static final int DELETE = 0x7F;
    private static final int LAST_CONTROL = 0x9F;

    private final int[] ascii = standardAsciiEscapesForJSON();

    Escapes() {
        ascii[DELETE] = ESCAPE_STANDARD;
    }

    @Override
    public int[] getEscapeCodesForAscii() {
        return ascii;
    }

    @Override
    public SerializableString getEscapeSequence(int c) {
        boolean escaped = c > DELETE && c <= LAST_CONTROL || c == '\u2028' || c == '\u2029';
        return escaped ? new SerializedString(String.format("\\u%04x", c)) : null;
    }
}

package countstave.json;

import java.io.IOException;
import java.math.BigDecimal;
import java.math.RoundingMode;

/** The lexical side of JSON (RFC 8259): strings with their escapes, and numbers. */
final class JsonText {

    /** Rates are read by people and meters: four places are a ten-thousandth of a syllable. */
    private static final int PLACES = 4;

    /** A number of more digits than this is written with an exponent: 1E999999 shall not fill a disk. */
    private static final int MOST_DIGITS = 40;

    private static final char[] HEX = "0123456789abcdef".toCharArray();

    /** Small pieces are gathered, because most writers take a text at a time much faster than a piece at a time. */
    private static final int GATHERED = 8192;

    private final Appendable target;
    private final StringBuilder out = new StringBuilder(GATHERED + 256);

    JsonText(Appendable target) {
        this.target = target;
    }

    JsonText raw(String json) throws IOException {
        out.append(json);
        if (out.length() > GATHERED) {
            flush();
        }
        return this;
    }

    /** Hands on what was gathered. */
    void flush() throws IOException {
        target.append(out);
        out.setLength(0);
    }

    /** A string; null is written as an empty one. */
    JsonText text(String text) {
        out.append('"');
        if (text != null) {
            int plain = 0;
            for (int i = 0; i < text.length(); i++) {
                if (needsEscape(text, i)) {
                    out.append(text, plain, i);
                    escape(text.charAt(i));
                    plain = i + 1;
                }
            }
            out.append(text, plain, text.length());
        }
        out.append('"');
        return this;
    }

    /** A number, rounded to four places, without an exponent. */
    JsonText number(double value) {
        double finite = Math.min(value, Double.MAX_VALUE);
        return number(BigDecimal.valueOf(finite).setScale(PLACES, RoundingMode.HALF_UP));
    }

    /** A number in full, without zeros at its end; absurdly large or small ones with an exponent. */
    JsonText number(BigDecimal value) {
        BigDecimal plain = value.signum() == 0 ? BigDecimal.ZERO : value.stripTrailingZeros();
        boolean absurd = Math.abs((long) plain.precision() - plain.scale()) > MOST_DIGITS || plain.scale() > MOST_DIGITS;
        out.append(absurd ? plain.toString() : plain.toPlainString());
        return this;
    }

    /** Control characters, quotes, and what no UTF-8 file may hold or a terminal might obey. */
    private static boolean needsEscape(String text, int i) {
        char c = text.charAt(i);
        if (Character.isHighSurrogate(c)) {
            return i + 1 == text.length() || !Character.isLowSurrogate(text.charAt(i + 1));
        }
        if (Character.isLowSurrogate(c)) {
            return i == 0 || !Character.isHighSurrogate(text.charAt(i - 1));
        }
        return c < ' ' || c == '"' || c == '\\' || c >= 0x7F && c <= 0x9F || c == '\u2028' || c == '\u2029';
    }

    private void escape(char c) {
        switch (c) {
            case '"' -> out.append("\\\"");
            case '\\' -> out.append("\\\\");
            case '\n' -> out.append("\\n");
            case '\r' -> out.append("\\r");
            case '\t' -> out.append("\\t");
            default -> out.append("\\u").append(HEX[c >> 12]).append(HEX[c >> 8 & 15]).append(HEX[c >> 4 & 15])
                    .append(HEX[c & 15]);
        }
    }
}

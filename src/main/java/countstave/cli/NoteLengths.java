package countstave.cli;

import countstave.files.Console;
import countstave.score.NoteValue;
import countstave.time.Duration;
import java.util.Locale;
import picocli.CommandLine.TypeConversionException;

/** Reads a note value as a musician types it: {@code quarter}, {@code dotted-quarter}, {@code 8th}, {@code 3/8}. */
final class NoteLengths {

    private static final String DOTTED = "dotted-";
    private static final Duration LONGEST = Duration.of(8, 1);

    private NoteLengths() {
    }

    /** @return the length in fractions of a whole note, above 0 */
    static Duration parse(String text) {
        String name = text.strip().toLowerCase(Locale.ROOT);
        int dots = name.startsWith(DOTTED) ? 1 : 0;
        if (dots == 1) {
            name = name.substring(DOTTED.length());
        }
        NoteValue value = NoteValue.ofXmlName(name.equals("8th") ? "eighth" : name);
        if (value != null) {
            return value.dotted(dots);
        }
        try {
            Duration length = Duration.parse(name);
            if (length.isPositive() && dots == 0 && !length.isLongerThan(LONGEST) && name.indexOf('/') > 0) {
                return length;
            }
        } catch (NumberFormatException | ArithmeticException e) {
            // told below, with what would be right
        }
        throw new TypeConversionException("'" + Console.clean(text) + "' is not a note value;"
                + " write whole, half, quarter, eighth, 16th, 32nd, dotted-quarter ... or a fraction such as 3/8");
    }
}

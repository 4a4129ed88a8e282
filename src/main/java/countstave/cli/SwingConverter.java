package countstave.cli;

import countstave.files.Console;
import countstave.score.Swing;
import countstave.time.Duration;
import picocli.CommandLine.ITypeConverter;
import picocli.CommandLine.TypeConversionException;

/** {@code --swing}: {@code score} (null), {@code straight}, {@code 2:1}, or {@code 3:2@16th} for pairs of 16ths. */
final class SwingConverter implements ITypeConverter<Swing> {

    /** Played ratios go up to some 3.5:1 (Friberg and Sundström 1997); a little more may be asked for. */
    private static final int MOST = 4;

    @Override
    public Swing convert(String text) {
        String asked = text.strip();
        if (asked.equals("score")) {
            return null;
        }
        if (asked.equals("straight")) {
            return Swing.STRAIGHT;
        }
        int at = asked.indexOf('@');
        String[] parts = (at < 0 ? asked : asked.substring(0, at)).split(":", -1);
        try {
            if (parts.length == 2) {
                return swing(Integer.parseInt(parts[0].strip()), Integer.parseInt(parts[1].strip()),
                        at < 0 ? Swing.EIGHTH : NoteLengths.parse(asked.substring(at + 1)));
            }
        } catch (NumberFormatException e) {
            // told below, with what would be right
        }
        throw new TypeConversionException("'" + Console.clean(text) + "' is not a swing ratio; write score, straight, or"
                + " long:short, such as 2:1, or 3:2@16th for pairs of 16ths");
    }

    private static Swing swing(int longPart, int shortPart, Duration unit) {
        if (shortPart < 1 || longPart < shortPart || longPart > (long) MOST * shortPart || longPart > Swing.LARGEST) {
            throw new TypeConversionException("a swing ratio must lie between 1:1 and " + MOST + ":1, such as 2:1 or 3:2,"
                    + " not " + longPart + ":" + shortPart);
        }
        if (!unit.equals(Swing.EIGHTH) && !unit.equals(Swing.SIXTEENTH)) {
            throw new TypeConversionException("pairs of eighths or of 16ths are swung, such as 2:1 or 2:1@16th");
        }
        return new Swing(unit, longPart, shortPart).reduced();
    }
}

package countstave.cli;

import countstave.score.ScoreException;
import countstave.sound.Swing;
import countstave.time.Duration;
import picocli.CommandLine.ITypeConverter;
import picocli.CommandLine.TypeConversionException;

/** {@code --swing}: {@code 2:1}, or {@code 3:2@16th} for pairs of another value than eighths. */
final class SwingConverter implements ITypeConverter<Swing> {

    @Override
    public Swing convert(String text) {
        int at = text.indexOf('@');
        Duration unit = at < 0 ? Swing.NONE.unit() : NoteLengths.parse(text.substring(at + 1));
        String[] parts = (at < 0 ? text : text.substring(0, at)).split(":", -1);
        try {
            if (parts.length == 2) {
                return new Swing(Integer.parseInt(parts[0].strip()), Integer.parseInt(parts[1].strip()), unit);
            }
        } catch (NumberFormatException e) {
            // told below, with what would be right
        } catch (ScoreException e) {
            throw new TypeConversionException(e.getMessage());
        }
        throw new TypeConversionException("'" + Console.clean(text) + "' is not a swing ratio;"
                + " write long:short, such as 2:1, or 3:2@16th for pairs of 16ths");
    }
}

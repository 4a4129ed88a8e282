package countstave.cli;

import countstave.files.Console;
import countstave.score.Tempo;
import countstave.time.Duration;
import java.math.BigDecimal;
import picocli.CommandLine.ITypeConverter;
import picocli.CommandLine.TypeConversionException;

/** {@code --tempo}: {@code 96} (quarters a minute) or {@code dotted-quarter=72}. */
final class TempoConverter implements ITypeConverter<Tempo> {

    private static final BigDecimal LOWEST = BigDecimal.ONE;
    private static final BigDecimal HIGHEST = BigDecimal.valueOf(2000);

    @Override
    public Tempo convert(String text) {
        int equals = text.indexOf('=');
        Duration unit = equals < 0 ? Duration.QUARTER : NoteLengths.parse(text.substring(0, equals));
        try {
            BigDecimal perMinute = new BigDecimal(text.substring(equals + 1).strip());
            if (perMinute.compareTo(LOWEST) >= 0 && perMinute.compareTo(HIGHEST) <= 0) {
                return new Tempo(unit, perMinute);
            }
        } catch (NumberFormatException e) {
            // told below, with what would be right
        }
        throw new TypeConversionException("'" + Console.clean(text) + "' is not a tempo;"
                + " write beats a minute from 1 to 2000, such as 96 (quarters) or dotted-quarter=72");
    }
}

package countstave.cli;

import countstave.files.Console;
import countstave.score.BarChoice;
import picocli.CommandLine.ITypeConverter;
import picocli.CommandLine.TypeConversionException;

/** {@code --movement}: a number from 1, or {@code all}. */
final class MovementConverter implements ITypeConverter<Integer> {

    @Override
    public Integer convert(String text) {
        if (text.equals("all")) {
            return BarChoice.EACH;
        }
        if (text.matches("[1-9][0-9]{0,3}")) {
            return Integer.valueOf(text);
        }
        throw new TypeConversionException("'" + Console.clean(text) + "' is not a movement; write its number, such as 2, or all");
    }
}

package countstave.cli;

import countstave.files.Console;
import countstave.grid.Weights;
import java.util.LinkedHashMap;
import java.util.Map;
import picocli.CommandLine.ITypeConverter;
import picocli.CommandLine.TypeConversionException;

/** {@code --steadiness}: a number, or the name of one of its ends or its middle. */
final class SteadinessConverter implements ITypeConverter<Integer> {

    /** As few words as possible; neither; as few changes as possible. */
    static final Map<String, Integer> NAMES = new LinkedHashMap<>();

    static {
        NAMES.put("few-words", 0);
        NAMES.put("even", Weights.DEFAULT_STEADINESS);
        NAMES.put("one-count", Weights.MAX_STEADINESS);
    }

    @Override
    public Integer convert(String text) {
        Integer named = NAMES.get(text);
        if (named != null) {
            return named;
        }
        if (text.matches("\\d{1,2}") && Integer.parseInt(text) <= Weights.MAX_STEADINESS) {
            return Integer.valueOf(text);
        }
        throw new TypeConversionException("'" + Console.clean(text) + "' is not a steadiness; write a whole number from 0 to "
                + Weights.MAX_STEADINESS + ", or one of " + String.join(", ", NAMES.keySet()));
    }
}

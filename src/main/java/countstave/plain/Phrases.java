package countstave.plain;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.math.BigDecimal;
import java.math.RoundingMode;
import java.text.MessageFormat;
import java.time.DayOfWeek;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.MissingResourceException;
import java.util.PropertyResourceBundle;
import java.util.ResourceBundle;
import java.util.TreeMap;
import java.util.concurrent.ConcurrentHashMap;

/**
 * What is told to a person beside the score itself, in one language: sentences with places for what they speak of
 * ({@link MessageFormat}), plural forms by a choice within the sentence. English is the reference; every language has all its
 * keys.
 */
public final class Phrases {

    private static final String FILE = "phrases";

    /** ISO 639-1 codes of the languages whose words are sure, English first. */
    private static final List<String> CODES = List.of("en", "de");

    private static final Map<String, Phrases> KNOWN = new ConcurrentHashMap<>();

    public static final Phrases ENGLISH = in("en");

    private final String code;
    private final Locale locale;
    private final ResourceBundle bundle;

    private Phrases(String code) {
        this.code = code;
        this.locale = Locale.forLanguageTag(code);
        this.bundle = read(FILE + (code.equals("en") ? "" : "_" + code) + ".properties");
    }

    /** Read as it is: the search for a bundle by locale costs a short run several hundredths of its time. */
    private static ResourceBundle read(String file) {
        try (InputStream in = Phrases.class.getResourceAsStream(file)) {
            return new PropertyResourceBundle(in);
        } catch (IOException e) {
            throw new UncheckedIOException("the program is not complete: install it again", e);
        }
    }

    /** ISO 639-1 codes, English first. */
    public static List<String> codes() {
        return CODES;
    }

    /**
     * The phrases of a language.
     *
     * @throws IllegalArgumentException if it is not one of {@link #codes()}
     */
    public static Phrases in(String code) {
        if (!CODES.contains(code)) {
            throw new IllegalArgumentException("no phrases in " + code);
        }
        return KNOWN.computeIfAbsent(code, Phrases::new);
    }

    /** Those of the person's language if there are any, else English. */
    public static Phrases of(Locale locale) {
        return in(CODES.contains(locale.getLanguage()) ? locale.getLanguage() : "en");
    }

    /** ISO 639-1. */
    public String code() {
        return code;
    }

    /** A number rounded to so many places, with the language's sign. */
    public String decimal(double value, int places) {
        return decimal(BigDecimal.valueOf(value).setScale(places, RoundingMode.HALF_UP));
    }

    /** A number as it is, with the language's sign. */
    public String decimal(BigDecimal value) {
        return value.toPlainString().replace(".", text("decimal.sign"));
    }

    /** A whole number with the language's sign between thousands. */
    public String number(long value) {
        return String.format(Locale.ROOT, "%,d", value).replace(",", text("thousands.sign"));
    }

    /** A number as the place in a row: {@code 3rd}, {@code 11th}. */
    public String ordinal(int number) {
        return text(switch (number / 10 % 10 == 1 ? 0 : number % 10) {
            case 1 -> "ordinal.1";
            case 2 -> "ordinal.2";
            case 3 -> "ordinal.3";
            default -> "ordinal";
        }, number);
    }

    /** {@code Thu}. */
    public String weekday(DayOfWeek day) {
        return text("weekday." + day.getValue());
    }

    /**
     * A sentence or word.
     *
     * @param places what it speaks of, in the order of the sentence's {@code {0}}, {@code {1}}; numbers only where a plural
     *     is chosen by them or a person reads them with the signs of the language, else texts
     */
    public String text(String key, Object... places) {
        String pattern = bundle.getString(key);
        return !pattern.contains(",choice") && pattern.indexOf('\'') < 0 ? filled(pattern, places)
                : new MessageFormat(pattern, locale).format(places);
    }

    /** The same, or the other text where the language has no words of its own for this. */
    public String textOr(String key, String other) {
        try {
            return bundle.getString(key);
        } catch (MissingResourceException e) {
            return other;
        }
    }

    /**
     * All phrases whose keys begin so, without that beginning, for whoever puts them together elsewhere: a place is
     * {@code {0}}, and there is no choice in them.
     */
    public Map<String, String> all(String prefix) {
        Map<String, String> found = new TreeMap<>();
        for (String key : bundle.keySet()) {
            if (key.startsWith(prefix)) {
                found.put(key.substring(prefix.length()), bundle.getString(key).replace("''", "'"));
            }
        }
        return found;
    }

    /** A sentence whose places are filled as they are: most of them, and the formatter is slow to load. */
    private static String filled(String pattern, Object[] places) {
        StringBuilder text = new StringBuilder();
        int from = 0;
        for (int open = pattern.indexOf('{'); open >= 0; open = pattern.indexOf('{', from)) {
            int close = pattern.indexOf('}', open);
            text.append(pattern, from, open).append(places[Integer.parseInt(pattern.substring(open + 1, close))]);
            from = close + 1;
        }
        return text.append(pattern, from, pattern.length()).toString();
    }
}

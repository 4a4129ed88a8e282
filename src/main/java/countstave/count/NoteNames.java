package countstave.count;

import countstave.score.NoteValue;
import countstave.score.Tempo;
import countstave.time.Proportion;

/**
 * Note values in print: by symbol where ordinary fonts have one (♩ and ♪), else in words.
 *
 * @param symbols whether ♩, ♪, × and the like may be used, or words and ASCII only
 */
public record NoteNames(boolean symbols) {

    public static final NoteNames SYMBOLS = new NoteNames(true);
    public static final NoteNames WORDS = new NoteNames(false);

    /** {@code ♩}, {@code ♩.}, {@code dotted half note}, {@code 16th}. */
    public String one(NoteValue value, int dots) {
        String symbol = symbol(value);
        if (symbol != null) {
            return symbol + ".".repeat(dots);
        }
        return dotted(dots) + singular(value);
    }

    /** {@code ♩}, {@code 4 ♩}, {@code 3 16ths}, {@code a triplet ♩}, {@code 2 triplet ♪}. */
    public String amount(NoteAmount amount) {
        String kind = amount.ratio().isPlain() ? "" : tuplet(amount.ratio().actual()) + " ";
        if (amount.times() == 1) {
            String article = kind.startsWith("11-") || kind.isEmpty() && amount.value() == NoteValue.EIGHTH ? "an " : "a ";
            return (kind.isEmpty() && symbol(amount.value()) != null ? "" : article) + kind + one(amount.value(), amount.dots());
        }
        String many = symbol(amount.value()) != null ? one(amount.value(), amount.dots())
                : dotted(amount.dots()) + plural(amount.value());
        return amount.times() + " " + kind + many;
    }

    /** {@code ♩ = 96}, {@code dotted quarter = 60}. */
    public String tempo(Tempo tempo) {
        NoteAmount unit = NoteAmount.one(tempo.unit());
        String name = unit.isNamed() ? one(unit.value(), unit.dots()) : tempo.unit().toString();
        java.math.BigDecimal perMinute = tempo.perMinute().stripTrailingZeros();
        boolean plain = Math.abs((long) perMinute.scale()) < 12 && perMinute.precision() < 12;
        return name + " = " + (plain ? perMinute.toPlainString() : perMinute.toString());
    }

    /** A factor of speed: {@code ×5⁄4}, {@code ×2}; without symbols {@code x5/4}. */
    public String factor(Proportion speed) {
        String sign = symbols ? "\u00d7" : "x";
        return sign + (symbols ? speed.toString().replace('/', '\u2044') : speed.toString());
    }

    /** Many of a value in words: {@code quarters}, {@code 16ths}, {@code half notes}. */
    public static String plural(NoteValue value) {
        return singular(value) + "s";
    }

    /** One of a value in words: {@code quarter}, {@code 8th}, {@code half note}. */
    public static String singular(NoteValue value) {
        return switch (value) {
            case WHOLE -> "whole note";
            case HALF -> "half note";
            case EIGHTH -> "8th";
            default -> value.xmlName();
        };
    }

    /** {@code triplet}, {@code quintuplet} …; {@code 11-tuplet} where the name is not in use. */
    public static String tuplet(int actual) {
        return switch (actual) {
            case 2 -> "duplet";
            case 3 -> "triplet";
            case 4 -> "quadruplet";
            case 5 -> "quintuplet";
            case 6 -> "sextuplet";
            case 7 -> "septuplet";
            case 9 -> "nonuplet";
            default -> actual + "-tuplet";
        };
    }

    private String symbol(NoteValue value) {
        if (!symbols) {
            return null;
        }
        return value == NoteValue.QUARTER ? "\u2669" : value == NoteValue.EIGHTH ? "\u266a" : null;
    }

    private static String dotted(int dots) {
        return dots == 0 ? "" : dots == 1 ? "dotted " : "double-dotted ";
    }
}

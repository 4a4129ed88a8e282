package countstave.count;

import countstave.plain.Phrases;
import countstave.score.NoteValue;
import countstave.score.Tempo;
import countstave.time.Proportion;

/**
 * Note values in print: by symbol where ordinary fonts have one (♩ and ♪), else in the words of a language.
 *
 * @param symbols whether ♩, ♪, × and the like may be used, or words and ASCII only
 * @param phrases the language
 */
public record NoteNames(boolean symbols, Phrases phrases) {

    /** English. */
    public static final NoteNames SYMBOLS = new NoteNames(true, Phrases.ENGLISH);
    /** English. */
    public static final NoteNames WORDS = new NoteNames(false, Phrases.ENGLISH);

    /** Up to this and for 9 a tuplet has a name of its own; 8 is called by its number. */
    private static final int MOST_NAMED = 7;

    public static NoteNames symbols(Phrases phrases) {
        return new NoteNames(true, phrases);
    }

    /** A sentence of the language: {@link Phrases#text}. */
    public String phrase(String key, Object... places) {
        return phrases.text(key, places);
    }

    /** {@code ♩}, {@code ♩.}, {@code dotted half note}, {@code 16th}. */
    public String one(NoteValue value, int dots) {
        String symbol = symbol(value);
        if (symbol != null) {
            return symbol + ".".repeat(dots);
        }
        return dotted(dots, singular(value));
    }

    /** {@code ♩}, {@code 4 ♩}, {@code 3 16ths}, {@code a triplet ♩}, {@code 2 triplet ♪}. */
    public String amount(NoteAmount amount) {
        boolean plain = amount.ratio().isPlain();
        String name;
        if (amount.times() == 1 || symbol(amount.value()) != null) {
            name = one(amount.value(), amount.dots());
        } else {
            name = dotted(amount.dots(), plural(amount.value()));
        }
        int tuplet = amount.ratio().actual();
        if (!plain) {
            name = phrase("amount.of.tuplet", tuplet(tuplet), name);
        }
        if (amount.times() > 1) {
            return amount.times() + " " + name;
        }
        if (plain && symbol(amount.value()) != null) {
            return name;
        }
        boolean vowel = plain ? amount.value() == NoteValue.EIGHTH : tuplet == 11;
        return phrase(vowel ? "amount.one.vowel" : "amount.one", name);
    }

    /** {@code ♩ = 96}, {@code dotted quarter = 60}. */
    public String tempo(Tempo tempo) {
        NoteAmount unit = NoteAmount.one(tempo.unit());
        String name = unit.isNamed() ? one(unit.value(), unit.dots()) : tempo.unit().toString();
        java.math.BigDecimal perMinute = tempo.perMinute().stripTrailingZeros();
        boolean plain = Math.abs((long) perMinute.scale()) < 12 && perMinute.precision() < 12;
        return name + " = " + (plain ? phrases.decimal(perMinute) : perMinute.toString());
    }

    /** A factor of speed: {@code ×5⁄4}, {@code ×2}; without symbols {@code x5/4}. */
    public String factor(Proportion speed) {
        String sign = symbols ? "\u00d7" : "x";
        return sign + (symbols ? speed.toString().replace('/', '\u2044') : speed.toString());
    }

    /** Many of a value in words: {@code quarters}, {@code 16ths}, {@code half notes}. */
    public String plural(NoteValue value) {
        return phrase("value." + value.xmlName() + ".many");
    }

    /** One of a value in words: {@code quarter}, {@code 8th}, {@code half note}. */
    public String singular(NoteValue value) {
        return phrase("value." + value.xmlName() + ".one");
    }

    /** {@code triplet}, {@code quintuplet} …; {@code 11-tuplet} where the name is not in use; as it stands before a note value. */
    private String tuplet(int actual) {
        boolean named = actual >= 2 && actual <= MOST_NAMED || actual == 9;
        return named ? phrase("tuplet." + actual + ".before") : phrase("tuplet.before", String.valueOf(actual));
    }

    private String symbol(NoteValue value) {
        if (!symbols) {
            return null;
        }
        return value == NoteValue.QUARTER ? "\u2669" : value == NoteValue.EIGHTH ? "\u266a" : null;
    }

    String dotted(int dots, String name) {
        return dots == 0 ? name : phrase(dots == 1 ? "value.dotted" : "value.dotted.twice", name);
    }
}

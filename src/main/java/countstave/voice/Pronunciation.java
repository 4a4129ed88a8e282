package countstave.voice;

import countstave.count.AndWords;
import countstave.count.CountingSystem;
import java.util.HashMap;
import java.util.List;
import java.util.Map;

/**
 * Which word of the bank is said for a word of a counting system. In this order:
 *
 * <ol>
 * <li>A number in the language of the voice. One above 16 is said by its last figure, full tens as ten.
 * <li>Where the voice speaks another language than the system's words are in, the word of the same place of the beat in the
 *     voice's language, as {@code --and} would print it.
 * <li>A word of a system that belongs to a language, in the language of the voice.
 * <li>A syllable that belongs to no language.
 * <li>The word in the first language that has it: a word of one's own for "and".
 * <li>A <b>stand-in</b> for a word that is nowhere, such as one of a system of one's own: the syllable ta, te, ti, jo or du
 *     that has its last vowel, ta where it has none.
 * </ol>
 */
public final class Pronunciation {

    /** The language that numbers are said in where neither the system nor the player names one that is in the bank. */
    private static final String OTHERWISE = "en";
    private static final int HIGHEST = 16;
    /** Vowels by the stand-in that has them; accents and other alphabets: those of the languages in the bank. */
    private static final Map<String, String> STAND_INS = Map.of(
            "ta", "aàáâãäåаαά", "te", "eèéêëæеэεέ", "ti", "iìíîïyýıиыιίηή", "jo", "oòóôõöøоοόωώ", "du", "uùúûüуюυύ");

    /**
     * A word of the bank.
     *
     * @param section where it stands
     * @param word as it is printed there
     * @param standIn whether it is another word than the one that is meant
     */
    public record Found(String section, String word, boolean standIn) {
    }

    private final SyllableBank bank;
    private final String language;
    private final boolean belongsToLanguage;
    private final Map<String, String> exchanged = new HashMap<>();

    /**
     * @param system whose words are said
     * @param language of the voice, one that the bank speaks, or null for that of the system's words
     */
    public Pronunciation(SyllableBank bank, CountingSystem system, String language) {
        this.bank = bank;
        String own = system.language();
        this.language = language != null ? language : bank.speaks(own) ? own : OTHERWISE;
        this.belongsToLanguage = !own.isEmpty();
        if (belongsToLanguage && !own.equals(this.language)) {
            exchange(own);
        }
    }

    private void exchange(String own) {
        AndWords.Language from = AndWords.language(own);
        AndWords.Language to = AndWords.language(language);
        if (from != null && to != null) {
            put(from.fillers(), to.fillers());
            put(from.thirds(), to.thirds());
            put(from.fourths(), to.fourths());
        }
    }

    private void put(List<String> from, List<String> to) {
        for (int i = 0; i < from.size(); i++) {
            exchanged.put(from.get(i), to.get(i));
        }
    }

    /** What is said for a printed word; there is always something. */
    public Found find(String printed) {
        int number = number(printed);
        if (number > 0) {
            int said = number <= HIGHEST ? number : number % 10 == 0 ? 10 : number % 10;
            return new Found(language, Integer.toString(said), said != number);
        }
        String word = exchanged.getOrDefault(printed, printed);
        if (belongsToLanguage && bank.has(language, word)) {
            return new Found(language, word, false);
        }
        if (bank.has(SyllableBank.SYLLABLES, word)) {
            return new Found(SyllableBank.SYLLABLES, word, false);
        }
        for (String section : bank.sections()) {
            if (bank.has(section, word)) {
                return new Found(section, word, false);
            }
        }
        return new Found(SyllableBank.SYLLABLES, standIn(word), true);
    }

    private static int number(String word) {
        boolean digits = !word.isEmpty() && word.length() <= 6 && word.chars().allMatch(c -> c >= '0' && c <= '9');
        return digits ? Integer.parseInt(word) : 0;
    }

    private static String standIn(String word) {
        String lower = word.toLowerCase(java.util.Locale.ROOT);
        for (int i = lower.length() - 1; i >= 0; i--) {
            for (Map.Entry<String, String> vowel : STAND_INS.entrySet()) {
                if (vowel.getValue().indexOf(lower.charAt(i)) >= 0) {
                    return vowel.getKey();
                }
            }
        }
        return "ta";
    }
}

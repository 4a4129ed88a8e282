package countstave.musicxml;

import countstave.score.Swing;
import java.text.Normalizer;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Locale;
import java.util.Set;
import java.util.regex.Pattern;

/**
 * Words printed in a score that say it is swung, or straight again, as docs/count.md lists them. Common practice, no
 * source.
 *
 * <p>Words are compared, and listed here, without accents, case and hyphens. Commas, slashes and parentheses part what is said into
 * clauses: "Straight 8ths, swung 16ths" swings the 16ths.
 */
final class SwingWords {

    /** A longer text is an instruction in which the word may stand for something else. */
    private static final int MOST_WORDS = 10;

    /** Each of them alone says that it is swung. */
    private static final Set<String> SWUNG = set("""
            swing swung swings swinging swingin swingy shuffle shuffled swingend swingende swingig geswingt geswingte \
            ternar ternare triolisch swingue swinguee swinguees ternaire ternaires swingueado swingueada swingueadas \
            atresillado atresilladas swingato swingata terzinato terzinati suingue suingado suingada tercinado \
            tercinadas ternair swingande swinget kolmimuunteinen swingowo swingowane swingove свинг свингом свинговыи \
            шаффл шафл swingu свинга""");

    private static final Set<String> SHUFFLE = set("shuffle shuffled шаффл шафл");

    /** With a note value beside them, these say that it is straight. */
    private static final Set<String> EVEN = set("""
            straight even gerade binar binare egales droites binaires rectas iguales binarias dritti dritte pari retas \
            iguais rechte gelijke raka jamna lige rette suorat tasaiset rowne proste rovne ровные прямые""");

    /** These say so alone, or with words of tempo, style and return. */
    private static final Set<String> EVEN_ALONE = set("""
            straight gerade binar binaire binario binair rakt tasajakoinen rowno rovne ровно unswung ungeswingt""");

    private static final Set<String> BESIDE = set("""
            feel time rhythm beat groove again now play all tutti back to tempo slow medium med moderate fast up bright \
            easy rock pop funk latin bossa ballad jazz the a und et y e en i""");

    private static final Set<String> EIGHTHS = set("""
            8th 8ths 8s eighth eighths quaver quavers achtel achteln 8tel croche croches corchea corcheas ottavi crome \
            colcheias achtste achtsten attondelar ottendedele ottendedeler attendedeler kahdeksasosat osemki osminy \
            восьмые восьмыми""");

    private static final Set<String> SIXTEENTHS = set("""
            16th 16ths 16s sixteenth sixteenths semiquaver semiquavers sechzehntel sechzehnteln 16tel semicorchea \
            semicorcheas sedicesimi semicrome semicolcheias zestiende zestienden sextondelar sekstendele sekstendedele \
            sekstendedeler kuudestoistaosat szesnastki sestnactiny шестнадцатые шестнадцатыми""");

    private static final Set<String> NOTED = set("note notes feel beat beats");

    private static final Set<String> NOT = set("""
            no not dont without end stop cancel kein keine nicht ohne sans pas sin senza non sem nao geen niet zonder \
            utan inte uden ikke uten ilman ei bez без не""");

    private static final Set<String> BETWEEN = set("de d of more longer any mehr plus mas piu mais");

    private static final Set<String> AFTER = set("off ends out aus");

    /** Written without spaces: these are looked for inside the text. */
    private static final List<String> SWUNG_SIGNS = List.of("スウィンク", "スインク", "シャッフル", "摇摆", "搖擺");
    private static final List<String> EVEN_SIGNS = List.of("ストレート", "イーフン");
    private static final String HALF_TIME_SHUFFLE = "ハーフタイムシャッフル";

    private static final Pattern MARKS = Pattern.compile("\\p{M}|['’`]");
    private static final Pattern CLAUSES = Pattern.compile("[,;:/()\\[\\]|=–—]");
    private static final Pattern SPACES = Pattern.compile("[\\s.\\-‐‑·・\"“”„«»!*]+");

    /** What a clause says: EVEN and SWUNG may name their note value, a plain one may name it for them. */
    private enum Kind { PLAIN, EVEN, SWUNG }

    private SwingWords() {
    }

    /** The swing that these words ask for, {@link Swing#STRAIGHT} where they end it, or null where they say neither. */
    static Swing read(String text) {
        String folded = fold(text);
        if (words(folded).size() > MOST_WORDS) {
            return null;
        }
        boolean even = holds(folded, EVEN_SIGNS);
        boolean swung = holds(folded, SWUNG_SIGNS);
        boolean sixteenths = swung && (folded.contains("16")
                || String.join("", words(folded)).contains(HALF_TIME_SHUFFLE));
        boolean plainSixteenths = false;
        boolean valued = false;
        for (String clause : CLAUSES.split(folded)) {
            List<String> words = words(clause);
            Kind kind = kind(words);
            boolean finer = has(words, SIXTEENTHS) && !has(words, EIGHTHS) || words.contains("doubles");
            plainSixteenths |= kind == Kind.PLAIN && finer;
            even |= kind == Kind.EVEN;
            swung |= kind == Kind.SWUNG;
            sixteenths |= kind == Kind.SWUNG && (finer || isOfSixteenths(words));
            valued |= kind == Kind.SWUNG && (has(words, EIGHTHS) || has(words, SIXTEENTHS));
        }
        if (!swung) {
            return even ? Swing.STRAIGHT : null;
        }
        return Swing.triplet(sixteenths || plainSixteenths && !valued ? Swing.SIXTEENTH : Swing.EIGHTH);
    }

    /** Styles whose 16ths are swung: the half-time shuffle, and new jack swing. */
    private static boolean isOfSixteenths(List<String> words) {
        boolean halfTime = words.contains("halftime") || words.contains("half") && words.contains("time");
        return halfTime && has(words, SHUFFLE) || words.contains("jack") && words.contains("swing");
    }

    private static Kind kind(List<String> words) {
        boolean swung = false;
        boolean negated = false;
        for (int i = 0; i < words.size(); i++) {
            if (SWUNG.contains(words.get(i))) {
                swung = true;
                negated |= isNegated(words, i);
            }
        }
        if (swung) {
            return negated ? Kind.EVEN : Kind.SWUNG;
        }
        boolean valued = has(words, EVEN) && (has(words, EIGHTHS) || has(words, SIXTEENTHS));
        return valued || isEvenAlone(words) ? Kind.EVEN : Kind.PLAIN;
    }

    private static boolean isNegated(List<String> words, int at) {
        boolean before = at > 0 && NOT.contains(words.get(at - 1));
        boolean further = at > 1 && BETWEEN.contains(words.get(at - 1)) && NOT.contains(words.get(at - 2));
        return before || further || at + 1 < words.size() && AFTER.contains(words.get(at + 1));
    }

    private static boolean isEvenAlone(List<String> words) {
        boolean said = false;
        for (String word : words) {
            if (EVEN_ALONE.contains(word)) {
                said = true;
            } else if (!BESIDE.contains(word)) {
                return false;
            }
        }
        return said;
    }

    private static boolean has(List<String> words, Set<String> any) {
        for (String word : words) {
            if (any.contains(word)) {
                return true;
            }
        }
        return false;
    }

    private static boolean holds(String folded, List<String> signs) {
        for (String sign : signs) {
            if (folded.contains(sign)) {
                return true;
            }
        }
        return false;
    }

    /** The words of a clause, "straight 8" and "swing 16 feel" with their values written out. */
    private static List<String> words(String clause) {
        String stripped = SPACES.matcher(clause).replaceAll(" ").strip();
        if (stripped.isEmpty()) {
            return List.of();
        }
        List<String> words = new ArrayList<>(List.of(stripped.split(" ")));
        for (int i = 1; i < words.size(); i++) {
            boolean number = words.get(i).equals("8") || words.get(i).equals("16");
            if (number && (i == words.size() - 1 || NOTED.contains(words.get(i + 1)))) {
                words.set(i, words.get(i) + "th");
            }
        }
        return words;
    }

    /** Without case, accents and apostrophes; a sixteenth as a fraction in one word. */
    private static String fold(String text) {
        String lower = text.toLowerCase(Locale.ROOT).replace("1/16", "16th").replace("1/8", "8th");
        for (int i = 0; i < lower.length(); i++) {
            if (lower.charAt(i) > '~') {
                lower = Normalizer.normalize(lower, Normalizer.Form.NFKD);
                break;
            }
        }
        return MARKS.matcher(lower).replaceAll("");
    }

    private static Set<String> set(String listed) {
        return new HashSet<>(List.of(listed.split(" ")));
    }
}

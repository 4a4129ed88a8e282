package countstave.count;

import static org.junit.jupiter.api.Assertions.assertAll;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import countstave.score.ScoreException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.MethodSource;
import org.junit.jupiter.params.provider.ValueSource;

class CountingSystemTest {

    static List<String> names() {
        return CountingSystem.names();
    }

    @ParameterizedTest
    @MethodSource("names")
    void everyDivisionHasOneTokenAPart(String name) {
        CountingSystem system = CountingSystem.named(name);
        assertEquals(name, system.name());
        for (int parts = 1; parts <= 64; parts++) {
            for (Feel feel : List.of(Feel.SIMPLE, Feel.COMPOUND)) {
                Row row = system.row(parts, feel);
                assertEquals(parts, row.words().size(), name + " " + parts);
                for (int k = 0; k < parts; k++) {
                    assertToken(row.say(k, 3));
                }
            }
            assertEquals(parts, system.spanRow(parts, true).words().size());
            assertEquals(parts, system.spanRow(parts, false).words().size());
        }
        for (int units = 1; units <= 8; units++) {
            for (int parts = 1; parts <= 8; parts++) {
                assertEquals(units * parts, system.groupRow(units, parts).words().size());
            }
        }
    }

    private static void assertToken(String say) {
        assertFalse(say.isBlank());
        assertTrue(say.codePoints().noneMatch(c -> Character.isWhitespace(c) || Character.isSpaceChar(c)
                || Character.isISOControl(c)), say);
        assertFalse(say.equals(CountingSystem.NUMBER) || say.equals(CountingSystem.NUMBERS), say);
    }

    /** The numbers are for keeping one's place: no two parts of a beat up to 7 are called the same, but the halves' thirds. */
    @Test
    void numbersTellThePartsApart() {
        CountingSystem numbers = CountingSystem.named("numbers");
        for (int parts : List.of(2, 3, 4, 5, 7)) {
            Set<String> words = new HashSet<>(numbers.row(parts, Feel.SIMPLE).words());
            assertEquals(parts, words.size(), "division " + parts);
        }
    }

    /** "&" is the half of the beat wherever it appears, for every even division. */
    @Test
    void andIsTheHalf() {
        CountingSystem numbers = CountingSystem.named("numbers");
        for (int parts = 1; parts <= 64; parts++) {
            List<String> words = numbers.row(parts, Feel.SIMPLE).words();
            for (int k = 0; k < parts; k++) {
                assertTrue(!words.get(k).equals("&") || 2 * k == parts, parts + ": " + words);
            }
        }
    }

    @ParameterizedTest
    @CsvSource(delimiter = '|', textBlock = """
            8 | SIMPLE | N ah e ah & ah a ah
            8 | COMPOUND | N ah e ah & ah a ah
            9 | SIMPLE | N ah ta trip ah ta let ah ta
            10 | SIMPLE | N ah 2 ah 3 & 4 ah 5 ah
            11 | SIMPLE | N 2 3 4 5 6 7 8 9 10 11
            12 | SIMPLE | N ah trip e let ah & ah trip a let ah
            12 | COMPOUND | N ta ah e trip ta ah ta let a ah ta
            13 | SIMPLE | N 2 3 4 5 6 7 8 9 10 11 12 13
            14 | SIMPLE | N ah 2 ah 3 ah 4 & 5 ah 6 ah 7 ah
            15 | SIMPLE | N ah ta 2 ah trip 3 ah ta 4 let ah 5 ah ta
            16 | SIMPLE | N ta ah ta e ta ah ta & ta ah ta a ta ah ta
            18 | SIMPLE | N da ah trip ta da trip da ah & ta da let da ah let ta da
            """)
    void numbersBeyondTheirRows(int parts, Feel feel, String words) {
        // no published form (facts: "no settled words"): countstave's own rule, as documented in docs/systems.md
        assertEquals(words, String.join(" ", CountingSystem.named("numbers").row(parts, feel).words()));
    }

    @ParameterizedTest
    @CsvSource(delimiter = '|', textBlock = """
            # based on; own lines; parts; feel; what is said
            numbers | filler = da                              | 8 | SIMPLE   | N da e da & da a da
            numbers | filler = da, ta                          | 9 | SIMPLE   | N da ta trip da ta let da ta
            numbers | filler = none                            | 4 | SIMPLE   | N e & a
            numbers | filler = none                            | 8 | SIMPLE   | N 2 3 4 5 6 7 8
            numbers | 8 = N a did a & a did a                  | 16 | SIMPLE  | N ah a ah did ah a ah & ah a ah did ah a ah
            numbers | other = 4 3 2 with numbers, 1 with numbers | 8 | SIMPLE | N 2 3 4 & 2 3 4
            numbers | other = 4 with la, 1 with la             | 12 | COMPOUND | N la la e la la & la la a la la
            numbers | other compound = 3 with la, 1 with la    | 12 | COMPOUND | N la la la trip la la la let la la la
            numbers | other compound = 3 with la, 1 with la    | 8 | SIMPLE   | N ah e ah & ah a ah
            numbers | filler = na;other = 1 with la            | 8 | SIMPLE   | N na e na & na a na
            numbers | filler = na;other = 1 with la            | 11 | SIMPLE  | N la la la la la la la la la la
            solkattu | filler = na                             | 12 | SIMPLE  | ta na ka ka di na mi na ta mi ka na
            numbers | 3 = N e a                                | 9 | SIMPLE   | N ah ta e ah ta a ah ta
            """)
    void theFillerOfOnesOwnSystem(String base, String lines, int parts, Feel feel, String words) {
        CountingSystem system = CountingSystem.parse("own.system", "based on = " + base + "\n" + lines.replace(';', '\n'));
        assertEquals(words, String.join(" ", system.row(parts, feel).words()));
    }

    @Test
    void theFillerIsSaidInGroupsToo() {
        // "ta" is always the next level (tuneful.squarespace.com/meter); the units keep du ba bi
        assertEquals("du ta ta ta ba ta ta ta bi ta ta ta", String.join(" ", CountingSystem.named("gordon").groupRow(3, 4).words()));
        CountingSystem own = CountingSystem.parse("own.system", "1 = N\nasymmetric = groups\n2 asymmetric = N be\nfiller = x y");
        assertEquals("N x be x", String.join(" ", own.groupRow(2, 2).words()));
        assertEquals("N y x y be y x y", String.join(" ", own.groupRow(2, 4).words()));
        assertEquals("N x y be x y", String.join(" ", own.groupRow(2, 3).words()));
        assertEquals("N 2 be 2", String.join(" ", CountingSystem.parse("own.system",
                "1 = N\nasymmetric = groups\n2 asymmetric = N be").groupRow(2, 2).words()));
    }

    @Test
    void anyNumberOfPartsHasItsWords() {
        // far beyond what is said: hostile scores cut a beat as they like; 720720 has 240 divisors
        for (String name : CountingSystem.names()) {
            for (int parts : new int[] {720_720, 1_000_003, 2 * 1_000_003}) {
                assertToken(CountingSystem.named(name).row(parts, Feel.COMPOUND).say(parts - 1, 1));
                assertToken(CountingSystem.named(name).groupRow(3, parts).say(parts - 1, 1));
            }
        }
    }

    @Test
    void solkattuJoinsPhrases() {
        CountingSystem solkattu = CountingSystem.named("solkattu");
        assertEquals("ta ka di mi ta ka di mi ta ki ta", String.join(" ", solkattu.row(11, Feel.SIMPLE).words()));
        assertEquals("ta ka di mi ta ka di mi ta di gi na tom", String.join(" ", solkattu.row(13, Feel.SIMPLE).words()));
    }

    @Test
    void spansAreNumberedUnlessTheSystemHasPhrases() {
        assertEquals("N 2 3 4 5", String.join(" ", CountingSystem.named("numbers").spanRow(5, true).words()));
        assertEquals("1 2 3 4 5", String.join(" ", CountingSystem.named("numbers").spanRow(5, false).words()));
        assertEquals("ta 2 3 4 5", String.join(" ", CountingSystem.named("french").spanRow(5, true).words()));
        for (boolean onBeat : new boolean[] {true, false}) {
            assertEquals("ta di gi na tom", String.join(" ", CountingSystem.named("solkattu").spanRow(5, onBeat).words()));
        }
    }

    @Test
    void everyUncertainRowSaysWhy() {
        // the rows the source lists mark as from memory or unsettled
        assertFalse(CountingSystem.named("takadimi").note(new RowKey(7, null)).uncertain().isEmpty());
        assertFalse(CountingSystem.named("gordon").note(new RowKey(6, null)).uncertain().isEmpty());
        assertFalse(CountingSystem.named("numbers").note(new RowKey(5, null)).uncertain().isEmpty());
        assertTrue(CountingSystem.named("numbers").note(new RowKey(4, null)).uncertain().isEmpty());
        for (String name : CountingSystem.names()) {
            assertFalse(CountingSystem.named(name).source().isEmpty(), name);
        }
    }

    @Test
    void languages() {
        assertTrue(AndWords.languages().size() >= 8);
        for (AndWords.Language language : AndWords.languages()) {
            assertEquals(3, new HashSet<>(language.fourths()).size(), language.name());
            assertEquals(2, new HashSet<>(language.thirds()).size(), language.name());
            // what stands between is none of the words that keep their places, nor sounds like one
            Set<String> kept = new HashSet<>(language.fourths());
            kept.addAll(language.thirds());
            assertEquals(3, new HashSet<>(language.fillers()).size(), language.name());
            assertTrue(language.fillers().stream().noneMatch(kept::contains), language.name());
            assertTrue(language.code().equals("en") || !kept.contains("a") || !language.fillers().contains("ah"), language.name());
            assertFalse(language.source().isEmpty() && language.uncertain().isEmpty(), language.name());
            CountingSystem system = CountingSystem.named("numbers").withAnd(language.code());
            assertEquals(language.and(), system.row(2, Feel.SIMPLE).word(1));
            // one's place is kept: "and" names nothing but the half
            assertEquals(1, system.row(4, Feel.SIMPLE).words().stream().filter(language.and()::equals).count());
        }
        assertEquals("1 og", String.join(" ", CountingSystem.named("numbers").withAnd("og").row(2, Feel.SIMPLE).words())
                .replace("N", "1"));
        assertThrows(ScoreException.class, () -> CountingSystem.named("takadimi").withAnd("de"));
        assertThrows(ScoreException.class, () -> CountingSystem.named("numbers").withAnd("two words"));
        assertThrows(ScoreException.class, () -> CountingSystem.named("numbers").withAnd("\u001b[31m"));
    }

    @Test
    void ownFile(@TempDir Path folder) throws Exception {
        Path file = folder.resolve("my.system");
        Files.writeString(file, "\uFEFF# mine\r\nbased on = numbers\r\ntitle = Mine\r\n3 = N ki ta   # as at school\r\n");
        CountingSystem mine = CountingSystem.find(file.toString());
        assertAll(() -> assertEquals("my", mine.name()),
                () -> assertEquals("Mine", mine.title()),
                () -> assertEquals("N ki ta", String.join(" ", mine.row(3, Feel.SIMPLE).words())),
                () -> assertEquals("N e & a", String.join(" ", mine.row(4, Feel.SIMPLE).words())),
                // "ta" is a third of it already: the next filler is said
                () -> assertEquals("N ah da ki ah da ta ah da", String.join(" ", mine.row(9, Feel.SIMPLE).words())));
        Files.write(file, "1 = \u00e9".getBytes(StandardCharsets.ISO_8859_1));
        assertTrue(assertThrows(ScoreException.class, () -> CountingSystem.load(file)).getMessage().contains("UTF-8"));
        String missing = folder.resolve("none.system").toString();
        assertTrue(assertThrows(ScoreException.class, () -> CountingSystem.find(missing)).getMessage().contains("cannot be read"));
        assertTrue(assertThrows(ScoreException.class, () -> CountingSystem.find("nubmers")).getMessage().contains("numbers"));
    }

    @ParameterizedTest
    @CsvSource(delimiter = '|', textBlock = """
            1 = N;4 = N e &             | line 2, column 11: the row “4” needs 4 words
            1 = N;4 = N e & a b         | line 2, column 13: one word too many
            1 = N;4 N e & a             | line 2, column 11: an = is missing
            1 = N;= N                   | line 2, column 1: nothing stands left
            1 = N;2 =                   | line 2, column 5: nothing stands right
            1 = N;2 = N (&)             | line 2, column 7: brackets
            1 = N;1 = M                 | line 2, column 1: “1” was already given in line 1
            1 = N;colour = red          | line 2, column 1: “colour” is not known
            1 = N;65 = x                | line 2, column 1: a row is for 1 to 64
            1 = N;0 = x                 | line 2, column 1: a row is for 1 to 64
            1 = N;99999999999 = x       | line 2, column 1: a row is for 1 to 64
            1 = N;3 slow = N a b        | line 2, column 3: after the number only
            1 = N;asymmetric = maybe    | line 2, column 14: “asymmetric” can be units, groups, restart
            1 = N;other = 4 3 2         | line 2, column 15: “with” and a word
            1 = N;other = with ta       | line 2, column 9: “with” stands between
            1 = N;other = x with ta     | line 2, column 9: here stands a number
            1 = N;other = phrases       | line 2, column 9: this rule reads like
            1 = N;spoken = x            | line 2, column 1: “spoken” needs
            1 = N;based on = numbers    | line 2, column 1: “based on” has to be the first
            based on = nothing          | line 1, column 12: there is no counting system “nothing”
            2 = N &                     | the row 1 is missing
            1 = abcdefghijklmnopqrstuvw | line 1, column 5: a word of more than 16
            1 = N;filler =              | line 2, column 10: nothing stands right
            1 = N;filler = N            | line 2, column 10: a filler is a word
            1 = N;filler = ah numbers   | line 2, column 13: a filler is a word
            1 = N;filler = ah ta, ah    | line 2, column 17: the filler “ah” stands here twice
            1 = N;filler = none ta      | line 2, column 10: “none” stands alone
            1 = N;filler = (ah)         | line 2, column 10: brackets
            1 = N;filler compound = ah  | line 2, column 8: after “filler” nothing can stand
            1 = N;source filler 6 = me  | line 2, column 15: after “filler” nothing can stand
            1 = N;filler = a;filler = b | line 3, column 1: “filler” was already given in line 2
            [x];1 = N                   | line 2, column 1: a counting system has no [x]
            """)
    void faultyFilesAreToldWithLineAndColumn(String text, String message) {
        ScoreException e = assertThrows(ScoreException.class,
                () -> CountingSystem.parse("my.system", text.replace(';', '\n')));
        assertTrue(e.getMessage().startsWith("my.system") && e.getMessage().contains(message), e.getMessage());
        assertFalse(e.getMessage().contains("\n"));
    }

    @ParameterizedTest
    @ValueSource(strings = {"1 = \u001b[31m", "1 = a\u0007b", "1 = a\u200bb", "\u0001 = a", "1 = N\n2 = N \u2028"})
    void nothingInvisibleBecomesAWord(String text) {
        ScoreException e = assertThrows(ScoreException.class, () -> CountingSystem.parse("my.system", text));
        assertTrue(e.getMessage().codePoints().noneMatch(Character::isISOControl), "the message itself is safe to print");
    }

    @Test
    void aFileWithoutARuleStillCoversEveryDivision() {
        CountingSystem system = CountingSystem.parse("short.system", "1 = N");
        assertEquals("N 2 3 4 5 6", String.join(" ", system.row(6, Feel.SIMPLE).words()));
        CountingSystem phrases = CountingSystem.parse("short.system", "1 = N\nother = phrases of 4");
        assertEquals("N 2 3 4 5 6", String.join(" ", phrases.row(6, Feel.SIMPLE).words()));
    }
}

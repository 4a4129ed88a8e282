package countstave.count;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import countstave.time.Divisors;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** A place of the beat that two divisions share has the same word in both, but where a published table says otherwise. */
class PlacesTest {

    /** Systems in which every division is a phrase of its own. */
    private static final Set<String> PHRASES = Set.of("solkattu", "solkattu-tha");
    private static final int LARGEST = 16;

    /**
     * Places that two divisions share and call differently, for each pair the finer division, the coarser one and the
     * place, {@code 6/2 at 1/2}.
     */
    private static Set<String> renamed(CountingSystem system, Feel feel) {
        Set<String> found = new TreeSet<>();
        for (int fine = 2; fine <= LARGEST; fine++) {
            for (int coarse = 2; coarse < fine; coarse++) {
                for (int k = 1; k < coarse; k++) {
                    if (k * fine % coarse == 0
                            && !system.row(fine, feel).word(k * fine / coarse).equals(system.row(coarse, feel).word(k))) {
                        found.add(fine + "/" + coarse + " at " + reduced(k, coarse));
                    }
                }
            }
        }
        return found;
    }

    private static String reduced(int k, int parts) {
        int divisor = (int) Divisors.gcd(k, parts);
        return k / divisor + "/" + parts / divisor;
    }

    /**
     * What differs, and no more: {@code 6 12 at 1/2} says that beats of 6 and 12 call the half otherwise than all other
     * divisions do.
     */
    @ParameterizedTest(name = "{0} {1}: {3}")
    @CsvSource(delimiter = '|', textBlock = """
            numbers | SIMPLE | 6 12 at 1/3 2/3 | onlinedrumlessons.com, counting guide: 1 trip let & trip let
            numbers | COMPOUND | 6 12 at 1/2 | dailymusicwritingtips.com 2019: 1 ah trip ah let ah
            numbers-restart | SIMPLE | 6 12 at 1/3 2/3 | as numbers
            numbers-restart | COMPOUND | 6 12 at 1/2 | as numbers
            numbers-places | SIMPLE | | one word a place
            numbers-places | COMPOUND | | one word a place
            numbers-and-a | SIMPLE | 6 12 at 1/2; 12 at 1/4 3/4 | a drum teacher page (2022): n & a with a filler (la/ta/da)
            numbers-and-a | COMPOUND | 6 12 at 1/2; 12 at 1/4 3/4 | a drum teacher page (2022): n & a with a filler (la/ta/da)
            numbers-groups | SIMPLE | 6 12 at 1/2; 12 at 1/4 3/4 | as numbers-and-a
            numbers-groups | COMPOUND | 6 12 at 1/2; 12 at 1/4 3/4 | as numbers-and-a
            eastman | SIMPLE | 6 12 at 1/2 | handout after McHose & Tibbs (1945): te in beats of 2 and 4, ta in 6
            eastman | COMPOUND | 6 12 at 1/2 | handout after McHose & Tibbs (1945)
            eastman-ti | SIMPLE | 6 12 at 1/2 | M. Feezell, LearnMusicTheory.net 1.25 (2010)
            eastman-ti | COMPOUND | 6 12 at 1/2 | M. Feezell, LearnMusicTheory.net 1.25 (2010)
            froseth | SIMPLE | 6 12 at 1/2 | mramusicplace.net 2014
            froseth | COMPOUND | 6 12 at 1/2 | mramusicplace.net 2014
            gordon | SIMPLE | 6 12 at 1/2 | tuneful.squarespace.com/meter: ta is always the next level
            gordon | COMPOUND | 6 12 at 1/2 | tuneful.squarespace.com/meter: ta is always the next level
            french | SIMPLE | 6 12 at 1/2; 12 at 1/4 3/4 | the names of six parts, from memory
            french | COMPOUND | 6 12 at 1/2; 12 at 1/4 3/4 | the names of six parts, from memory
            takadimi | SIMPLE | | Hoffman, Pelto & White (1996): the syllable belongs to the place
            takadimi | COMPOUND | | Hoffman, Pelto & White (1996): the syllable belongs to the place
            """)
    void aPlaceHasOneWord(String name, Feel feel, String exceptions, String source) throws IOException {
        Set<String> expected = new TreeSet<>();
        for (String exception : exceptions == null ? new String[0] : exceptions.split("; ")) {
            List<String> divisions = List.of(exception.substring(0, exception.indexOf(" at ")).split(" "));
            for (String place : exception.substring(exception.indexOf(" at ") + 4).split(" ")) {
                expected.addAll(pairs(divisions, place));
            }
        }
        assertEquals(expected, renamed(CountingSystem.named(name), feel), source);
        // the page tells it: a line of the table for each system with exceptions, a sentence for the others
        String page = Files.readString(Path.of("docs/systems.md"));
        String told = page.substring(page.indexOf("**Published tables win.**"), page.indexOf("## A system of your own"));
        assertTrue(told.contains("`" + name + "`"), name);
    }

    /** All pairs of divisions that have this place and of which one is among {@code divisions}. */
    private static Set<String> pairs(List<String> divisions, String place) {
        Set<String> pairs = new TreeSet<>();
        int parts = Integer.parseInt(place.substring(place.indexOf('/') + 1));
        for (int fine = parts; fine <= LARGEST; fine += parts) {
            for (int coarse = parts; coarse < fine; coarse += parts) {
                if (divisions.contains(Integer.toString(fine)) != divisions.contains(Integer.toString(coarse))) {
                    pairs.add(fine + "/" + coarse + " at " + place);
                }
            }
        }
        return pairs;
    }

    /** Every system is looked at above, or has no places to keep and says so. */
    @Test
    void everySystemIsLookedAt() throws Exception {
        String table = PlacesTest.class.getDeclaredMethod("aPlaceHasOneWord", String.class, Feel.class, String.class, String.class)
                .getAnnotation(CsvSource.class).textBlock();
        for (String name : CountingSystem.names()) {
            boolean looked = table.contains(name + " | SIMPLE |") && table.contains(name + " | COMPOUND |");
            assertTrue(looked != PHRASES.contains(name), name);
            assertEquals(PHRASES.contains(name), CountingSystem.named(name).fillers().isEmpty(), name);
        }
        assertTrue(CountingSystem.named("solkattu").about().contains("nothing is filled in"));
    }

    /** A finer division changes no word of the one it doubles: whoever goes from 16ths to 32nds says what was said, and more. */
    @ParameterizedTest
    @CsvSource({"4, 8", "8, 16", "5, 10", "7, 14", "6, 12", "3, 9", "3, 15"})
    void doublingsSayTheCoarserWords(int coarse, int fine) {
        for (String name : CountingSystem.names()) {
            if (PHRASES.contains(name)) {
                continue;
            }
            for (Feel feel : List.of(Feel.SIMPLE, Feel.COMPOUND)) {
                Row row = CountingSystem.named(name).row(fine, feel);
                for (int k = 0; k < coarse; k++) {
                    assertEquals(CountingSystem.named(name).row(coarse, feel).word(k), row.word(k * fine / coarse),
                            name + " " + feel + " " + row.words());
                }
            }
        }
    }
}

package countstave.count;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.stream.Collectors;
import java.util.stream.IntStream;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Every row of the published tables against the data files. Each line names who prints it. */
class PublishedTablesTest {

    @ParameterizedTest(name = "{0}: {1} {2} ({4})")
    @CsvSource(delimiter = '|', textBlock = """
            # numbers, North American
            numbers | 1 | simple | N | common practice, in several pages on counting
            numbers | 2 | simple | N & | common practice, in several pages on counting
            numbers | 3 | simple | N trip let | common practice; reported by a drum teacher's page (2022)
            numbers | 4 | simple | N e & a | M. Feezell, LearnMusicTheory.net 1.25 (2010)
            numbers | 5 | simple | N 2 3 4 5 | no agreed form; 1-2-3-4-5 among those of a drum teacher's page (2020)
            numbers | 6 | simple | N trip let & trip let | onlinedrumlessons.com, counting guide
            numbers | 6 | compound | N ah trip ah let ah | writing-tips site, lesson on compound meters (2019)
            numbers | 3 | compound | N trip let | the same, 12/8: 1 trip let 2 trip let
            numbers | 7 | simple | N 2 3 4 5 6 7 | common practice, no source
            numbers-and-a | 3 | simple | N & a | pages on counting; a drum teacher's page (2022)
            numbers-and-a | 3 | compound | N & a | pages on counting, 6/8: 1 & a 2 & a
            numbers-and-a | 6 | compound | N ta & ta a ta | 'a drum teacher page (2022): n & a with a filler (la/ta/da)'
            numbers-and-a | 4 | simple | N e & a | M. Feezell (2010)
            numbers-places | 3 | simple | N trip let | as numbers
            numbers-places | 4 | simple | N e & a | as numbers
            numbers-restart | 6 | simple | N trip let & trip let | as numbers
            numbers-restart | 6 | compound | N ah trip ah let ah | as numbers
            numbers-groups | 3 | compound | N & a | as numbers-and-a
            # Eastman, the handout after McHose & Tibbs, Sight-Singing Manual (2nd ed., 1945)
            eastman | 1 | simple | N | handout after McHose & Tibbs (1945)
            eastman | 2 | simple | N te | handout after McHose & Tibbs (1945)
            eastman | 3 | simple | N la li | handout after McHose & Tibbs (1945)
            eastman | 4 | simple | N ta te ta | handout after McHose & Tibbs (1945)
            eastman | 5 | simple | N ta ta ta ta | handout after McHose & Tibbs (1945)
            eastman | 6 | simple | N ta la ta li ta | handout after McHose & Tibbs (1945)
            eastman | 6 | compound | N ta la ta li ta | handout after McHose & Tibbs (1945); Feezell 1.25
            eastman | 7 | simple | N ta ta ta ta ta ta | handout: ta everywhere else
            eastman | 8 | simple | N ta ta ta te ta ta ta | handout after McHose & Tibbs (1945)
            eastman | 9 | simple | N ta ta la ta ta li ta ta | handout: thirds la and li, ta everywhere else
            eastman | 12 | simple | N ta ta ta la ta ta ta li ta ta ta | handout: ta everywhere else
            eastman-ti | 2 | simple | N te | University of Arizona / UT El Paso teaching page
            eastman-ti | 3 | simple | N la li | University of Arizona / UT El Paso teaching page
            eastman-ti | 4 | simple | N ti te ta | University of Arizona / UT El Paso teaching page; Feezell 1.25
            eastman-ti | 6 | simple | N ta la ta li ta | Feezell 1.25
            eastman-ti | 12 | simple | N ta ta ti la ta ta ta li ta ta ta | 'Feezell 1.25: ti at 1/4, la and li at the thirds, everything else ta'
            # Froseth, a teacher's comparison page (2014)
            froseth | 2 | simple | N ne | mramusicplace.net 2014
            froseth | 4 | simple | N ta ne ta | mramusicplace.net 2014
            froseth | 3 | simple | N na ni | mramusicplace.net 2014
            froseth | 6 | simple | N ta na ta ni ta | mramusicplace.net 2014
            # takadimi, Hoffman, Pelto & White (1996)
            takadimi | 1 | simple | ta | Hoffman, Pelto & White (1996)
            takadimi | 2 | simple | ta di | Hoffman, Pelto & White (1996)
            takadimi | 3 | simple | ta ki da | Hoffman, Pelto & White (1996)
            takadimi | 3 | compound | ta ki da | Hoffman, Pelto & White (1996): compound beats use the same row
            takadimi | 4 | simple | ta ka di mi | Hoffman, Pelto & White (1996)
            takadimi | 5 | simple | ta ka di mi ti | Gordon's essay on the system
            takadimi | 6 | simple | ta va ki di da ma | Hoffman, Pelto & White (1996)
            takadimi | 6 | compound | ta va ki di da ma | Hoffman, Pelto & White (1996)
            takadimi | 7 | simple | ta va ki di da ma ti | from memory; an essay prints the last two as mi ti
            # Gordon, published comparison tables
            gordon | 2 | simple | du de | published comparison tables
            gordon | 3 | simple | du da di | published comparison tables
            gordon | 4 | simple | du ta de ta | published comparison tables
            gordon | 6 | simple | du ta da ta di ta | tuneful.squarespace.com/meter: ta is always the next level
            # French time names, teaching pages on rhythm syllables
            french | 1 | simple | ta | teaching pages on rhythm syllables
            french | 2 | simple | ta té | teaching pages on rhythm syllables
            french | 3 | simple | ta té ti | teaching pages on rhythm syllables
            french | 4 | simple | ta fa té fé | teaching pages on rhythm syllables
            # solkattu
            solkattu | 2 | simple | ta ka | page on South Indian vocal percussion
            solkattu | 3 | simple | ta ki ta | page on South Indian vocal percussion
            solkattu | 4 | simple | ta ka di mi | page on South Indian vocal percussion
            solkattu | 5 | simple | ta di gi na tom | page on South Indian vocal percussion
            solkattu | 6 | simple | ta ka di mi ta ka | page on South Indian vocal percussion
            solkattu | 7 | simple | ta ka di mi ta ki ta | page on South Indian vocal percussion
            solkattu | 8 | simple | ta ka di mi ta ka jo nu | page on South Indian vocal percussion
            solkattu | 9 | simple | ta ka di mi ta di gi na tom | page on South Indian vocal percussion
            solkattu | 10 | simple | ta ka ta ki ta ta di gi na tom | page on South Indian vocal percussion
            solkattu-tha | 2 | simple | tha ka | korvai.org, notation table 1
            solkattu-tha | 3 | simple | tha ki ta | korvai.org, notation table 1
            solkattu-tha | 4 | simple | tha ka thi na | korvai.org, notation table 1
            solkattu-tha | 5 | simple | tha ka tha ki ta | korvai.org, notation table 1
            solkattu-tha | 6 | simple | tha ka tha ka thi na | korvai.org, notation table 1
            solkattu-tha | 7 | simple | tha ka thi mi tha ki ta | korvai.org, notation table 1
            solkattu-tha | 8 | simple | tha ka tha ri ki ta tha ka | korvai.org, notation table 1
            solkattu-tha | 9 | simple | tha ka thi mi tha ka tha ki ta | korvai.org, notation table 1
            """)
    void rowIsAsPublished(String system, int parts, String feel, String words, String source) {
        Row row = CountingSystem.named(system).row(parts, Feel.valueOf(feel.toUpperCase(java.util.Locale.ROOT)));
        assertEquals(words, IntStream.range(0, parts).mapToObj(row::word).collect(Collectors.joining(" ")), source);
    }

    @ParameterizedTest(name = "{0}: group of {1}, each unit in {2}")
    @CsvSource(delimiter = '|', textBlock = """
            takadimi | 2 | 1 | ta di | an essay's example, 5/8 = ta di ta ki da
            takadimi | 3 | 1 | ta ki da | an essay's example, 5/8 = ta di ta ki da
            eastman | 2 | 1 | N te | handout: in asymmetrical meter each eighth off the beat is te
            eastman | 3 | 1 | N te te | handout: in asymmetrical meter each eighth off the beat is te
            eastman | 3 | 2 | N ta te ta te ta | the same, and ta everywhere else
            gordon | 2 | 1 | du be | tuneful.squarespace.com/meter
            gordon | 3 | 1 | du ba bi | tuneful.squarespace.com/meter
            gordon | 2 | 2 | du ta be ta | the same: ta is always the next level
            numbers-groups | 3 | 1 | N & a | common practice, no source: 1 & 2 & 3 & a
            """)
    void groupIsAsPublished(String system, int units, int parts, String words, String source) {
        assertEquals(words, String.join(" ", CountingSystem.named(system).groupRow(units, parts).words()), source);
    }

    @ParameterizedTest
    @CsvSource({"en, &, e & a", "de, und, e und de", "es, y, e y a", "ru, и, е и а"})
    void wordsForAnd(String code, String and, String fourths) {
        // en: common practice; de: pianotube.de and bassic.de thread 463; es "y": hobbygaiety 10582177 (fourths common
        // practice); ru "и": znanio.ru 2724975 (fourths from memory)
        CountingSystem system = CountingSystem.named("numbers").withAnd(code);
        assertEquals("N " + and, String.join(" ", system.row(2, Feel.SIMPLE).words()));
        assertEquals("N " + fourths, String.join(" ", system.row(4, Feel.SIMPLE).words()));
    }
}

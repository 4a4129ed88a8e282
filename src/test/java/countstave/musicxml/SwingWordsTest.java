package countstave.musicxml;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNull;
import static org.junit.jupiter.api.Assertions.assertTrue;

import countstave.score.Swing;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Words that say that it is swung, or straight; common practice, no source. */
class SwingWordsTest {

    @ParameterizedTest
    @ValueSource(strings = {
        "Swing", "swing!", "(Swing)", "Medium swing", "Med. Up Swing", "Slow, swung", "Swing feel", "Swing 8ths", "Swung eighths",
        "Swingin'", "Straight-ahead swing", "Shuffle", "Slow shuffle feel", "Texas Shuffle, not too fast", "Swing (quarter = 116)",
        "Swing 16 bars", "Shuffle, 8 bars", "Swing 8ths, straight 16ths", "Half-time swing",
        "swingend", "Ternär", "leicht swingend", "Achtel ternär", "swingué", "Croches swinguées", "ternaire", "con swing",
        "Corcheas swingueadas", "terzinato", "suingado", "kolmimuunteinen", "Свинг", "шаффл", "スウィング", "ミディアム・スイング",
        "シャッフル",
    })
    void eighthsAreSwung(String text) {
        assertEquals(new Swing(Swing.EIGHTH, 2, 1), SwingWords.read(text));
    }

    @ParameterizedTest
    @ValueSource(strings = {
        "Half-time shuffle", "Halftime Shuffle", "half time shuffle feel", "Swing 16ths", "Swung sixteenths", "16th-note shuffle",
        "Funk, swung 16ths", "Shuffle (16ths)", "Straight 8ths, swung 16ths", "swing 1/16", "Swing 16 feel", "Swing 16",
        "Sechzehntel geswingt", "Doubles croches swinguées", "Semicorcheas swingueadas", "New jack swing",
        "ハーフタイム・シャッフル", "16ビート・シャッフル",
    })
    void sixteenthsAreSwung(String text) {
        assertEquals(new Swing(Swing.SIXTEENTH, 2, 1), SwingWords.read(text));
    }

    @ParameterizedTest
    @ValueSource(strings = {
        "Straight", "straight 8ths", "Straight eighths", "Straight 8", "Even 8ths", "even eighths", "Straight feel",
        "back to straight", "Latin (straight 8ths)", "Straight rock", "Straight 16ths", "No swing", "not swung", "don't swing",
        "Straight 8ths (no swing)", "without swing", "Swing off", "end swing", "end of swing", "no more swing",
        "gerade", "Gerade Achtel", "binär", "ohne Swing", "nicht geswingt", "kein Swing", "binaire", "croches égales",
        "Croches droites", "sans swing", "pas de swing", "binario", "corcheas rectas", "sin swing", "ottavi dritti",
        "senza swing", "colcheias retas", "sem swing", "rechte achtsten", "geen swing", "raka åttondelar", "utan swing",
        "lige ottendedele", "uden swing", "rette åttendedeler", "uten swing", "tasajakoinen", "suorat kahdeksasosat",
        "równe ósemki", "bez swingu", "rovné osminy", "ровные восьмые", "без свинга", "ストレート",
    })
    void straight(String text) {
        assertEquals(Swing.STRAIGHT, SwingWords.read(text));
    }

    @ParameterizedTest
    @ValueSource(strings = {
        "", "Allegro", "straight mute", "Straight ahead", "go straight on to letter B", "even", "even though it is late", "Even more",
        "8ths", "a tempo", "not too fast", "rit.", "straight into the coda", "Gerade noch", "egal", "pari",
        "the drummer may play this with brushes as if it were a swing tune of old",
    })
    void neither(String text) {
        assertNull(SwingWords.read(text));
    }

    /** Every word of docs/count.md's table is understood as it stands there. */
    @Test
    void theListOfTheDocs() throws IOException {
        List<String> rows = Files.readAllLines(Path.of("docs/count.md")).stream()
                .filter(l -> l.startsWith("| swung, ") || l.startsWith("| straight, ") || l.startsWith("| 16ths, ")).toList();
        assertTrue(rows.size() >= 3, () -> "rows: " + rows.size());
        for (String row : rows) {
            Swing expected = row.startsWith("| straight") ? Swing.STRAIGHT
                    : Swing.triplet(row.startsWith("| 16ths") ? Swing.SIXTEENTH : Swing.EIGHTH);
            for (String words : row.split("\\|")[2].split(",")) {
                assertEquals(expected, SwingWords.read(words.strip()), words);
            }
        }
    }
}

package countstave.spelling.respell;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNull;
import static org.junit.jupiter.api.Assertions.assertTrue;

import countstave.plain.Phrases;
import countstave.score.Meter;
import countstave.time.Duration;
import countstave.time.Offset;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class RespellerTest {

    /** Lengths in order, {@code r} before a rest, as sounds from {@code from}. */
    private static List<Sound> sounds(String from, String lengths) {
        List<Sound> sounds = new ArrayList<>();
        Offset at = Offset.parse(from);
        for (String word : lengths.trim().split("\\s+")) {
            boolean rest = word.startsWith("r");
            Offset end = at.plus(Duration.parse(rest ? word.substring(1) : word));
            sounds.add(new Sound(at, end, rest, false));
            at = end;
        }
        return sounds;
    }

    private static Meter meter(String text) {
        String[] terms = text.split("/");
        List<Integer> numbers = List.of(terms[0].split("\\+")).stream().map(Integer::valueOf).toList();
        return new Meter(List.of(new Meter.Component(numbers, Integer.parseInt(terms[1]))), Meter.Symbol.NORMAL);
    }

    /**
     * Ties at the middle and at beats, the accepted exceptions, and the customary tuplets. Sources: "only whole and
     * non-syncopated half and dotted half may cross the middle", "show every beat for 16ths" (two pages of a college of
     * music on the imaginary barline); tuplet ratios: textbooks on tuplets (m = largest power of two below n in simple
     * time; duplets as dotted eighths are equivalent). The syncopation exceptions: common practice, no source.
     */
    @ParameterizedTest
    @CsvSource(delimiter = ';', value = {
        "4/4; 0; 1/1; whole",
        "4/4; 0; 1/8 1/2 3/8; eighth, dotted quarter tied to eighth, dotted quarter",
        "4/4; 0; 1/4 1/2 1/4; quarter, half, quarter",
        "4/4; 0; 1/4 3/4; quarter, dotted half",
        "4/4; 0; 1/8 1/4 1/8 1/2; eighth, quarter, eighth, half",
        "4/4; 0; 1/8 1/4 1/4 1/4 1/8; eighth, quarter, eighth tied to eighth, quarter, eighth",
        "4/4; 0; 5/8 3/8; half tied to eighth, dotted quarter",
        "4/4; 0; 3/16 5/16 1/2; dotted eighth, 16th tied to quarter, half",
        "4/4; 0; 1/16 1/4 3/16 1/2; 16th, dotted eighth tied to 16th, dotted eighth, half",
        "4/4; 0; 1/8 r1/4 1/8 1/2; eighth, eighth rest, eighth rest, eighth, half",
        "4/4; 0; 1/4 r1/2 1/4; quarter, quarter rest, quarter rest, quarter",
        "4/4; 0; r1/2 1/2; half rest, half",
        "3/4; 0; 1/4 1/2; quarter, half",
        "3/4; 0; 1/8 1/4 1/4 1/8; eighth, quarter, quarter, eighth",
        "3/4; 0; 1/8 1/2 1/8; eighth, eighth tied to dotted quarter, eighth",
        "6/8; 0; 1/4 1/4 1/4; quarter, eighth tied to eighth, quarter",
        "6/8; 0; 3/16 3/16 3/8; dotted eighth, dotted eighth, dotted quarter",
        "6/8; 0; 1/2 1/4; dotted quarter tied to eighth, quarter",
        "12/8; 0; 3/8 3/4 3/8; dotted quarter, dotted half, dotted quarter",
        "2+2+3/8; 0; 3/8 1/2; dotted quarter, eighth tied to dotted quarter",
        "4/4; 0; 1/12 1/12 1/12 3/4; 3:2 (eighth, eighth, eighth), dotted half",
        "4/4; 0; 1/6 1/6 1/6 1/2; 3:2 (quarter, quarter, quarter), half",
        "4/4; 0; 1/3 1/3 1/3; 3:2 (half, half, half)",
        "4/4; 0; 1/20 1/20 1/20 1/20 1/20 3/4; 5:4 (16th, 16th, 16th, 16th, 16th), dotted half",
        "4/4; 0; 1/7 1/7 1/7 1/7 1/7 1/7 1/7; 7:4 (quarter, quarter, quarter, quarter, quarter, quarter, quarter)",
        "6/8; 0; 3/40 3/40 3/40 3/40 3/40 3/8; 5:3 (eighth, eighth, eighth, eighth, eighth), dotted quarter",
        "4/4; 0; 1/24 1/24 1/24 1/8 3/4; 3:2 (16th, 16th, 16th), eighth, dotted half",
        "4/4; 0; 1/6 1/12 3/4; 3:2 (quarter, eighth), dotted half",
        "4/4; 0; 1/8 1/24 1/12 3/4; eighth, 3:2 (16th, eighth), dotted half",
        "4/4; 0; 1/6 1/30 1/30 1/30 1/30 1/30 1/6 1/2;"
            + " 3:2 (quarter, 5:4 (16th, 16th, 16th, 16th, 16th), quarter), half",
    })
    void spells(String meter, String from, String lengths, String words) {
        Optional<List<Item>> items = Respeller.spell(MeterFrame.of(meter(meter)), sounds(from, lengths));
        assertEquals(words, items.map(i -> ValueWords.of(i, Phrases.ENGLISH)).orElse("nothing"));
    }

    @Test
    void refusesWhatNoTupletReaches() {
        List<Sound> seventeenths = sounds("0", "1/17 16/17");
        assertTrue(Respeller.spell(MeterFrame.of(Meter.of(4, 4)), seventeenths).isEmpty());
    }

    /** Whatever the rhythm: lengths and attacks stay, every symbol lasts what it says, and none hides a beat. */
    @Test
    void keepsEveryAttackOfRandomBars() {
        Random random = new Random(20261125);
        int tuplets = 0;
        for (int i = 0; i < 2000; i++) {
            RandomRhythm rhythm = RandomRhythm.of(random);
            List<Item> items = Respeller.spell(rhythm.frame(), rhythm.sounds()).orElseThrow();
            assertEquals(rhythm.sounds(), joined(items), () -> rhythm + " as " + ValueWords.of(items, Phrases.ENGLISH));
            check(items, Duration.WHOLE, new Clarity(rhythm.frame()));
            tuplets += (int) items.stream().filter(Group.class::isInstance).count();
        }
        assertTrue(tuplets > 700, "only " + tuplets + " tuplets were tried");
    }

    /** Sounds that the symbols stand for: tied notes joined, neighbouring rests joined. */
    static List<Sound> joined(List<Item> items) {
        List<Sound> sounds = new ArrayList<>();
        Offset start = null;
        boolean tied = false;
        for (Symbol symbol : flat(items)) {
            Sound last = sounds.isEmpty() ? null : sounds.get(sounds.size() - 1);
            boolean goesOn = tied || last != null && last.rest() && symbol.rest();
            start = goesOn ? start : symbol.start();
            if (goesOn) {
                sounds.remove(sounds.size() - 1);
            }
            sounds.add(new Sound(start, symbol.end(), symbol.rest(), false));
            tied = symbol.tied();
        }
        return sounds;
    }

    static List<Symbol> flat(List<Item> items) {
        List<Symbol> symbols = new ArrayList<>();
        for (Item item : items) {
            if (item instanceof Group group) {
                symbols.addAll(flat(group.items()));
            } else {
                symbols.add((Symbol) item);
            }
        }
        return symbols;
    }

    private static void check(List<Item> items, Duration scale, Clarity clarity) {
        for (Item item : items) {
            if (item instanceof Group group) {
                Duration inner = scale.times(group.ratio().normal(), group.ratio().actual());
                Duration filled = group.unit().length().times(group.ratio().actual());
                assertEquals(group.length(), filled.times(inner.numerator(), inner.denominator()));
                check(group.items(), inner, null);
            } else {
                Symbol symbol = (Symbol) item;
                Duration written = symbol.value().dotted(symbol.dots());
                assertEquals(symbol.length(), written.times(scale.numerator(), scale.denominator()));
                if (clarity != null && symbol.rest()) {
                    assertNull(clarity.rest(symbol.start(), symbol.end()));
                } else if (clarity != null) {
                    assertNull(clarity.note(symbol.start(), symbol.end()));
                }
            }
        }
    }
}

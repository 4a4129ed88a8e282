package countstave.spelling;

import static org.junit.jupiter.api.Assertions.assertTrue;

import countstave.score.ScoreException;
import countstave.score.Score;
import countstave.spelling.rules.AllRules;
import countstave.testing.Snippets;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Random;
import java.util.regex.MatchResult;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Test;

/** Whatever is wrong with a score, it is either refused when it is read or every rule gets through it. */
class SpoiledScoresTest {

    private static final List<Path> SCORES = List.of(Path.of("scores/mistakes.musicxml"), Path.of("scores/song.musicxml"),
            Path.of("src/test/resources/musicxml-test-suite/23d-Tuplets-Nested.xml"),
            Path.of("src/test/resources/musicxml-test-suite/24a-GraceNotes.xml"),
            Path.of("src/test/resources/musicxml-test-suite/45b-RepeatWithAlternatives.xml"));
    private static final Pattern NUMBER = Pattern.compile("<(duration|actual-notes|normal-notes|divisions|beats|beat-type"
            + "|voice|tuplet-number)>([^<]*)<");
    private static final Pattern ELEMENT = Pattern.compile("<(type|duration|tie|tuplet|beam|chord|rest|dot|backup"
            + "|time-modification|voice)\\b[^<>]*(/>|>(?s:.*?)</\\1>)");
    private static final String[] NUMBERS = {"-1", "0", "1", "2", "3", "5", "7", "12", "48", "0.5", "1000003"};
    private static final int TRIES = 200;

    @Test
    void noRuleStumbles() throws IOException {
        Random random = new Random(7);
        int read = 0;
        for (int i = 0; i < TRIES; i++) {
            String text = Files.readString(SCORES.get(i % SCORES.size()));
            for (int times = 1 + random.nextInt(4); times > 0; times--) {
                text = random.nextBoolean() ? number(text, random) : element(text, random);
            }
            Score score;
            try {
                score = Snippets.read(text);
            } catch (ScoreException e) {
                continue;
            }
            read++;
            SpellingCheck.check(score, AllRules.list(), RuleSettings.DEFAULT);
        }
        assertTrue(read > TRIES / 2, read + " could be read");
    }

    private static String number(String text, Random random) {
        MatchResult one = any(NUMBER, text, random);
        return text.substring(0, one.start(2)) + NUMBERS[random.nextInt(NUMBERS.length)] + text.substring(one.end(2));
    }

    /** Takes an element out, or writes it twice. */
    private static String element(String text, Random random) {
        MatchResult one = any(ELEMENT, text, random);
        return text.substring(0, one.start()) + (random.nextInt(3) == 0 ? one.group() + one.group() : "")
                + text.substring(one.end());
    }

    /** The next one after any place. */
    private static MatchResult any(Pattern pattern, String text, Random random) {
        Matcher matcher = pattern.matcher(text);
        assertTrue(matcher.find(random.nextInt(text.length())) || matcher.find(0));
        return matcher.toMatchResult();
    }
}

package countstave.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import countstave.testing.Snippets;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** {@code --swing} means one thing wherever something is counted. */
class SwingOptionTest {

    @TempDir
    Path folder;
    private String swung;
    private String plain;

    @BeforeEach
    void scores() throws IOException {
        String words = "<direction><direction-type><words>Swing</words></direction-type></direction>";
        swung = Files.writeString(folder.resolve("swung.musicxml"),
                Snippets.in("4/4").tempo(96).before(words).bar("8 8 8. 16 4 r8 8").xml()).toString();
        plain = Files.writeString(folder.resolve("plain.musicxml"),
                Snippets.in("4/4").tempo(96).bar("8 8 8. 16 4 r8 8").xml()).toString();
    }

    private static String attacks(String... args) {
        Run run = Run.of(args);
        assertEquals(0, run.code(), run.err());
        int start = run.out().indexOf("\"attacks\":[");
        return run.out().substring(start + 11, run.out().indexOf(']', start)).replace("\"", "");
    }

    private static final String LONG_SHORT = "0/1,1/6,1/4,5/12,1/2,11/12";
    private static final String WRITTEN = "0/1,1/8,1/4,7/16,1/2,7/8";

    @Test
    void theScoreOrTheOption() {
        assertEquals(LONG_SHORT, attacks("count", swung, "--format", "json"));
        assertEquals(LONG_SHORT, attacks("count", swung, "--format", "json", "--swing", "score"));
        assertEquals(WRITTEN, attacks("count", swung, "--format", "json", "--swing", "straight"));
        assertEquals(WRITTEN, attacks("count", plain, "--format", "json"));
        assertEquals(LONG_SHORT, attacks("count", plain, "--format", "json", "--swing", "2:1"));
        assertEquals("0/1,3/20,1/4,2/5,1/2,9/10", attacks("count", swung, "--format", "json", "--swing", "60:40"));
    }

    /** The guide tracks have a click exactly where the score swings: two thirds into the beat. */
    @Test
    void guideTracksFollow() throws IOException {
        Run asScore = Run.of("practice", swung, "-o", folder.resolve("a").toString(), "--sound", "midi");
        assertEquals(0, asScore.code(), asScore.err());
        Run asked = Run.of("practice", plain, "-o", folder.resolve("b").toString(), "--sound", "midi", "--swing", "2:1");
        assertEquals(0, asked.code(), asked.err());
        Run straight = Run.of("practice", swung, "-o", folder.resolve("c").toString(), "--sound", "midi", "--swing",
                "straight");
        assertEquals(0, straight.code(), straight.err());
        List<String> midi = Run.tree(folder.resolve("a")).keySet().stream().filter(f -> f.endsWith(".mid")).toList();
        assertFalse(midi.isEmpty());
        for (String track : midi) {
            byte[] expected = Files.readAllBytes(folder.resolve("a").resolve(track));
            assertTrue(java.util.Arrays.equals(expected, Files.readAllBytes(folder.resolve("b").resolve(track))), track);
            assertFalse(java.util.Arrays.equals(expected, Files.readAllBytes(folder.resolve("c").resolve(track))), track);
        }
    }

    @ParameterizedTest
    @CsvSource(delimiter = ';', value = {
        "5:1;between 1:1 and 4:1", "1:2;between 1:1 and 4:1", "0:0;between 1:1 and 4:1", "x;not a swing ratio",
        "2;not a swing ratio", "2:1:1;not a swing ratio", "2:1@;not a note value", "2:1@quarter;eighths or of 16ths",
        "99999999999:1;not a swing ratio", "-2:1;between 1:1 and 4:1",
    })
    void wrongRatios(String value, String expected) throws IOException {
        for (String command : List.of("count", "annotate", "practice")) {
            Run run = Run.of(command, plain, "--swing=" + value);
            assertEquals(2, run.code(), run.out());
            assertEquals(1, run.err().lines().count(), run.err());
            assertTrue(run.err().contains(expected), run.err());
        }
        assertEquals(2, Run.tree(folder).size());
    }

    @ParameterizedTest
    @ValueSource(strings = {"score", "straight", "1:1", "4:1", "7:4@16th", "2:1@8th", "2:1@1/16"})
    void rightOnes(String value) {
        assertEquals(0, Run.of("count", plain, "--swing", value).code());
    }
}

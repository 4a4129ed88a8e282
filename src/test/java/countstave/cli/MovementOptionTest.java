package countstave.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import countstave.testing.Snippets;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.stream.Collectors;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** {@code --bars} and {@code --movement} where the numbers of the bars start anew. */
class MovementOptionTest {

    @TempDir
    Path folder;
    private Path file;

    /** Movements of 4, 2 and 3 bars; the first bars of each, and only they, are quarters. */
    @BeforeEach
    void score() throws IOException {
        Snippets.Builder score = Snippets.in("4/4").tempo(90);
        int[] lengths = {4, 2, 3};
        for (int length : lengths) {
            for (int bar = 1; bar <= length; bar++) {
                score.bar(bar == 1 ? "4 4 4 4" : "8 8 8 8 8 8 8 8");
            }
        }
        String xml = score.xml();
        int n = 0;
        for (int length : lengths) {
            for (int bar = 1; bar <= length; bar++) {
                xml = xml.replaceFirst("<measure number=\"" + ++n + "\"", "<measure number=\"_" + bar + "\"");
            }
        }
        file = Files.writeString(folder.resolve("three.musicxml"), xml.replace("number=\"_", "number=\""));
    }

    private Run run(String command, String... options) {
        List<String> words = new java.util.ArrayList<>(List.of(command, file.toString()));
        words.addAll(List.of(options));
        return Run.of(words.toArray(String[]::new));
    }

    private static String bars(Run run) {
        assertEquals(0, run.code(), run.err());
        return run.out().lines().filter(l -> l.startsWith("bar ")).map(l -> l.split(" +")[1]).collect(Collectors.joining(" "));
    }

    @Test
    void everyBarIsCalledByItsMovement() {
        assertEquals("1:1 1:2 1:3 1:4 2:1 2:2 3:1 3:2 3:3", bars(run("count")));
        assertTrue(run("count", "--format", "json").out().contains("{\"index\":4,\"number\":\"1\",\"movement\":2,"));
    }

    @Test
    void theFirstMovementThatHasTheBarsIsTaken() {
        Run run = run("count", "--bars", "2");
        assertEquals("1:2", bars(run));
        assertEquals("countstave: " + file + ": its bar numbers start anew: bar 2 is in movements 1, 2, 3, and that of"
                + " movement 1 is taken; 2:2 or --movement 2 takes another, --movement all each of them\n", run.err().replace("\r", ""));
        Run third = run("count", "--bars", "2-3");
        assertEquals("1:2 1:3", bars(third));
        assertTrue(third.err().contains("bars 2-3 are in movements 1, 3, and that of movement 1 is taken; 3:2-3 or --movement 3"),
                third.err());
        Run only = run("count", "--bars", "4");
        assertEquals("1:4", bars(only));
        assertEquals("", only.err());
    }

    @Test
    void otherMovementsAreAskedFor() {
        for (Run run : List.of(run("count", "--bars", "3:2-3"), run("count", "--bars", "2-3", "--movement", "3"))) {
            assertEquals("3:2 3:3", bars(run));
            assertEquals("", run.err());
        }
        assertEquals("2:1 2:2", bars(run("count", "--movement", "2")));
        assertEquals("1:2 2:2 3:2", bars(run("count", "--bars", "2", "--movement", "all")));
        assertEquals("1:2 1:3 3:2 3:3", bars(run("count", "--bars", "2-3", "--movement", "all")));
        assertEquals("1:4 2:1 3:3", bars(run("count", "--bars", "1:4,2:1,3:3")));
    }

    @Test
    void whatIsNotThereIsSaidWithWhatIs() {
        refused("no movement has bar 9; its movements are 1 (1-4), 2 (1-2), 3 (1-3)", "--bars", "9");
        refused("no movement has bars 3-9; its movements are 1 (1-4)", "--bars", "3-9");
        refused("there is no bar 3 in movement 2; its bars go from 1 to 2", "--bars", "2:3");
        refused("there is no movement 4; it has 3", "--movement", "4");
        refused("there is no movement 4; it has 3", "--bars", "4:1");
        refused("bars 2-1 run backwards; write 1-2", "--bars", "2:2-1");
        refused("reaches from one movement into another; write a range for each", "--bars", "1:4-2:1");
        refused("'x' is not a movement; write its number, such as 2, or all", "--movement", "x");
        refused("; write printed bar numbers such as 9-16 or 5,9-16", "--bars", "abc");
    }

    private void refused(String message, String... options) {
        Run run = run("count", options);
        assertEquals(2, run.code());
        assertTrue(run.err().contains(message), run.err());
        assertEquals(1, run.err().lines().filter(l -> !l.startsWith("Try")).count(), run.err());
    }

    @Test
    void oneMovementIsCalledByNumbersAlone() throws IOException {
        file = Files.writeString(folder.resolve("one.musicxml"), Snippets.rhythm("4/4", "4 4 4 4", "8 8 8 8 2"));
        assertEquals("1 2", bars(run("count")));
        assertEquals("2", bars(run("count", "--bars", "1:2")));
        assertEquals("2", bars(run("count", "--bars", "2", "--movement", "1")));
        refused("there is no movement 2; its bar numbers never start anew, so that it is one movement", "--movement", "2");
        assertFalse(run("count", "--format", "json").out().contains("movement"));
    }

    @Test
    void everyCommandNamesTheMovement() throws IOException {
        Run practice = run("practice", "--movement", "3");
        assertEquals(0, practice.code(), practice.err());
        assertTrue(practice.out().contains("3:1"), practice.out());
        String spoiled = Files.readString(file).replace("<measure number=\"3\">", "<measure number=\"3\"><note><rest/><duration>99"
                + "</duration></note>");
        file = Files.writeString(folder.resolve("long.musicxml"), spoiled);
        Run count = run("count");
        assertTrue(count.err().contains("bar 1:3: ") && count.err().contains("bar 3:3: "), count.err());
        Run check = run("check");
        assertTrue(check.out().contains("1:3") && check.out().contains("3:3"), check.out());
    }
}

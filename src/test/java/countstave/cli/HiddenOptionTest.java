package countstave.cli;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
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

/** Notes that are not printed, and {@code --hidden}: one thing wherever something is counted. */
class HiddenOptionTest {

    private static final String TEMPO = "<direction><direction-type><metronome><beat-unit>quarter</beat-unit>"
            + "<per-minute>80</per-minute></metronome></direction-type></direction>";
    private static final String NOTE = "<note%s><pitch><step>C</step><octave>5</octave></pitch><duration>%d</duration>"
            + "<voice>%d</voice><type>%s</type></note>";

    @TempDir
    Path folder;
    private String rolled;

    /** Two bars: a rolled whole note with its strokes hidden, and the same again. */
    @BeforeEach
    void score() throws IOException {
        String roll = NOTE.formatted("", 32, 1, "whole") + "<backup><duration>32</duration></backup>"
                + NOTE.formatted(" print-object=\"no\"", 1, 2, "32nd").repeat(32);
        rolled = Files.writeString(folder.resolve("rolled.musicxml"), Snippets.score("4/4", 8, TEMPO + roll, roll)).toString();
    }

    private static final String SAID = "notes that are not printed, the first in part Drums, bar 1: ";

    @Test
    void toldOnceAndNotCounted() {
        Run run = Run.of("count", rolled);
        assertEquals(List.of("countstave: " + rolled + ": " + SAID + "64 left out, as something printed stands for their time"
                + " (--hidden count counts all)"), run.told());
        assertTrue(run.out().contains("quarters"), run.out());
        assertFalse(run.out().contains("32nds"), run.out());
        assertEquals(List.of(), Run.of("check", rolled).told());
        assertEquals(0, Run.of("check", rolled).code(), Run.of("check", rolled).out());
    }

    @Test
    void countedWhereAskedFor() {
        Run run = Run.of("count", rolled, "--hidden", "count", "--felt", "no");
        assertEquals(List.of("countstave: " + rolled + ": " + SAID + "64 counted"), run.told());
        assertTrue(run.out().contains("32nds"), run.out());
        Run wrong = Run.of("count", rolled, "--hidden", "maybe");
        assertEquals(2, wrong.code());
    }

    /** The chart is the same, byte for byte, as without the hidden voice; so the voice takes no space. */
    @Test
    void givenNoSpace() throws IOException {
        Path plain = Files.createDirectory(folder.resolve("plain")).resolve("rolled.musicxml");
        Files.writeString(plain, Files.readString(Path.of(rolled)).replaceAll("<backup>.*?(?=\\s*</measure>)", ""));
        assertArrayEquals(chart(plain), chart(Path.of(rolled)));
    }

    private static byte[] chart(Path score) throws IOException {
        Path chart = score.resolveSibling("chart.pdf");
        Run run = Run.of("annotate", score.toString(), "-o", chart.toString());
        assertEquals(0, run.code(), run.err());
        return Files.readAllBytes(chart);
    }
}

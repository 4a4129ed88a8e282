package countstave.musicxml;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import countstave.score.Bar;
import countstave.score.Event;
import countstave.score.Part;
import countstave.score.Score;
import countstave.score.ScoreException;
import countstave.score.SourceSpot;
import countstave.score.Voice;
import countstave.testing.Corpus;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;

/** Every open score reads, or is refused with one clear line; and every note and bar knows where it stands. */
class CorpusReadTest {

    @Test
    void everyScoreReadsAndEveryNoteKnowsItsPlace() {
        List<String> refused = new ArrayList<>();
        int notes = look(Corpus.scores(), refused);
        assertTrue(notes > 200_000, notes + " notes");
        // the one file of the suite that is not well-formed: a part is closed inside a measure
        assertEquals(List.of("32ad-Notations5.musicxml: line 141, column 8: this is not well-formed XML (Unexpected "
                + "close tag </part>; expected </measure>.): export the score again"), refused);
    }

    /** The scores of the project, which are always there. */
    @Test
    void ourOwn() {
        List<String> refused = new ArrayList<>();
        int notes = look(Corpus.own(), refused);
        assertTrue(notes > 3_000, notes + " notes");
        assertEquals(List.of(), refused);
    }

    /**
     * How many notes were looked at.
     *
     * @param refused gets what is said of files that cannot be read
     */
    private static int look(List<Path> paths, List<String> refused) {
        int notes = 0;
        for (Path path : paths) {
            Score score;
            ScoreFile file;
            try {
                file = ScoreFile.load(path);
                score = ScoreReader.read(file, ReadOptions.DEFAULT);
            } catch (ScoreException e) {
                assertFalse(e.getMessage().contains("\n"), e.getMessage());
                refused.add(path.getFileName() + ": " + e.getMessage());
                continue;
            }
            boolean timewise = file.text().contains("<score-timewise");
            for (Part part : score.parts()) {
                for (Bar bar : part.bars()) {
                    place(file.text(), bar.source().spot(), timewise ? "part" : "measure", path);
                    assertTrue(bar.length().isPositive(), path + " " + part.id() + " " + bar.number());
                    for (Voice voice : bar.voices()) {
                        for (Event event : voice.events()) {
                            place(file.text(), event.source(), "note", path);
                            notes++;
                        }
                    }
                }
            }
        }
        return notes;
    }

    private static void place(String text, SourceSpot spot, String element, Path path) {
        int close = spot.end() - element.length() - 3;
        assertTrue(text.charAt(spot.start()) == '<' && text.startsWith(element, spot.start() + 1), () -> path + " at " + spot);
        assertTrue(text.startsWith("</", close) && text.startsWith(element, close + 2) && text.charAt(spot.end() - 1) == '>',
                () -> path + " at " + spot);
        if (element.equals("note")) {
            assertEquals('>', text.charAt(spot.lyricSlot() - 1));
        }
    }
}

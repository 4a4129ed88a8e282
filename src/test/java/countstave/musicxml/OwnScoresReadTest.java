package countstave.musicxml;

import static org.junit.jupiter.api.Assertions.assertTrue;

import countstave.testing.Corpus;
import countstave.testing.Places;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;

/** Every score of the project reads, and every note and bar knows where it stands; CorpusCheckTest asks it of the open scores. */
class OwnScoresReadTest {

    @Test
    void everyNoteKnowsItsPlace() {
        int notes = 0;
        for (Path path : Corpus.own()) {
            ScoreFile file = ScoreFile.load(path);
            notes += Places.check(file, ScoreReader.read(file, ReadOptions.DEFAULT));
        }
        assertTrue(notes > 3_000, notes + " notes");
    }
}

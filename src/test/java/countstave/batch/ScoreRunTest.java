package countstave.batch;

import static org.junit.jupiter.api.Assertions.assertEquals;

import countstave.files.Console;
import countstave.musicxml.ScoreFile;
import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.PrintStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Test;

/** The last word of a run that is interrupted promises only what is there. */
class ScoreRunTest {

    /** One file for the results of all scores, as check writes it: it is never there when the run is interrupted. */
    @Test
    void oneFileOfAllResultsIsNotThere() {
        assertEquals("interrupted: 3 of 60 done", ScoreRun.interrupted(3, 60, new ScoreWork<Void>() {
            @Override
            public Void run(NamedScore score, ScoreFile file, Console console) {
                return null;
            }

            @Override
            public String results() {
                return "written to found.sarif";
            }
        }));
    }

    @Test
    void whatIsPrintedHasNoPlace() {
        assertEquals("interrupted: 0 of 2 done", ScoreRun.interrupted(0, 2, (score, file, console) -> null));
    }

    @Test
    void anOutputAScoreStays() {
        Console console = new Console(new ByteArrayInputStream(new byte[0]),
                new PrintStream(new ByteArrayOutputStream(), true, StandardCharsets.UTF_8),
                new PrintStream(new ByteArrayOutputStream(), true, StandardCharsets.UTF_8));
        Targets targets = Targets.of(ScoreList.of(List.of("scores")), "charts", new Naming() {
            @Override
            public String inFolder(NamedScore score, String stem) {
                return stem + ".txt";
            }

            @Override
            public Path beside(NamedScore score, String stem) {
                return null;
            }
        }, console);
        assertEquals("interrupted: 3 of 60 done; written to charts; --skip-existing goes on from there",
                ScoreRun.interrupted(3, 60, targets.work(false, (score, file, own) -> { })));
    }
}

package countstave.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import countstave.musicxml.ScoreFile;
import countstave.testing.Corpus;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/**
 * Folders of the open corpus in one run: one file is broken, some have no note in them, all others are done. With
 * {@code -Dcorpus=all} the whole of it, which takes longer.
 */
class CorpusRunTest {

    /** The one file of the corpus that is not well-formed XML. */
    private static final String BROKEN = "32ad-Notations5";

    @TempDir
    Path folder;

    private static void onlyBrokenOnesFail(Run run, int scores) {
        assertEquals(2, run.code());
        List<String> failed = run.told().stream().filter(l -> l.contains("well-formed") || l.contains("nothing to count")
                || l.contains("fault of countstave")).toList();
        assertEquals(1, failed.stream().filter(l -> l.contains("well-formed")).filter(l -> l.contains(BROKEN)).count());
        assertEquals(failed.size() - 1, failed.stream().filter(l -> l.contains("nothing to count")).count(), run.err());
        assertEquals("countstave: " + (scores - failed.size()) + " scores done, " + failed.size() + " failed", run.summary());
    }

    /** Annotated side by side and stripped again, every score is what it was. */
    @Test
    void annotatedAndStrippedAFolderIsWhatItWas() throws IOException {
        boolean all = "all".equals(System.getProperty("corpus"));
        List<Path> scores = Corpus.scores(all ? "" : "musicxml-test-suite");
        String root = Corpus.ROOT.resolve(all ? "" : "musicxml-test-suite").toString();
        Path counted = folder.resolve("counted");
        Path back = folder.resolve("back");
        Run run = Run.of("annotate", root, "-o", counted.toString(), "--threads", "2");
        onlyBrokenOnesFail(run, scores.size());
        Run strip = Run.of("strip", counted.toString(), "-o", back.toString(), "--threads", "2");
        assertEquals(0, strip.code(), strip.err());
        int compared = 0;
        try (Stream<Path> files = Files.walk(back)) {
            for (Path file : files.filter(Files::isRegularFile).toList()) {
                Path original = Path.of(root).resolve(back.relativize(file).toString());
                assertEquals(ScoreFile.load(original).text(), ScoreFile.load(file).text(), file.toString());
                compared++;
            }
        }
        assertTrue(compared > scores.size() * 3 / 4, compared + " compared");
    }

    @Test
    void countedAndChecked() {
        List<Path> scores = Corpus.scores("musicxml-test-suite");
        String root = Corpus.ROOT.resolve("musicxml-test-suite").toString();
        onlyBrokenOnesFail(Run.of("count", root, "-o", folder.resolve("texts").toString()), scores.size());
        Run check = Run.of("check", root, "--threads", "2");
        assertEquals(2, check.code());
        assertEquals("countstave: " + (scores.size() - 1) + " scores done, 1 failed", check.summary());
        assertEquals(1, check.told().stream().filter(l -> l.contains(BROKEN)).count());
        assertEquals(Run.of("check", root, "--threads", "1").out(), check.out());
    }
}

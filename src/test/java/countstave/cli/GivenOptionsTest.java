package countstave.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** An option that would do nothing is refused in one line which says what it is for, and nothing is written. */
class GivenOptionsTest {

    private static final String SCORE = "scores/groove.musicxml";

    @TempDir
    Path folder;

    private Run run(String words) {
        return Run.of(words.replace("SCORE", SCORE).replace("OUT", folder.toString()).split(" "));
    }

    private void nothingIsWritten() throws IOException {
        try (Stream<Path> files = Files.list(folder)) {
            assertEquals(0, files.count());
        }
    }

    @ParameterizedTest
    @CsvSource(delimiter = '|', value = {
        // printed, no track is made and nobody speaks
        "practice SCORE --click 2,4 | --click is for guide tracks: name a folder with -o",
        "practice SCORE --silent 1/4 | --silent is for guide tracks: name a folder",
        "practice SCORE --sound midi | --sound is for guide tracks",
        "practice SCORE --tracks 2 | --tracks is for guide tracks",
        "practice SCORE --wav-tracks 2 | --wav-tracks is for guide tracks",
        "practice SCORE --repeats 2 | --repeats is for guide tracks",
        "practice SCORE --endless | --endless is for guide tracks",
        "practice SCORE --layers beat --format json | --layers is for guide tracks",
        "practice SCORE --no-count-in | --no-count-in is for guide tracks",
        "practice SCORE --whole-grid | --whole-grid is for guide tracks",
        "practice SCORE --place 2=+1/64 | --place is for guide tracks",
        "practice SCORE --peak -6 | --peak is for guide tracks",
        "practice SCORE --at 40 | --at is for guide tracks and data: name a folder with -o, or add --format json",
        "practice SCORE --voice-softer 6 | --voice-softer is for what is heard: name a folder",
        "practice SCORE --voice high | --voice high is for what is heard: name a folder",
        "practice SCORE --voice low | --voice low is for what is heard",
        "practice SCORE --force | --force is for outputs: name their place with -o",
        "practice SCORE --paper a4 | --paper is for the printed page",
        "practice SCORE --format json --ascii | --ascii is for text",
        // a page by itself
        "practice SCORE -o OUT/page.html --click 2,4 | --click is for guide tracks: set it on the page",
        "practice SCORE -o OUT/page.html --days 9 | --days is for the plan of days",
        "practice SCORE -o OUT/page.html --top 2 | --top is for the plan: name a folder",
        "practice SCORE -o OUT/page.html --format json | --format is for what is printed: leave out -o",
        "practice SCORE -o OUT/page.html --ascii | --ascii is for what is printed",
        "practice SCORE -o OUT/page.html --voice none --voice-softer 3 | --voice-softer is for a voice that speaks",
        // a folder
        "practice SCORE -o OUT/plan --format json | --format is for what is printed: leave it out, the folder has",
        "practice SCORE -o OUT/plan --ascii | --ascii is for what is printed",
        "practice SCORE -o OUT/plan --sound midi --peak -6 | --peak is for WAV files: add wav to --sound",
        "practice SCORE -o OUT/plan --sound midi --wav-tracks 2 | --wav-tracks is for WAV files",
        "practice SCORE -o OUT/plan --tracks 0 --click 2 | --click is for guide tracks: leave out --tracks 0",
        "practice SCORE -o OUT/plan --layers beat --voice de | --voice de is for a voice that speaks: add voice",
        "practice SCORE -o OUT/plan --layers beat --voice-softer 3 | --voice-softer is for a voice that speaks",
        "practice SCORE -o OUT/plan --layers voice,beat --whole-grid | --whole-grid is for clicks on the counted positions",
        "practice SCORE -o OUT/plan --layers voice,beat --place 2=+10ms | --place is for the played notes: add rhythm",
        "practice SCORE -o OUT/plan --layers rhythm,voice --click 2 | --click is for clicks on beats: add beat",
        // counts
        "count SCORE --format json --why | --why is for text: leave it out, or --format json",
        "count SCORE --format json --unplayed none | --unplayed is for text",
        "count SCORE --format json --ascii -o OUT/counts.json | --ascii is for text",
        "count SCORE --force | --force is for outputs: name their place with -o",
        "annotate SCORE -o OUT/part.musicxml --as part --unplayed all | --unplayed is for lyrics and charts",
        "annotate SCORE -o OUT/counted.musicxml --with-key | --with-key is for the chart",
        // findings
        "check --rules --format json | --format is for findings: leave it out, or --rules",
        "check --rules --all | --all is for findings",
        "check --rules --least error | --least is for the check of scores",
        "check SCORE --force | --force is for outputs",
        "check SCORE --write-baseline OUT/known.json --format sarif | --format is for findings that are told",
        "check SCORE --write-baseline OUT/known.json --all | --all is for findings that are told",
        // takes
        "listen SCORE take.mid --force | --force is for outputs",
        "listen SCORE take.mid --format json --compare earlier.json | --compare is for sentences: the data have none",
        "listen SCORE take.mid -o OUT/today.json --compare earlier.json | --compare is for sentences",
        "listen SCORE take.mid --format json --ascii | --ascii is for text",
        "listen SCORE take.mid -o OUT/report.pdf --ascii | --ascii is for text",
        "listen SCORE take.mid -o OUT/report.pdf --format json | --format is for what is printed",
        "listen SCORE take.mid -o OUT/today.txt --format json | --format is for what is printed",
        "listen SCORE take.mid --landscape | --landscape is for the printed page",
        "systems --and de | --and is for the table of a system: name one"})
    void whatWouldDoNothingIsRefused(String words, String line) throws IOException {
        Run run = run(words);
        assertEquals(2, run.code(), run.out());
        assertTrue(run.err().startsWith("countstave: ") && run.err().contains(line), run.err());
        assertEquals(1, run.err().lines().count(), run.err());
        assertEquals("", run.out());
        nothingIsWritten();
    }

    /** The same options where they do something. */
    @ParameterizedTest
    @CsvSource({
        "practice SCORE --bars 1-2 --format json --at 40",
        "practice SCORE --bars 1-2 --days 5 --top 1 --ascii --breath 4",
        "practice SCORE --bars 1-2 -o OUT/page.html --voice high --voice-softer 3 --large --title Weir",
        "practice SCORE --bars 1-2 -o OUT/plan --tracks 0 --at 40 --layers beat --top 1",
        "practice SCORE --bars 1-2 -o OUT/plan --tracks 0 --sound midi --voice none", "practice SCORE --bars 1-2 --voice none",
        "practice SCORE --bars 1-2 -o OUT/plan --tracks 0 --layers beat --voice none",
        "count SCORE --bars 1 --ascii --why --unplayed needed -o OUT/counts.txt --force",
        "count SCORE --bars 1 --format json --language de",
        "annotate SCORE --as part -o OUT/part.musicxml --force",
        "check --rules --language de -o OUT/rules.txt --force",
        "check SCORE --all --format json --least error --language de",
        "listen scores/dense.musicxml scores/dense-take.mid --bars 3 --format json -o OUT/today.json --force",
        "listen scores/dense.musicxml scores/dense-take.mid --bars 3 -o OUT/today.txt --ascii --format text",
        "systems numbers --and de"})
    void whatDoesSomethingIsNot(String words) {
        Run run = run(words);
        assertEquals(0, run.code(), run.err());
    }

    /** A voice of the score is none that speaks. */
    @Test
    void aVoiceOfTheScoreIsCounted() {
        Run run = run("practice SCORE --voice 1 --bars 1-2");
        assertEquals(0, run.code(), run.err());
        assertFalse(run.out().isEmpty());
    }
}

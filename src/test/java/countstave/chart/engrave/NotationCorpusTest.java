package countstave.chart.engrave;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import countstave.chart.shape.Box;
import countstave.chart.shape.Role;
import countstave.chart.shape.Shape;
import countstave.musicxml.ReadOptions;
import countstave.musicxml.ScoreFile;
import countstave.musicxml.ScoreReader;
import countstave.score.Bar;
import countstave.score.BarTimeline;
import countstave.score.Head;
import countstave.score.Part;
import countstave.score.PulseChoice;
import countstave.score.Score;
import countstave.score.ScoreException;
import countstave.score.Selection;
import countstave.score.Timeline;
import countstave.testing.Corpus;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.function.BiConsumer;
import java.util.function.Predicate;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Whole scores: nothing touches that must not, nothing leaves its bar, nothing breaks. */
class NotationCorpusTest {

    @Test
    void nothingTouchesInTheDemoScores() throws IOException {
        List<Path> scores;
        try (Stream<Path> files = Files.list(Path.of("scores"))) {
            scores = files.filter(f -> f.toString().endsWith(".musicxml")).sorted().toList();
        }
        List<String> touching = new ArrayList<>();
        for (Path score : scores) {
            forEachBar(score, (bar, sheet) -> Collisions.in(sheet).forEach(c -> touching.add(score.getFileName() + ", bar "
                    + bar.number() + ": " + c)));
        }
        assertEquals(List.of(), touching);
    }

    /** Drum bars that crowd hands and feet: rests of both voices, ghost notes, flams, flags, beams, tuplets. */
    @ParameterizedTest
    @ValueSource(strings = {
        "C5:8 x/G5:8 C5:g8 C5:8 x/G5:8 D5:g16 D5:g16 C5:4 (C5):16 (C5):16 C5:16> (C5):16 | F4:4 r:8 F4:8 r:4 F4:8 F4:8",
        "x/G5:16 r:16 x/G5:16 x/G5:16 x/G5:8 r:8 x/G5:16 C5:16 r:16 C5:16 r:4 | F4:8. F4:16 r:8 F4:8 r:16 F4:16 r:8 F4:4",
        "r:8 C5:8 r:8 C5:8 r:4 x/G5+C5:4 | F4:4 r:4 F4:4 r:4",
        "3:2{x/G5:8 r:8 x/G5:8} 3:2{C5:8 C5:8 r:8} 3:2{r:4 C5:4 D5:4} | 3:2{F4:8 F4:8 F4:8} F4:4 5:4{F4:8 F4:8 F4:8 F4:8 F4:8}",
        "x/G5+C5:8. x/A5:16 x/G5:8 (C5):16 (C5):16 x/G5+(C5):8 E5:32 E5:32 D5:32 D5:32 A4:16 A4:8. | F4+x/D4:4 F4:8. F4:16 r:2",
        "C5:8 r:4 C5:8 r:4. C5:8 | r:8 F4:8 r:4 F4:4. r:8",
        "R:1 | F4:4 F4:4 F4:4 F4:4"})
    void handsAndFeet(String voices) {
        assertEquals(List.of(), Collisions.in(Sheet.of(Notes.drums().bar(voices.replace("+x/D4", "+D4")))));
    }

    @Test
    void testSuiteEngravesInsideItsBars() {
        List<String> wrong = new ArrayList<>();
        for (Path score : Corpus.scores("musicxml-test-suite")) {
            forEachBar(score, (bar, sheet) -> {
                for (Shape shape : sheet.placed.shapes()) {
                    Box box = Sheet.box(shape);
                    boolean inside = box.left() > -0.3 && box.right() < sheet.width + 0.3;
                    if (Double.isNaN(box.bottom()) || !inside && shape.role() != Role.DYNAMICS
                            && shape.role() != Role.MEASURE_REPEAT) {
                        wrong.add(score.getFileName() + ", bar " + bar.number() + ": " + shape);
                    }
                }
            });
        }
        assertEquals(List.of(), wrong);
    }

    /** Chords and voices whose ghost notes lie close, and the narrowest bar that the spacing allows: eleven in the time of two eighths. */
    @ParameterizedTest
    @ValueSource(strings = {
        "(A4)+(C5)+(E5):4 (A4)+(B4):4 A4+(B4):4 (A4)+B4:4", "(C5)+(D5)+(E5):8 (C5)+(A5):8 C#5:4 (C#5)+(D#5):4 (C#5)+E#5:4",
        "11:8{(C5):32 (C5):32 C5:32 (C5):32 (C#5):32 (C5):32 (C5):32 (C5):32 C5:32 (C5):32 (C5):32} C5:2. | F4:1",
        "(C5):8 (C5):8 C5:4 (D5):8 r:8 (C5):4 | (B4):8 B4:8 (B4):4 C5:4 (B4):4"})
    void ghostNotesCloseTogether(String voices) {
        assertEquals(List.of(), Collisions.in(Sheet.of(Notes.drums().bar(voices))));
        assertEquals(List.of(), Collisions.in(Sheet.of(Notes.treble().bar(voices))));
    }

    /** Of the whole corpus, these had any that touched. */
    @Test
    void parenthesesTouchNothingInTheCorpus() {
        List<String> touching = new ArrayList<>();
        int[] ghosts = {0};
        for (Path score : List.of(Corpus.score("22d-"), Corpus.score("lc6447372"), Corpus.score("22c-"))) {
            forEachBar(score, NotationCorpusTest::hasGhosts, (bar, sheet) -> {
                ghosts[0] += sheet.all(Role.PARENTHESIS).size();
                Collisions.in(sheet).stream().filter(c -> c.contains("PARENTHESIS"))
                        .forEach(c -> touching.add(score.getFileName() + ", bar " + bar.number() + ": " + c));
            });
        }
        assertEquals(List.of(), touching);
        assertTrue(ghosts[0] >= 20, "parentheses: " + ghosts[0]);
    }

    private static boolean hasGhosts(Bar bar) {
        return bar.voices().stream().flatMap(v -> v.events().stream()).flatMap(e -> e.heads().stream()).anyMatch(Head::parentheses);
    }

    private static void forEachBar(Path path, BiConsumer<Bar, Sheet> use) {
        forEachBar(path, bar -> true, use);
    }

    private static void forEachBar(Path path, Predicate<Bar> which, BiConsumer<Bar, Sheet> use) {
        Score score;
        try {
            score = ScoreReader.read(ScoreFile.load(path), ReadOptions.DEFAULT);
        } catch (ScoreException e) {
            return;
        }
        for (Part part : score.parts()) {
            List<BarTimeline> bars = Timeline.of(part, Selection.ALL, PulseChoice.BY_METER, null).bars();
            for (int staff = 1; staff <= part.staves(); staff++) {
                StaffState state = StaffState.DEFAULT;
                for (int i = 0; i < bars.size(); i++) {
                    Bar bar = bars.get(i).bar();
                    if (which.test(bar)) {
                        Sheet sheet = Sheet.of(bars.get(i), staff, state, i == 0 ? null : bars.get(i - 1).bar(),
                                i + 1 == bars.size() ? null : bars.get(i + 1).bar());
                        assertTrue(sheet.width > 0);
                        use.accept(bar, sheet);
                    }
                    state = state.after(bar, staff);
                }
            }
        }
    }
}

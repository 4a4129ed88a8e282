package countstave.chart;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import countstave.CountedScore;
import countstave.CountingOptions;
import countstave.chart.font.Measures;
import countstave.chart.layout.Chart;
import countstave.chart.shape.Box;
import countstave.chart.shape.Curve;
import countstave.chart.shape.Line;
import countstave.chart.shape.Role;
import countstave.chart.shape.Shape;
import countstave.chart.shape.Text;
import countstave.musicxml.ScoreFile;
import countstave.score.PulseChoice;
import countstave.score.Tempo;
import countstave.score.TimeOptions;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.EnumSet;
import java.util.List;
import java.util.Objects;
import java.util.Set;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Finished pages of the demo scores: what stands around the notes touches neither them nor the counts nor each other. */
class PageCollisionsTest {

    private static final Measures MEASURES = Measures.standard();
    private static final Set<Role> AROUND = EnumSet.of(Role.SLUR, Role.HAIRPIN, Role.DYNAMICS, Role.LYRIC, Role.WORDS,
            Role.CHORD_NAME, Role.TEMPO, Role.REHEARSAL, Role.ENDING, Role.OCTAVE_LINE, Role.PEDAL, Role.CHANGE_WORDS);
    private static final Set<Role> MUSIC = EnumSet.of(Role.NOTE, Role.STEM, Role.FLAG, Role.REST, Role.TUPLET_NUMBER,
            Role.FERMATA, Role.ARTICULATION, Role.SYLLABLE_PLAYED, Role.SYLLABLE_UNPLAYED, Role.TICK_BEAT);
    /** Outlines are rounder than their boxes. */
    private static final double ROUND = 0.06;

    private record Part(Shape shape, Box box) {
    }

    @Test
    void nothingAroundTheNotesTouches() throws IOException {
        List<Path> scores;
        try (Stream<Path> files = Files.list(Path.of("scores"))) {
            scores = files.filter(f -> f.toString().endsWith(".musicxml")).sorted().toList();
        }
        List<String> touching = new ArrayList<>();
        int hairpins = 0;
        for (Path score : scores) {
            CountedScore counted = CountedScore.of(ScoreFile.load(score), CountingOptions.defaults());
            Chart chart = ChartWriter.layout(counted.parts(), counted.score(), ChartOptions.standard());
            for (Chart.Page page : chart.pages()) {
                hairpins += (int) page.shapes().stream().filter(s -> s.role() == Role.HAIRPIN).count();
                check(page, score.getFileName().toString(), touching);
            }
        }
        assertEquals(List.of(), touching);
        // 4 hairpins in dense, 3 in groove, 1 in song, of two lines each; those over a line's end more often
        assertTrue(hairpins >= 16, "hairpin lines: " + hairpins);
    }

    /** Parentheses round ghost notes, and round words that are not played, at the score's tempo and where other counts are planned. */
    @ParameterizedTest
    @CsvSource({"dense, 0", "dense, 38", "dense, 150", "groove, 0", "groove, 60", "groove, 200", "polyrhythms, 0", "meters, 45"})
    void parenthesesTouchNothing(String name, int tempo) {
        TimeOptions time = new TimeOptions(PulseChoice.BY_METER, tempo == 0 ? null : Tempo.of(tempo), null);
        CountedScore counted = CountedScore.of(ScoreFile.load(Path.of("scores", name + ".musicxml")), CountingOptions.defaults().with(time));
        Chart chart = ChartWriter.layout(counted.parts(), counted.score(), ChartOptions.standard());
        List<String> touching = new ArrayList<>();
        int parentheses = 0;
        for (Chart.Page page : chart.pages()) {
            for (Shape one : page.shapes()) {
                if (one.role() == Role.PARENTHESIS) {
                    parentheses++;
                    Box box = MEASURES.box(one);
                    page.shapes().stream().filter(other -> other != one && !LINES.contains(other.role()) && !belongs(one, other)
                            && box.overlaps(MEASURES.box(other))).forEach(other -> touching.add(one + " and " + other));
                }
            }
        }
        assertEquals(List.of(), touching);
        assertTrue(parentheses > 10, "parentheses: " + parentheses);
    }

    private static final Set<Role> LINES = EnumSet.of(Role.STAFF_LINE, Role.LEDGER, Role.TIE, Role.SLUR, Role.BEAM, Role.HAIRPIN);

    /** What a pair of parentheses stands round, and its stem: the boxes of letters and of slanting signs reach into each other. */
    private static boolean belongs(Shape parenthesis, Shape other) {
        return Objects.equals(parenthesis.at(), other.at())
                && (other.role() == Role.STEM || parenthesis instanceof Text && other.role() == Role.SYLLABLE_UNPLAYED);
    }

    private static void check(Chart.Page page, String name, List<String> touching) {
        List<Part> around = new ArrayList<>();
        List<Part> all = new ArrayList<>();
        for (Shape shape : page.shapes()) {
            boolean outer = AROUND.contains(shape.role());
            if (outer || MUSIC.contains(shape.role())) {
                for (Box box : boxes(shape)) {
                    Part part = new Part(shape, box);
                    all.add(part);
                    if (outer) {
                        around.add(part);
                    }
                }
            }
        }
        for (Part one : around) {
            for (Part other : all) {
                boolean own = one.shape() == other.shape() || one.shape().role() == other.shape().role();
                if (!own && one.box().overlaps(other.box())) {
                    touching.add(name + ": " + one.shape() + " and " + other.shape());
                }
            }
        }
    }

    private static List<Box> boxes(Shape shape) {
        List<Box> boxes = new ArrayList<>();
        if (shape instanceof Curve curve) {
            for (int i = 1; i < 24; i++) {
                double t = i / 24.0;
                double u = 0.75 * t + 0.75 * t * t - 0.5 * t * t * t;
                double x = curve.x1() + (curve.x2() - curve.x1()) * u;
                double y = curve.y1() + (curve.y2() - curve.y1()) * u + curve.height() * 4 * t * (1 - t);
                boxes.add(new Box(x - 0.05, y - 0.1, x + 0.05, y + 0.1));
            }
        } else if (shape instanceof Line line && line.y1() != line.y2() && line.x1() != line.x2()) {
            for (int i = 0; i <= 24; i++) {
                double x = line.x1() + (line.x2() - line.x1()) * i / 24;
                double y = line.y1() + (line.y2() - line.y1()) * i / 24;
                boxes.add(new Box(x - 0.05, y - 0.08, x + 0.05, y + 0.08));
            }
        } else {
            Box box = MEASURES.box(shape);
            double dx = Math.min(ROUND, box.width() / 2.01);
            double dy = Math.min(ROUND, box.height() / 2.01);
            boxes.add(new Box(box.left() + dx, box.bottom() + dy, box.right() - dx, box.top() - dy));
        }
        return boxes;
    }
}

package countstave.chart.engrave;

import static org.junit.jupiter.api.Assertions.assertEquals;

import countstave.chart.shape.Point;
import countstave.chart.shape.Polygon;
import countstave.chart.shape.Role;
import countstave.score.BarTimeline;
import countstave.score.Tuplet;
import countstave.score.Voice;
import java.util.List;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/**
 * Which notes share a beam where a file has none.
 *
 * <p>Sources (sources.md, section 2): beams never cross the middle of a 4/4 bar (Berklee teaching page on imaginary
 * barlines); sixteenths by the beat (Berklee woodshed page); one beam for each dotted beat in compound time (Music
 * Fundamentals: A Balanced Approach, p. 215); 5/8 and 7/8 by the group (Baylor open textbook on rhythm, ch. 22). From
 * memory: 2/4 and 4/4 eighths by two or four, partial beams towards the note that completes the beat.
 */
class BeamsTest {

    @ParameterizedTest
    @CsvSource(delimiter = ';', value = {
        "4; 4; 8 8 8 8 8 8 8 8; 0-3 4-7",
        "4; 4; 4 8 8 8 8 4; 1-2 3-4",
        "4; 4; 16 16 16 16 8 8 8 8 8 8; 0-3 4-5 6-9",
        "4; 4; 8 4 8 8 8 4; 3-4",
        "2; 4; 8 8 16 16 8; 0-1 2-4",
        "3; 4; 8 8 8 8 8 8; 0-1 2-3 4-5",
        "6; 8; 8 8 8 8 8 8; 0-2 3-5",
        "12; 8; 8 8 8 4 8 16 16 8 8 4.; 0-2 5-8",
        "3; 8; 8 8 8; 0-2",
        "3+2+2; 8; 8 8 8 8 8 8 8; 0-2 3-4 5-6",
        "2+2+3; 8; 8 8 8 8 8 8 8; 0-1 2-3 4-6",
        "5; 8; 8 8 8 8 8; 0-2 3-4",
        "2; 2; 8 8 8 8 8 8 8 8; 0-3 4-7",
        "2; 2; 8 8 16 16 16 16 2; 0-1 2-5",
        "4; 4; 5:4{8 8 8 8 8} 2; 0-4",
        "4; 4; 3:2{4 8} 3:2{8 8 8} 2; 2-4",
        "4; 4; 8 r8 r8 8 16 r16 16 16 r4; 4-7"})
    void groups(String beats, int unit, String rhythm, String expected) {
        BarTimeline bar = bar(beats, unit, rhythm);
        assertEquals(expected, grouped(bar).stream().map(g -> g.first() + "-" + g.last())
                .collect(Collectors.joining(" ")));
    }

    private static BarTimeline bar(String beats, int unit, String rhythm) {
        return Notes.treble().meter(beats, unit).bar(rhythm.replaceAll("(?<![\\d:r.])(\\d+\\.*)(?![\\d:.])(?!\\{)", "C5:$1")
                .replaceAll("r(\\d+)", "r:$1").replaceAll(":4\\{C5:", ":4{C5:"));
    }

    private static List<BeamGroup> grouped(BarTimeline bar) {
        Voice voice = bar.bar().voices().get(0);
        List<Tuplet> tuplets = bar.bar().tuplets();
        return new BeamGrouper(voice.events(), tuplets, bar.beats(), bar.bar().meter(), 1).groups();
    }

    /** Level 2 and finer as {@code level:from-to}, partial beams as {@code level:note>} or {@code <}. */
    @ParameterizedTest
    @CsvSource(delimiter = ';', value = {
        "8. 16 4 2; 2:1<",
        "16 8. 4 2; 2:0>",
        "16 8 16 4 2; 2:0> 2:2<",
        "8 16 16 4 2; 2:1-2",
        "32 32 32 32 16 16 4 2; 2:0-3 2:4-5 3:0-3",
        "8.. 32 4 2; 2:1< 3:1<",
        "16 16 32 32 32 32 4 2; 2:0-1 2:2-5 3:2-5"})
    void finerBeams(String rhythm, String expected) {
        BeamGroup group = grouped(bar("4", 4, rhythm)).get(0);
        assertEquals(expected, group.spans().stream().map(s -> s.level() + ":" + (s.isPartial()
                ? s.from() + (s.forward() ? ">" : "<") : s.from() + "-" + s.to())).collect(Collectors.joining(" ")));
    }

    /** SMuFL engravingDefaults: {@code beamThickness}, and {@code beamSpacing} between inner edges. */
    @Test
    void thicknessAndSpacing() {
        Sheet sheet = Sheet.of(Notes.treble().bar("C5:16 C5:16 C5:16 C5:16 r:4 r:2"));
        List<Polygon> beams = sheet.all(Role.BEAM).stream().map(Polygon.class::cast).toList();
        assertEquals(2, beams.size());
        double thickness = Sheet.MEASURES.music().engraving("beamThickness");
        double spacing = Sheet.MEASURES.music().engraving("beamSpacing");
        for (Polygon beam : beams) {
            List<Point> corners = beam.points();
            assertEquals(thickness, corners.get(3).y() - corners.get(0).y(), 1e-9);
        }
        double outer = beams.get(0).points().get(0).y();
        double inner = beams.get(1).points().get(0).y();
        assertEquals(thickness + spacing, Math.abs(inner - outer), 1e-9);
    }
}

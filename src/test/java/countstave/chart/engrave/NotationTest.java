package countstave.chart.engrave;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import countstave.chart.shape.Box;
import countstave.chart.shape.Glyph;
import countstave.chart.shape.Line;
import countstave.chart.shape.Point;
import countstave.chart.shape.Role;
import countstave.chart.shape.Shape;
import countstave.score.Bar;
import countstave.score.BarTimeline;
import countstave.score.Pitch;
import countstave.time.Offset;
import java.util.List;
import java.util.Set;
import org.junit.jupiter.api.Test;

/**
 * Where the signs of a bar stand. Checked against the SMuFL specification (glyph anchors, {@code engravingDefaults}),
 * MusicXML's definitions of clefs and display positions, and rules that are common practice and have no one source.
 */
class NotationTest {

    private static final double EPS = 1e-6;

    /**
     * SMuFL, glyphsWithAnchors: {@code stemUpSE} is "the exact position at which the bottom right-hand corner of an
     * angled stem should start", {@code stemDownNW} the top left-hand one.
     */
    @Test
    void stemsStartAtTheAnchorsOfTheirHeads() {
        Sheet sheet = Sheet.of(Notes.treble().bar("G4:4 x/A4:4 C6:4 diamond/D5:8 triangle/E5:8"));
        List<Glyph> heads = sheet.glyphs(Role.NOTE);
        assertEquals(5, heads.size());
        for (Glyph head : heads) {
            Line stem = (Line) sheet.at(Role.STEM, head.at()).get(0);
            boolean up = stem.y2() > stem.y1();
            Point anchor = Sheet.MEASURES.music().anchor(head.name(), up ? "stemUpSE" : "stemDownNW");
            double edge = stem.x1() + (up ? 1 : -1) * stem.thickness() / 2;
            assertEquals(head.x() + anchor.x(), edge, EPS, head.name());
            assertEquals(head.y() + anchor.y(), stem.y1(), EPS, head.name());
            assertEquals(Sheet.MEASURES.music().engraving("stemThickness"), stem.thickness());
        }
    }

    /** MusicXML: a G clef on line 2 puts G4 there, F on 4 F3, C on 3 or 4 C4; percussion reads as treble. */
    @Test
    void middleCUnderEachClef() {
        assertEquals(-1, onlyHead(Notes.treble()).y());
        assertEquals(5, onlyHead(Notes.treble().clef("F", 4)).y());
        assertEquals(2, onlyHead(Notes.treble().clef("C", 3)).y());
        assertEquals(3, onlyHead(Notes.treble().clef("C", 4)).y());
        assertEquals(-1, onlyHead(Notes.drums()).y());
    }

    private static Glyph onlyHead(Notes notes) {
        return Sheet.of(notes.bar("C4:1")).glyphs(Role.NOTE).get(0);
    }

    /** Common practice: one line for each whole space outside the staff. */
    @Test
    void ledgerLines() {
        Sheet low = Sheet.of(Notes.treble().bar("A3:1"));
        assertEquals(List.of(-1.0, -2.0), low.lines(Role.LEDGER).stream().map(Line::y1).toList());
        assertEquals(0, Sheet.of(Notes.treble().bar("D4:2 G5:2")).lines(Role.LEDGER).size());
        Line line = low.lines(Role.LEDGER).get(0);
        Box head = Sheet.box(low.glyphs(Role.NOTE).get(0));
        double extension = Sheet.MEASURES.music().engraving("legerLineExtension");
        assertEquals(head.width() + 2 * extension, line.x2() - line.x1(), EPS);
    }

    /** Common practice (an octave; to the middle line from far away; not under 2.5 spaces). */
    @Test
    void lengthsOfStems() {
        assertEquals(3.5, length("G4:4"), 0.2);
        assertTrue(Math.abs(length("A3:4")) >= 4 - 0.2, "reaches the middle line");
        assertEquals(2, lastStem("A3:4").y2(), EPS);
        assertEquals(2, lastStem("E6:4").y2(), EPS);
        for (String beamed : List.of("G4:8 A4:8", "E4:16 G5:16", "C5:32 C5:32", "F4:8 C6:8")) {
            for (Line stem : Sheet.of(Notes.treble().bar(beamed)).lines(Role.STEM)) {
                assertTrue(Math.abs(stem.y2() - stem.y1()) >= 2.5 - 0.17, beamed + ": " + stem);
            }
        }
    }

    private static double length(String note) {
        Line stem = lastStem(note);
        return stem.y2() - stem.y1();
    }

    private static Line lastStem(String note) {
        return Sheet.of(Notes.treble().bar(note)).lines(Role.STEM).get(0);
    }

    /** Common practice: of two heads a second apart, one stands on the other side of the stem. */
    @Test
    void secondsChangeSides() {
        Sheet up = Sheet.of(Notes.treble().bar("F4+G4:4"));
        List<Glyph> heads = up.glyphs(Role.NOTE);
        assertTrue(heads.get(1).x() > heads.get(0).x() + 1, "upper head right of an upward stem");
        Sheet down = Sheet.of(Notes.treble().bar("D5+E5:4"));
        assertTrue(down.glyphs(Role.NOTE).get(0).x() < down.glyphs(Role.NOTE).get(1).x() - 1, "lower head left");
        assertEquals(down.x(Offset.ZERO), centre(down.glyphs(Role.NOTE).get(1)), EPS, "the other one keeps its time");
    }

    private static double centre(Glyph glyph) {
        Box box = Sheet.box(glyph);
        return (box.left() + box.right()) / 2;
    }

    /** Common practice: stems opposed, rests out of the way, a rest that says the same for both printed once. */
    @Test
    void twoVoices() {
        Sheet sheet = Sheet.of(Notes.drums().bar("x/G5:4 r:4 C5:4 r:4 | F4:4 F4:4 r:4 r:4"));
        assertTrue(sheet.lines(Role.STEM).stream().filter(s -> s.y1() > 2).allMatch(s -> s.y2() > s.y1()));
        assertTrue(sheet.lines(Role.STEM).stream().filter(s -> s.y1() < 2).allMatch(s -> s.y2() < s.y1()));
        Glyph upper = (Glyph) sheet.at(Role.REST, Offset.of(1, 4)).get(0);
        Glyph lower = (Glyph) sheet.at(Role.REST, Offset.of(2, 4)).get(0);
        assertTrue(upper.y() > 2 && lower.y() < 2);
        List<Shape> shared = sheet.at(Role.REST, Offset.of(3, 4));
        assertEquals(1, shared.size());
        assertEquals(2, ((Glyph) shared.get(0)).y(), "in the middle");
    }

    /** Common practice: a unison of like heads is one head with two stems; of unlike heads, two side by side. */
    @Test
    void unisonsAndSecondsBetweenVoices() {
        Sheet shared = Sheet.of(Notes.treble().bar("B4:4 | B4:4"));
        assertEquals(1, shared.glyphs(Role.NOTE).size());
        assertEquals(2, shared.lines(Role.STEM).size());
        for (String voices : List.of("B4:4 | B4:2", "B4:4 | A4:4", "x/B4:4 | B4:4", "A4:4 | B4:4")) {
            Sheet apart = Sheet.of(Notes.treble().bar(voices));
            List<Glyph> heads = apart.glyphs(Role.NOTE);
            assertEquals(2, heads.size(), voices);
            assertFalse(shrunk(Sheet.box(heads.get(0))).overlaps(shrunk(Sheet.box(heads.get(1)))), voices);
        }
    }

    private static Box shrunk(Box box) {
        return new Box(box.left() + 0.1, box.bottom() + 0.05, box.right() - 0.1, box.top() - 0.05);
    }

    /** Common practice: dots stand in spaces, never on lines. */
    @Test
    void dotsStandInSpaces() {
        Sheet sheet = Sheet.of(Notes.treble().bar("G4:4. A4+C5+E5:4. D5+E5:4 | F4:2. r:4"));
        List<Glyph> dots = sheet.glyphs(Role.DOT);
        assertEquals(5, dots.size());
        for (Glyph dot : dots) {
            assertEquals(0.5, Math.abs(dot.y() % 1), EPS);
        }
    }

    /** Common practice: sharps from F, flats from B, in the pattern that stays on the staff. */
    @Test
    void keySignatures() {
        assertEquals(List.of(4.0, 2.5, 4.5, 3.0, 1.5, 3.5, 2.0), heights(Notes.treble().key(7)));
        assertEquals(List.of(2.0, 3.5, 1.5, 3.0, 1.0, 2.5, 0.5), heights(Notes.treble().key(-7)));
        assertEquals(List.of(3.0, 1.5, 3.5), heights(Notes.treble().clef("F", 4).key(3)));
        assertEquals(List.of(1.0, 3.0, 1.5), heights(Notes.treble().clef("C", 4).key(3)));
    }

    private static List<Double> heights(Notes notes) {
        return Sheet.of(notes.bar("R:1")).glyphs(Role.KEY).stream().map(Glyph::y).toList();
    }

    @Test
    void barRestInTheMiddle() {
        Sheet sheet = Sheet.of(Notes.treble().bar("R:1"));
        Glyph rest = sheet.glyphs(Role.REST).get(0);
        double left = sheet.engraved.prefixWidth(true);
        double right = sheet.width - sheet.engraved.suffixWidth(true);
        assertEquals((left + right) / 2, centre(rest), EPS);
        assertEquals(3, rest.y(), "hangs from the fourth line");
    }

    /** On one line: notes on it, stems up (common practice); the line stands at y = 2 (interface of the shapes). */
    @Test
    void oneLineStaff() {
        for (String pitch : List.of("E4", "B4")) {
            Sheet sheet = Sheet.of(Notes.drums().lines(1).bar(pitch + ":4 r:4 " + pitch + ":2"));
            assertTrue(sheet.glyphs(Role.NOTE).stream().allMatch(n -> n.y() == 2), pitch);
            assertTrue(sheet.lines(Role.STEM).stream().allMatch(s -> s.y2() > s.y1()));
        }
    }

    /** Accidentals never touch each other or a head. */
    @Test
    void accidentalsStandApart() {
        for (String chord : List.of("F#4+G#4+A#4:4", "C#5+D#5+F#5+A#5:4", "Bb3+Db4+Fb4+Ab4:4 F#5:4", "B4:4 C#5+D#5:4")) {
            Sheet sheet = Sheet.of(Notes.treble().bar(chord));
            List<Shape> marks = sheet.all(Role.ACCIDENTAL);
            for (int i = 0; i < marks.size(); i++) {
                for (int k = i + 1; k < marks.size(); k++) {
                    assertFalse(Sheet.box(marks.get(i)).overlaps(Sheet.box(marks.get(k))), chord);
                }
                for (Shape head : sheet.all(Role.NOTE)) {
                    assertFalse(Sheet.box(marks.get(i)).overlaps(Sheet.box(head)), chord);
                }
            }
        }
    }

    @Test
    void tiesInsideAndAcrossBars() {
        BarTimeline bar = Notes.treble().bar("G4:4 B4~:4 B4:4 C5~:4");
        assertEquals(2, Sheet.of(bar).all(Role.TIE).size(), "one to no note");
        Bar next = Notes.treble().bar("C5~:4 C5:4 r:2").bar();
        Sheet sheet = Sheet.of(bar, 1, StaffState.DEFAULT, null, next);
        assertEquals(1, sheet.all(Role.TIE).size());
        assertEquals(1, sheet.placed.ties().size());
        assertTrue(sheet.placed.ties().get(0).leaves());
        assertEquals("1", sheet.placed.ties().get(0).voice());
        assertEquals(Pitch.of('C', 5, 0, false), sheet.placed.ties().get(0).pitch());
    }

    @Test
    void graceNotesAreSmallAndBeforeTheirNote() {
        Sheet sheet = Sheet.of(Notes.treble().bar("E5:g16 D5:g16 C5:4 r:4 r:2"));
        Glyph main = sheet.glyphs(Role.NOTE).get(0);
        List<Glyph> graces = sheet.glyphs(Role.GRACE);
        assertEquals(2, graces.size());
        assertTrue(graces.stream().allMatch(g -> g.scale() < 1 && Sheet.box(g).right() < Sheet.box(main).left()));
    }

    /** What is left out is named, never dropped in silence. */
    @Test
    void whatIsNotDrawnIsNamed() {
        assertEquals(Set.of(), Sheet.of(Notes.treble().bar("C5:4 D5:4 r:2")).engraved.notDrawn());
        assertEquals(Set.of("notehead cluster"),
                Sheet.of(Notes.treble().bar("cluster/C5:4 D5:4 r:2")).engraved.notDrawn());
        assertEquals(Set.of("key of more than seven accidentals"),
                Sheet.of(Notes.treble().key(8).bar("C5:4 D5:4 r:2")).engraved.notDrawn());
    }
}

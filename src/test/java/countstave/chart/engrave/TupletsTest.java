package countstave.chart.engrave;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import countstave.chart.shape.Box;
import countstave.chart.shape.Role;
import countstave.chart.shape.Shape;
import countstave.time.Ratio;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Numbers and brackets of tuplets. */
class TupletsTest {

    /**
     * facts.md section 3 and sources.md section 2: R1, m the largest power of two below n (encyclopedia article on
     * tuplets; kitovua tuplet page); R2 for compound time and the rows of the table with their sources there.
     */
    @ParameterizedTest
    @CsvSource({"3,2,true,true", "5,4,true,true", "6,4,true,true", "7,4,true,true", "9,8,true,true", "10,8,true,true",
        "11,8,true,true", "13,8,true,true", "15,8,true,true", "5,6,false,false", "7,8,false,false", "3,4,false,false",
        "2,3,false,true", "4,3,false,true", "4,6,false,true", "5,3,false,true", "7,6,false,true", "8,6,false,true",
        "9,6,false,true", "5,2,false,false", "11,12,false,false", "4,5,false,false"})
    void usualRatios(int n, int m, boolean simple, boolean compound) {
        assertEquals(simple, TupletLabel.isUsual(new Ratio(n, m), false), "simple time");
        assertEquals(compound, TupletLabel.isUsual(new Ratio(n, m), true), "compound time");
    }

    @Test
    void unusualRatiosAreWrittenOut() {
        assertEquals(List.of("tuplet5"), number("5:4{C5:16 C5:16 C5:16 C5:16 C5:16} r:4 r:2"));
        assertEquals(List.of("tuplet5", "tupletColon", "tuplet6"),
                number("5:6{C5:8 C5:8 C5:8 C5:8 C5:8} r:4"));
        assertEquals(List.of("tuplet1", "tuplet1"),
                number("11:8{C5:8 C5:8 C5:8 C5:8 C5:8 C5:8 C5:8 C5:8 C5:8 C5:8 C5:8}"));
    }

    private static List<String> number(String notes) {
        return Sheet.of(Notes.treble().bar(notes)).names(Role.TUPLET_NUMBER);
    }

    /** Textbook on notation fundamentals (facts.md): a bracket where no beam ties the group together. */
    @Test
    void bracketOnlyWithoutABeam() {
        assertEquals(0, brackets("3:2{C5:8 C5:8 C5:8} r:4 r:2"));
        assertTrue(brackets("3:2{C5:4 C5:4 C5:4} r:2") > 0);
        assertTrue(brackets("3:2{r:8 C5:8 C5:8} r:4 r:2") > 0, "a rest at the end is under no beam");
        assertTrue(brackets("3:2{C5:4 C5:8} r:4 r:2") > 0);
    }

    private static int brackets(String notes) {
        return Sheet.of(Notes.treble().bar(notes)).all(Role.TUPLET_BRACKET).size();
    }

    /** The outer bracket of a nested tuplet lies farther out, and none touches a note, stem, beam, rest or number. */
    @Test
    void nestedTupletsStandApart() {
        for (String notes : List.of("3:2{C5:4 3:2{C5:8 D5:8 E5:8} C5:4} r:2", "3:2{C5:2 5:4{A4:8 C5:8 r:8 A4:8 C6:8} C5:2}",
                "3:2{G5:8 3:2{F4:16 G4:16 A5:16} r:8} r:4 r:2", "3:2{C4:4 r:4 A5:4} r:2")) {
            Sheet sheet = Sheet.of(Notes.treble().bar(notes));
            List<Shape> numbers = sheet.all(Role.TUPLET_NUMBER);
            for (Shape mark : sheet.placed.shapes()) {
                if (mark.role() != Role.TUPLET_BRACKET && mark.role() != Role.TUPLET_NUMBER) {
                    continue;
                }
                for (Role role : List.of(Role.NOTE, Role.STEM, Role.BEAM, Role.REST, Role.FLAG, Role.LEDGER)) {
                    for (Shape other : sheet.all(role)) {
                        assertFalse(upright(mark).overlaps(Sheet.box(other)) && !isSlantedBox(mark, other),
                                notes + ": " + mark + " " + other);
                    }
                }
            }
            for (int i = 0; i < numbers.size(); i++) {
                for (int k = i + 1; k < numbers.size(); k++) {
                    assertFalse(Sheet.box(numbers.get(i)).overlaps(Sheet.box(numbers.get(k))), notes);
                }
            }
        }
    }

    private static Box upright(Shape shape) {
        return Sheet.box(shape);
    }

    /** A sloping line's box is larger than the line; boxes of sloping beams likewise: no proof of a collision. */
    private static boolean isSlantedBox(Shape mark, Shape other) {
        return other.role() == Role.BEAM || mark.role() == Role.TUPLET_BRACKET && Sheet.box(mark).height() > 0.3
                && Sheet.box(mark).width() > 0.3;
    }
}

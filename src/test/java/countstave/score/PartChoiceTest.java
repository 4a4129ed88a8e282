package countstave.score;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Which parts of a score a choice means. */
class PartChoiceTest {

    private static final Score BAND = new Score("Band", "", "band.mxl", List.of(part("P1", "Violin I"), part("P2", "Violin II"),
            part("P3", "Viola"), part("P4", "Horn, in F"), part("P5", "7"), part("P6", "Viola"), part("Bass", "\u00dcber*all")),
            List.of());

    private static Part part(String id, String name) {
        return new Part(id, name, 1, List.of(), 0);
    }

    private static String chosen(boolean required, String... words) {
        return new PartChoice(List.of(words), required).of(BAND).stream().map(Part::id).collect(Collectors.joining(" "));
    }

    @ParameterizedTest
    @CsvSource(delimiter = ';', value = {
        "P2; P2", "2; P2", "violin i; P1", "Violin*; P1 P2", "viol?n*; P1 P2", "V*; P1 P2 P3 P6", "*I; P1 P2", "?iola; P3 P6",
        // two parts may have one name
        "Viola; P3 P6",
        // a name goes before a number, and before what its signs would mean
        "7; P5", "Horn, in F; P4", "\u00fcber*all; Bass", "\u00dcBER*; Bass",
        "Viola,1; P3 P6 P1", "Tuba, Violin*,P2; P1 P2", "P?; P1 P2 P3 P4 P5 P6", "*; P1 P2 P3 P4 P5 P6 Bass",
        "Horn?in?F; ", "**********************x; ", "B.ss; ", "0; ", "8; ", "','; ", "Violin; "})
    void whatAWordMeans(String word, String ids) {
        if (ids == null) {
            assertThrows(NoPartException.class, () -> chosen(false, word));
            ScoreException e = assertThrows(ScoreException.class, () -> chosen(true, word));
            assertEquals("there is no part '" + word + "'; the parts are 1 = Violin I, 2 = Violin II, 3 = Viola,"
                    + " 4 = Horn, in F, 5 = 7, 6 = Viola, 7 = \u00dcber*all", e.getMessage());
        } else {
            assertEquals(ids, chosen(true, word));
            assertEquals(ids, chosen(false, word));
        }
    }

    @Test
    void eachWordIsRequiredOrTakenWhereItFits() {
        assertEquals("P3 P6 P1 P2", chosen(true, "Viola", "Viol*I", "P1"));
        assertEquals("P4", chosen(false, "Tuba", "Horn*"));
        assertThrows(ScoreException.class, () -> chosen(true, "Tuba", "Horn*"));
        NoPartException none = assertThrows(NoPartException.class, () -> chosen(false, "Tuba", "Kazoo"));
        assertTrue(none.getMessage().startsWith("there is no part 'Tuba' or 'Kazoo', so it is left out"), none.getMessage());
    }

    @Test
    void aFilesNameIsNoTitle() {
        assertTrue(titled("movement1", "movement1.xml").isUntitled());
        assertTrue(titled("Movement1.XML", "movement1.xml").isUntitled());
        assertFalse(titled("movement1", "quartet.xml").isUntitled());
        assertEquals("Dawn", titled("movement1", "movement1.xml").completed("Dawn", null).title());
        assertEquals("Dusk", titled("Dusk", "movement1.xml").completed("Dawn", null).title());
        assertEquals("N. N.", titled("Dusk", "a.xml").completed(null, "N. N.").composer());
        assertEquals("A. B.", new Score("a", "A. B.", "a.xml", List.of(), List.of()).completed("b", "N. N.").composer());
    }

    private static Score titled(String title, String source) {
        return new Score(title, "", source, List.of(), List.of());
    }
}

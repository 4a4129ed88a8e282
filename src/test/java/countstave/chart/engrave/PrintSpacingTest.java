package countstave.chart.engrave;

import static org.junit.jupiter.api.Assertions.assertEquals;

import countstave.score.Part;
import countstave.score.PulseChoice;
import countstave.score.Selection;
import countstave.score.Timeline;
import countstave.testing.Snippets;
import java.util.List;
import org.junit.jupiter.api.Test;

/** MusicXML 4.0, {@code print-spacing}: whether space is left for a note; a note hidden by the file gets none at all. */
class PrintSpacingTest {

    private static final String NOTE = "<note%s><pitch><step>%s</step><octave>5</octave></pitch><duration>%d</duration>"
            + "<voice>%d</voice><type>%s</type></note>";
    private static final String BACK = "<backup><duration>16</duration></backup>";

    private static List<String> columns(String xml) {
        Part part = Snippets.part(Snippets.score("4/4", 4, xml));
        Sheet sheet = Sheet.of(Timeline.of(part, Selection.ALL, PulseChoice.BY_METER, null).bars().get(0));
        return sheet.engraved.columns().stream().map(c -> c.at().toString()).toList();
    }

    @Test
    void noRoomIsKept() {
        String halves = NOTE.formatted("", "C", 8, 1, "half").repeat(2);
        String plain = NOTE.formatted("", "E", 4, 2, "quarter").repeat(4);
        assertEquals(List.of("0/1", "1/4", "1/2", "3/4"), columns(halves + BACK + plain));
        // the half notes keep their own room, whatever stands with them
        assertEquals(List.of("0/1", "1/2"), columns(halves + BACK + plain.replace("<note>", "<note print-spacing=\"no\">")));
        assertEquals(List.of("0/1", "1/2"), columns(halves + BACK + plain.replace("<note>", "<note print-object=\"no\">")));
    }
}

package countstave.musicxml;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNull;
import static org.junit.jupiter.api.Assertions.assertTrue;

import countstave.score.Tuplet;
import countstave.testing.Snippets;
import countstave.time.Duration;
import countstave.time.Offset;
import countstave.time.Ratio;
import java.util.List;
import org.junit.jupiter.api.Test;

/** Which notes make up a tuplet, with the file's brackets and without them. */
class TupletFinderTest {

    /** {@code start length ratio unit depth complete} of every tuplet of the first bar. */
    private static List<String> tuplets(String xml) {
        return Snippets.part(xml).bars().get(0).tuplets().stream().map(t -> t.start() + " " + t.length() + " " + t.ratio()
                + " of " + t.unit() + (t.depth() > 0 ? " in " + t.depth() : "") + (t.complete() ? "" : " open")).toList();
    }

    private static String unmarked(String rhythm) {
        return Snippets.rhythm("4/4", rhythm).replaceAll("<tuplet .*?(?:/>|</tuplet>)", "");
    }

    @Test
    void bracketsTellTheGroups() {
        assertEquals(List.of("0/1 1/4 3:2 of 1/12", "1/4 1/4 6:4 of 1/24", "1/2 1/2 5:4 of 1/10"),
                tuplets(Snippets.rhythm("4/4", "3:2[4 8] 6:4[16 16 16 16 16 16] 5:4[8 8 8 8 8]")));
    }

    @Test
    void withoutBracketsRunsThatFillANoteValueAreTheGroups() {
        assertEquals(List.of("0/1 1/4 3:2 of 1/12", "1/4 1/4 3:2 of 1/12", "1/2 1/8 3:2 of 1/24", "5/8 1/8 3:2 of 1/24"),
                tuplets(unmarked("3:2[4 8] 3:2[8 8 8] 3:2[16 16 16] 3:2[16 16 16] 4")));
        assertEquals(List.of("0/1 1/4 6:4 of 1/24", "1/4 1/2 3:2 of 1/6"),
                tuplets(unmarked("6:4[16 16 16 16 16 16] 3:2[4 4 4] 4")));
    }

    /** MusicXML 4.0, time-modification: the product of all nested tuplets; tuplet-actual tells each one's own. */
    @Test
    void nestedTupletsHaveTheirOwnRatioAndDepth() {
        List<String> expected = List.of("0/1 1/2 3:2 of 1/6", "1/6 1/6 5:4 of 1/30 in 1");
        assertEquals(expected, tuplets(Snippets.rhythm("4/4", "3:2[4 5:4[16 16 16 16 16] 4] 2")));
        assertEquals(expected, tuplets(unmarked("3:2[4 5:4[16 16 16 16 16] 4] 2")));
    }

    @Test
    void innerRatioKeepsItsTerms() {
        String xml = Snippets.rhythm("4/4", "3:2[4 6:4[16 16 16 16 16 16] 4] 2");
        assertTrue(xml.contains("<actual-notes>18</actual-notes><normal-notes>8</normal-notes>"));
        assertEquals("1/6 1/6 6:4 of 1/36 in 1", tuplets(xml).get(1));
        String plain = xml.replaceAll("<tuplet-(actual|normal)>.*?</tuplet-\\1>", "");
        assertEquals("1/6 1/6 6:4 of 1/36 in 1", tuplets(plain).get(1));
    }

    @Test
    void groupFilledByInnerGroupsOnlyNeedsItsBracketsRatio() {
        assertEquals(List.of("0/1 1/4 3:2 of 1/12", "0/1 1/12 3:2 of 1/36 in 1", "1/12 1/12 3:2 of 1/36 in 1",
                "1/6 1/12 3:2 of 1/36 in 1"),
                tuplets(Snippets.rhythm("1/4", "3:2[3:2[16 16 16] 3:2[16 16 16] 3:2[16 16 16]]")));
    }

    @Test
    void tupletThatTheBarCutsOffIsNotComplete() {
        Tuplet tuplet = Snippets.part(unmarked("2. 3:2[8 8] r16 r32 r64")).bars().get(0)
                .tuplets().get(0);
        assertEquals(Offset.of(3, 4), tuplet.start());
        assertEquals(Duration.of(1, 6), tuplet.length());
        assertEquals(new Ratio(3, 2), tuplet.ratio());
        assertEquals(false, tuplet.complete());
        assertNull(tuplet.mark());
    }

    @Test
    void twoNoteTremoloIsNoTuplet() {
        String note = "<note><pitch><step>%s</step><octave>4</octave></pitch><duration>2</duration><type>half</type>"
                + "<time-modification><actual-notes>2</actual-notes><normal-notes>1</normal-notes></time-modification>"
                + "<notations><ornaments><tremolo type=\"%s\">3</tremolo></ornaments></notations></note>";
        var bar = Snippets.part(Snippets.score("2/4", 2, note.formatted("C", "start") + note.formatted("E", "stop")))
                .bars().get(0);
        assertEquals(List.of(), bar.tuplets());
        assertEquals(Duration.of(1, 2), bar.length());
    }
}

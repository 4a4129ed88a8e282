package countstave.musicxml;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNull;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import countstave.score.Bar;
import countstave.score.Direction;
import countstave.score.FretDiagram;
import countstave.score.Placement;
import countstave.score.Score;
import countstave.testing.Corpus;
import countstave.testing.Snippets;
import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Chord names as a player sees them. */
class HarmonyReaderTest {

    private static final String NOTE = "<note><unpitched/><duration>4</duration><voice>1</voice><type>whole</type></note>";

    private static List<Direction> directions(String bar) {
        return Snippets.read(Snippets.score("4/4", 1, bar)).parts().get(0).bars().get(0).directions();
    }

    private static String name(String harmony) {
        List<Direction> found = directions("<harmony>" + harmony + "</harmony>" + NOTE);
        found.forEach(d -> assertEquals(Direction.Kind.HARMONY, d.kind()));
        return String.join("|", found.stream().map(Direction::text).toList());
    }

    private static List<String> names(Score score) {
        List<String> names = new ArrayList<>();
        for (Bar bar : score.parts().get(0).bars()) {
            bar.directions().stream().filter(d -> d.kind() == Direction.Kind.HARMONY)
                    .forEach(d -> names.add(d.at() + " " + d.text()));
        }
        return names;
    }

    /** Lead-sheet spelling: common practice, no source. */
    @ParameterizedTest
    @CsvSource({"major,C", "minor,Cm", "augmented,Caug", "diminished,Cdim", "dominant,C7", "major-seventh,Cmaj7",
        "minor-seventh,Cm7", "diminished-seventh,Cdim7", "augmented-seventh,Caug7", "half-diminished,Cm7♭5",
        "major-minor,Cm(maj7)", "major-sixth,C6", "minor-sixth,Cm6", "suspended-fourth,Csus4", "power,C5", "none,N.C."})
    void kinds(String kind, String expected) {
        assertEquals(expected, name("<root><root-step>C</root-step></root><kind>" + kind + "</kind>"));
    }

    /** All kinds of the MusicXML 4.0 schema (simple type kind-value) have a name, and no two the same. */
    @Test
    void everyKindOfTheSchema() throws IOException {
        String schema;
        try (InputStream in = getClass().getResourceAsStream("/META-INF/jaxb/xsd/musicxml.xsd")) {
            schema = new String(in.readAllBytes(), StandardCharsets.UTF_8);
        }
        int start = schema.indexOf("<xs:simpleType name=\"kind-value\">");
        Matcher values = Pattern.compile("enumeration value=\"([^\"]+)\"")
                .matcher(schema.substring(start, schema.indexOf("</xs:simpleType>", start)));
        Set<String> spelled = new HashSet<>();
        int kinds = 0;
        while (values.find()) {
            kinds++;
            // "other" is a root to which everything is added, so it looks like a major triad
            if (!values.group(1).equals("other")) {
                assertTrue(spelled.add(name("<root><root-step>C</root-step></root><kind>" + values.group(1) + "</kind>")),
                        values.group(1));
            }
        }
        assertEquals(33, kinds);
    }

    /** MusicXML 4.0, kind: use-symbols names the signs; text says how the kind is spelled, behind the sign if there is one. */
    @Test
    void whatTheFileSaysOfTheSpelling() {
        String root = "<root><root-step>B</root-step><root-alter>-1</root-alter></root>";
        assertEquals("B♭△7", name(root + "<kind use-symbols=\"yes\">major-seventh</kind>"));
        assertEquals("B♭-7", name(root + "<kind use-symbols=\"yes\">minor-seventh</kind>"));
        assertEquals("B♭ø", name(root + "<kind use-symbols=\"yes\">half-diminished</kind>"));
        assertEquals("B♭°7", name(root + "<kind use-symbols=\"yes\">diminished-seventh</kind>"));
        assertEquals("B♭-", name(root + "<kind use-symbols=\"yes\">major-minor</kind>"));
        assertEquals("B♭△9", name(root + "<kind use-symbols=\"yes\" text=\"9\">major-seventh</kind>"));
        assertEquals("B♭mi7", name(root + "<kind text=\"mi7\">minor-seventh</kind>"));
        assertEquals("B♭", name(root + "<kind text=\"\">minor</kind>"));
        assertEquals("H", name("<root><root-step text=\"H\">B</root-step></root><kind>major</kind>"));
        assertEquals("As", name("<root><root-step text=\"As\">A</root-step><root-alter print-object=\"no\">-1</root-alter>"
                + "</root><kind>major</kind>"));
        assertEquals("no chord", name("<root><root-step text=\"\">C</root-step></root><kind text=\"no chord\">none</kind>"));
    }

    @Test
    void bassesAndDegrees() {
        String c7 = "<root><root-step>C</root-step></root><kind>dominant</kind>";
        String degree = "<degree%s><degree-value>%s</degree-value><degree-alter%s>%s</degree-alter>"
                + "<degree-type>%s</degree-type></degree>";
        assertEquals("C7/E", name(c7 + "<bass><bass-step>E</bass-step></bass>"));
        assertEquals("C7/G♭", name(c7 + "<bass><bass-step>G</bass-step><bass-alter>-1</bass-alter></bass>"));
        assertEquals("C7 over E", name(c7 + "<bass><bass-separator>over</bass-separator><bass-step>E</bass-step></bass>"));
        assertEquals("C7(♭9,♯11)", name(c7 + degree.formatted("", 9, "", -1, "add") + degree.formatted("", 11, "", 1, "add")));
        assertEquals("C7(add13)", name(c7 + degree.formatted("", 13, "", 0, "add")));
        assertEquals("C7(no3)", name(c7 + degree.formatted("", 3, "", 0, "subtract")));
        assertEquals("C7(♯5)", name(c7 + degree.formatted("", 5, "", 1, "alter")));
        assertEquals("C7(+5)", name(c7 + degree.formatted("", 5, " plus-minus=\"yes\"", 1, "alter")));
        assertEquals("C7", name(c7 + degree.formatted(" print-object=\"no\"", 9, "", -1, "add")));
        assertEquals("C7sus4", name(c7.replace("<kind>", "<kind text=\"7sus4\">")
                + degree.formatted(" print-object=\"no\"", 4, "", 0, "add")));
        assertEquals("C7♭9", name(c7.replace("<kind>", "<kind parentheses-degrees=\"no\">")
                + degree.formatted("", 9, "", -1, "add")));
    }

    /** MusicXML 4.0: a numeral's alteration stands left of it, a root's right of it, if the file does not say otherwise. */
    @Test
    void numeralsFunctionsAndPolychords() {
        assertEquals("♭VII", name("<numeral><numeral-root text=\"VII\">7</numeral-root><numeral-alter>-1</numeral-alter>"
                + "</numeral><kind>major</kind>"));
        assertEquals("V7", name("<function>V</function><kind>dominant</kind>"));
        assertEquals("D C7", name("<root><root-step>D</root-step></root><kind>major</kind>"
                + "<root><root-step>C</root-step></root><kind>dominant</kind>"));
    }

    @Test
    void whereAndWhether() {
        String c = "<root><root-step>C</root-step></root><kind>major</kind>";
        assertEquals("", String.join("", directions("<harmony print-object=\"no\">" + c + "</harmony>" + NOTE).stream()
                .map(Direction::text).toList()));
        Direction later = directions("<harmony placement=\"below\">" + c + "<offset>3</offset><staff>2</staff></harmony>" + NOTE)
                .get(0);
        assertEquals("3/4", later.at().toString());
        assertEquals(2, later.staff());
        assertEquals(Placement.BELOW, later.placement());
        // a fret diagram that cannot be drawn is told to those who draw, unless it is not to be printed
        String frame = "<frame><frame-strings>6</frame-strings><frame-frets>40</frame-frets></frame>";
        assertEquals(List.of(Direction.Kind.HARMONY, Direction.Kind.OTHER),
                directions("<harmony>" + c + frame + "</harmony>" + NOTE).stream().map(Direction::kind).toList());
        assertEquals(1, directions("<harmony print-frame=\"no\">" + c + frame + "</harmony>" + NOTE).size());
        assertEquals(0, directions("<harmony print-object=\"no\">" + c + frame + "</harmony>" + NOTE).size());
    }

    private static FretDiagram diagram(String frame) {
        return directions("<harmony><root><root-step>C</root-step></root><kind>major</kind><frame" + frame + "</frame></harmony>" + NOTE)
                .get(0).diagram();
    }

    private static String place(int string, int fret, String more) {
        return "<frame-note><string>" + string + "</string><fret>" + fret + "</fret>" + more + "</frame-note>";
    }

    /** MusicXML 4.0, frame: frets are numbered on the neck, also where the first that is shown is another. */
    @Test
    void fretDiagrams() {
        String six = "><frame-strings>6</frame-strings><frame-frets>4</frame-frets>";
        assertEquals(new FretDiagram(6, 4, 1, List.of(new FretDiagram.Place(5, 3, "2"), new FretDiagram.Place(1, 0, "")), List.of(), true),
                diagram(six + place(5, 3, "<fingering>2</fingering>") + place(1, 0, "")));
        FretDiagram barre = diagram(" unplayed=\"\"" + six + "<first-fret>5</first-fret>" + place(6, 5, "<barre type=\"start\"/>") + place(5, 7, "")
                + place(1, 5, "<barre type=\"stop\"/>"));
        assertEquals(List.of(new FretDiagram.Barre(5, 6, 1)), barre.barres());
        assertEquals(5, barre.firstFret());
        assertFalse(barre.crosses());
        // what is held down outside of what the file shows
        FretDiagram wider = diagram(six + "<first-fret>3</first-fret>" + place(6, 1, "") + place(2, 7, ""));
        assertEquals(List.of(1, 7), List.of(wider.firstFret(), wider.frets()));
        for (String no : List.of("><frame-strings>6</frame-strings>", six + place(7, 1, ""), six + place(1, 300, ""),
                "><frame-strings>1e9</frame-strings><frame-frets>4</frame-frets>")) {
            assertNull(diagram(no), no);
        }
    }

    /** The test suite's file with chord names, "several (complex) chord names". */
    @Test
    void fileOfTheTestSuite() {
        Score score = ScoreReader.read(ScoreFile.load(Corpus.score("71a")), ReadOptions.DEFAULT);
        assertEquals(List.of("0/1 C", "1/4 Cmaj7(♯11)", "1/2 B7(♯5,♯9)", "3/4 E♭(add2)", "0/1 Gm", "1/4 D♯maj7", "1/2 Adim7",
                "3/4 Aaug"), names(score));
    }

    /** Whatever stands in it, the bar goes on behind it. */
    @Test
    void strangeContents() {
        for (String strange : List.of("", "<kind/>", "<harmony><kind>major</kind></harmony>", "text",
                "<root><root-step/><root-alter>1e999999999</root-alter></root><kind>major</kind>",
                "<degree><degree-value>9</degree-value><degree-alter>x</degree-alter></degree>",
                "<root><root><root-step>C</root-step></root></root><kind>\u2028\u202e</kind>",
                "<root><root-step>" + "C".repeat(20_000) + "</root-step></root><kind>major</kind>",
                "<offset>many</offset><staff>1e999999999</staff><kind>major</kind>")) {
            Bar bar = Snippets.read(Snippets.score("4/4", 1, "<harmony>" + strange + "</harmony>" + NOTE)).parts().get(0)
                    .bars().get(0);
            assertEquals(1, bar.voices().get(0).events().size(), strange);
            for (Direction direction : bar.directions()) {
                assertTrue(direction.text().length() <= 200, strange);
                assertFalse(direction.text().chars().anyMatch(c -> c < ' ' || c == 0x2028 || c == 0x202E), strange);
            }
        }
    }
}

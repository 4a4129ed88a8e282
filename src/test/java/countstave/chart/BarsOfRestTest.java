package countstave.chart;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import countstave.CountedScore;
import countstave.CountingOptions;
import countstave.chart.font.Measures;
import countstave.chart.shape.Box;
import countstave.chart.shape.Glyph;
import countstave.chart.shape.Role;
import countstave.chart.shape.Shape;
import countstave.chart.shape.Text;
import countstave.musicxml.ScoreFile;
import countstave.testing.Snippets;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Rests of whole bars, alone and in runs. Where a run is cut: common practice, no source. */
class BarsOfRestTest {

    private static final String NOTES = "<note><pitch><step>C</step><octave>5</octave></pitch><duration>4</duration>"
            + "<type>whole</type></note>";
    private static final String REST = "<note><rest measure=\"yes\"/><duration>4</duration></note>";

    private static List<Shape> page(String xml, ChartOptions options) {
        CountedScore counted = CountedScore.of(ScoreFile.of("rests.musicxml", xml.getBytes(StandardCharsets.UTF_8)),
                CountingOptions.defaults());
        return ChartWriter.layout(counted.parts(), counted.score(), options).pages().get(0).shapes();
    }

    /** What is drawn from left to right: numbers of runs, r for a rest, n for a bar of notes. */
    private static String drawn(String xml, ChartOptions options) {
        List<Shape> page = page(xml, options);
        StringBuilder drawn = new StringBuilder();
        double last = -10;
        List<Glyph> signs = page.stream().filter(Glyph.class::isInstance).map(Glyph.class::cast).filter(g -> g.role() == Role.MULTI_REST
                || g.role() == Role.REST || g.role() == Role.NOTE).collect(Collectors.toCollection(ArrayList::new));
        for (Glyph sign : signs) {
            boolean sameNumber = sign.role() == Role.MULTI_REST && sign.x() - last < 3 && sign.x() > last;
            drawn.append(sameNumber ? "" : " ").append(sign.role() == Role.REST ? "r" : sign.role() == Role.NOTE ? "n"
                    : sign.name().substring("timeSig".length()));
            last = sign.role() == Role.MULTI_REST ? sign.x() : -10;
        }
        return drawn.toString().trim();
    }

    private static String score(String... bars) {
        return Snippets.score("4/4", 1, bars);
    }

    private static String drawn(String... bars) {
        return drawn(score(bars), ChartOptions.standard());
    }

    @Test
    void emptyBarsBecomeOneWithTheirNumber() {
        assertEquals("n 3 n", drawn(NOTES, REST, REST, REST, NOTES));
        assertEquals("n r n", drawn(NOTES, REST, NOTES));
        String[] many = new String[13];
        Arrays.fill(many, REST);
        many[12] = NOTES;
        assertEquals("12 n", drawn(many));
    }

    @Test
    void theFileKeepsThemWhereItIsAsked() {
        ChartOptions keep = ChartOptions.standard().withContents(Contents.ALL.withRests(Contents.Rests.KEEP));
        assertEquals("n r r r n", drawn(score(NOTES, REST, REST, REST, NOTES), keep));
        String said = "<attributes><measure-style><multiple-rest>2</multiple-rest></measure-style></attributes>";
        assertEquals("n 2 n", drawn(score(NOTES, said + REST, REST, NOTES), keep));
    }

    @ParameterizedTest
    @CsvSource(delimiter = ';', value = {
        "<direction><direction-type><rehearsal>A</rehearsal></direction-type></direction>; ''",
        "<direction><direction-type><words>Tutti</words></direction-type></direction>; ''",
        "<direction><direction-type><metronome><beat-unit>quarter</beat-unit><per-minute>70</per-minute></metronome>"
                + "</direction-type></direction>; ''",
        "<sound tempo=\"70\"/>; ''",
        "<attributes><key><fifths>2</fifths></key></attributes>; ''",
        "<attributes><clef><sign>F</sign><line>4</line></clef></attributes>; ''",
        "<attributes><time><beats>2</beats><beat-type>2</beat-type></time></attributes>; ''",
        "''; <barline location=\"right\"><bar-style>light-light</bar-style></barline>",
        "<barline location=\"left\"><repeat direction=\"forward\"/></barline>; ''"})
    void aRunIsCutWhereAPlayerLooksUp(String begins, String ends) {
        assertEquals("2 3 n", drawn(REST, REST + ends, begins + REST, REST, REST, NOTES));
        // each is counted from one
        List<String> words = page(score(REST, REST + ends, begins + REST, REST, REST, NOTES), ChartOptions.standard()).stream()
                .filter(s -> s.role() == Role.SYLLABLE_UNPLAYED).map(s -> ((Text) s).string()).filter(s -> s.startsWith("(")).toList();
        String beats = begins.contains("<beat-type>2") ? "2" : "2 3 4";
        assertEquals(List.of("(1 2 3 4) (2 2 3 4)", "(1 " + beats + ") (2 " + beats + ") (3 " + beats + ")"), words);
    }

    @Test
    void plainBarlinesCutNothing() {
        String line = "<barline location=\"right\"><bar-style>regular</bar-style></barline>";
        assertEquals("3 n", drawn(REST + line, REST + line, REST + line, NOTES));
    }

    /** A rest before the first bar, and a half-empty bar between, are no bars of the run. */
    @Test
    void pickupsAreNoBarsOfARun() {
        String pickup = "<note><rest/><duration>1</duration><type>quarter</type></note>";
        String xml = score(pickup, REST, REST, NOTES).replace("<measure number=\"1\">", "<measure number=\"0\" implicit=\"yes\">");
        assertEquals("r 2 n", drawn(xml, ChartOptions.standard()));
    }

    /** Cues, pauses and chord names are seen. */
    @Test
    void whatStandsInABarKeepsItApart() {
        String fermata = "<note><rest measure=\"yes\"/><duration>4</duration><notations><fermata/></notations></note>";
        assertEquals("2 r 2 n", drawn(REST, REST, fermata, REST, REST, NOTES));
        String cue = "<note><cue/><pitch><step>G</step><octave>4</octave></pitch><duration>4</duration><type>whole</type></note>";
        assertEquals("2 n 2 n", drawn(REST, REST, cue, REST, REST, NOTES));
    }

    /** MusicXML lets a rest go without a type: one that fills its bar is the sign of a bar of rest, in the middle. */
    @ParameterizedTest
    @CsvSource({"2/4, 2", "3/4, 3", "4/4, 4", "5/4, 5", "6/4, 6", "4/2, 8"})
    void restsWithoutATypeAreWholeOnes(String meter, int quarters) {
        String rest = "<note><rest/><duration>" + quarters + "</duration></note>";
        String note = "<note><pitch><step>C</step><octave>5</octave></pitch><duration>1</duration><type>quarter</type></note>";
        List<Shape> page = page(Snippets.score(meter, 1, note.repeat(quarters), rest, note.repeat(quarters)), ChartOptions.standard());
        List<Glyph> rests = page.stream().filter(s -> s.role() == Role.REST).map(Glyph.class::cast).toList();
        assertEquals(List.of("restWhole"), rests.stream().map(Glyph::name).toList());
        Box box = Measures.standard().box(rests.get(0));
        List<Double> barlines = page.stream().filter(s -> s.role() == Role.BARLINE).map(s -> Measures.standard().box(s).left()).sorted()
                .toList();
        double before = barlines.stream().filter(x -> x < box.left()).reduce((a, b) -> b).orElseThrow();
        double after = barlines.stream().filter(x -> x > box.right()).findFirst().orElseThrow();
        assertEquals((before + after) / 2, (box.left() + box.right()) / 2, 0.4, "in the middle");
    }

    @Test
    void aRestThatFillsHalfABarStaysWhatItIs() {
        String half = "<note><rest/><duration>2</duration></note>";
        List<Shape> page = page(score(half + "<note><pitch><step>C</step><octave>5</octave></pitch><duration>2</duration>"
                + "<type>half</type></note>"), ChartOptions.standard());
        assertTrue(page.stream().anyMatch(s -> s instanceof Glyph g && g.name().equals("restHalf")));
    }
}

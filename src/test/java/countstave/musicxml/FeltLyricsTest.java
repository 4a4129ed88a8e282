package countstave.musicxml;

import static org.junit.jupiter.api.Assertions.assertEquals;

import countstave.MusicXmlSchema;
import countstave.count.HandPlans;
import countstave.count.NoteNames;
import countstave.count.PartCounts;
import countstave.count.Unplayed;
import countstave.score.Event;
import countstave.score.Lyric;
import countstave.score.Part;
import countstave.score.PartTimeline;
import countstave.score.PulseChoice;
import countstave.score.Score;
import countstave.score.Selection;
import countstave.score.Timeline;
import countstave.testing.Snippets;
import java.io.StringReader;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.xml.sax.InputSource;

/** What stands under notes that are felt, and under swung ones; plans by hand. */
class FeltLyricsTest {

    private static PartTimeline timeline(String xml) {
        return Timeline.of(Snippets.part(xml), Selection.ALL, PulseChoice.BY_METER, null);
    }

    /** The first bar's notes and rests in order, each with the lyric below it, or a hyphen. */
    private static String lyrics(Part part) {
        List<String> words = new ArrayList<>();
        part.bars().get(0).voices().stream().flatMap(v -> v.events().stream()).sorted(java.util.Comparator.comparing(Event::start))
                .forEach(event -> words.add(event.look().lyrics().stream().map(Lyric::text).reduce("", String::concat)));
        return String.join(" | ", words.stream().map(w -> w.isEmpty() ? "-" : w).toList());
    }

    private static String annotated(String xml, PartTimeline timeline, String plan, boolean dots) throws Exception {
        PartCounts counts = HandPlans.counts(timeline, plan);
        String annotated = Annotator.annotate(xml, List.of(counts), Selection.ALL, Unplayed.ALL, dots, NoteNames.SYMBOLS).toString();
        MusicXmlSchema.validate(new InputSource(new StringReader(annotated)));
        assertEquals(xml, OwnMarks.strip(annotated));
        assertEquals(annotated, Annotator.annotate(OwnMarks.strip(annotated), List.of(counts), Selection.ALL, Unplayed.ALL,
                dots, NoteNames.SYMBOLS).toString(), "twice is once");
        return annotated;
    }

    /**
     * By hand. A felt note has nothing, or a dot; a silent count after it belongs to the last note that has a word, or
     * stands behind the dot. The last row: a whole other voice felt against the eighths.
     */
    @ParameterizedTest
    @CsvSource(delimiter = ';', value = {
        "16 16 8 4;        1/8;            1 | - | & | 2 (&);             1 | · | & | 2 (&)",
        "16 8. 4;          1/8;            1 (&) | - | 2 (&);             1 | · (&) | 2 (&)",
        "r16 16 8 4;       1/8;            (1) | - | & | 2 (&);           (1) | · | & | 2 (&)",
        "3:2[16 16 16] 8 4; 1/8;          1 | - | - | & | 2 (&);         1 | · | · | & | 2 (&)",
        "8 8 8 8 / 3:2[4 4 4]; 1/8;       1 | - | & | - | 2 | - | &;     1 | - | & | · | 2 | · | &",
        "16 16 16 16 4;    1/8..1/4 1/16;  1 | - | & | - | 2 (e & a);     1 | · | & | · | 2 (e & a)",
        "5:4[8 8 8 16 16 8]; span:1/10;   1 | 2 | 3 | 4 | - | 5;         1 | 2 | 3 | 4 | · | 5"})
    void aFeltNoteHasNoSyllable(String bar, String plan, String plain, String dotted) throws Exception {
        String xml = Snippets.in("2/4").bar(bar).xml();
        assertEquals(plain, lyrics(Snippets.part(annotated(xml, timeline(xml), plan, false))));
        assertEquals(dotted, lyrics(Snippets.part(annotated(xml, timeline(xml), plan, true))));
    }

    /** A bar whose only notes are felt: the counts stand as words below the staff, none of them under a note. */
    @Test
    void aBarOfFeltNotesOnly() throws Exception {
        String xml = Snippets.score("2/4", 4, "<forward><duration>1</duration></forward><note><pitch><step>C</step>"
                + "<octave>5</octave></pitch><duration>1</duration><voice>1</voice><type>16th</type></note>"
                + "<forward><duration>6</duration></forward>");
        String text = annotated(xml, timeline(xml), "1/8", false);
        assertEquals("-", lyrics(Snippets.part(text)));
        assertEquals(2, text.split("<direction placement=\"below\">", -1).length - 1);
        assertEquals("· (& 2 &)", lyrics(Snippets.part(annotated(xml, timeline(xml), "1/8", true))).replace("(1) ", ""));
    }

    /** Swung pairs have their words under the written notes; the felt 16th stands between. */
    @ParameterizedTest
    @CsvSource(delimiter = ';', value = {
        "8 8 8 8;      swung:1/8;             1 | & | 2 | &;        1 | & | 2 | &",
        "8 8 4;        swung:1/8;             1 | & | 2 (&);        1 | & | 2 (&)",
        "8 8 8 16 16;  swung:1/8;             1 | & | 2 | & | -;    1 | & | 2 | & | ·",
        "8 8 3:2[8 8 8]; swung:1/8..1/4 1/12; 1 | & | 2 | trip | let; 1 | & | 2 | trip | let",
        "8 8 3:2[8 8 8]; 1/12;               1 (trip) | let | 2 | trip | let; 1 (trip) | let | 2 | trip | let"})
    void swungWordsStandUnderTheWrittenNotes(String bar, String plan, String plain, String dotted) throws Exception {
        String xml = Snippets.in("2/4").bar(bar).xml();
        PartTimeline swung = HandPlans.swing(timeline(xml), "1/8", 2, 1);
        assertEquals(plain, lyrics(Snippets.part(annotated(xml, swung, plan, false))));
        assertEquals(dotted, lyrics(Snippets.part(annotated(xml, swung, plan, true))));
    }

    /** The count part: what is said and nothing else; swung pairs as even eighths. By hand. */
    @ParameterizedTest
    @CsvSource(delimiter = ';', value = {
        "16 16 8 4;      1/8;       0/1 1/8 1/4 3/8;      1 & 2 (&)",
        "16 8. 4;        1/8;       0/1 1/8 1/4 3/8;      1 (&) 2 (&)",
        "5:4[8 8 8 16 16 8]; span:1/10; 0/1 1/10 1/5 3/10 2/5; 1 2 3 4 5",
        "8 8 8 16 16;    swung:1/8; 0/1 1/8 1/4 3/8;      1 & 2 &",
        "8 8 4;          swung:1/8; 0/1 1/8 1/4 3/8;      1 & 2 (&)"})
    void theCountPartHoldsWhatIsSaid(String bar, String plan, String places, String words) throws Exception {
        String xml = Snippets.in("2/4").bar(bar).xml();
        PartTimeline timeline = plan.startsWith("swung") ? HandPlans.swing(timeline(xml), "1/8", 2, 1) : timeline(xml);
        Score score = Snippets.read(xml);
        String annotated = CountPart.annotate(xml, score.parts(), List.of(HandPlans.counts(timeline, plan)), NoteNames.SYMBOLS).toString();
        MusicXmlSchema.validate(new InputSource(new StringReader(annotated)));
        assertEquals(xml, OwnMarks.strip(annotated));
        List<Event> notes = Snippets.read(annotated).parts().get(1).bars().get(0).voices().get(0).events();
        assertEquals(places, String.join(" ", notes.stream().map(e -> e.start().toString()).toList()));
        assertEquals(words, String.join(" ", notes.stream().map(e -> e.look().lyrics().get(0).text()).toList()));
    }
}

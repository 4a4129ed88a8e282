package countstave.musicxml;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import countstave.CountedScore;
import countstave.CountingOptions;
import countstave.count.NoteNames;
import countstave.count.Unplayed;
import countstave.count.BarCounts;
import countstave.count.Count;
import countstave.count.PartCounts;
import countstave.count.SegmentCounts;
import countstave.grid.BarPlan;
import countstave.grid.PartPlan;
import countstave.grid.PlanOptions;
import countstave.grid.Segment;
import countstave.score.Bar;
import countstave.score.BarTimeline;
import countstave.score.Event;
import countstave.score.PartTimeline;
import countstave.score.PulseChoice;
import countstave.score.Score;
import countstave.score.Selection;
import countstave.score.Swing;
import countstave.score.SwingChange;
import countstave.score.Timeline;
import countstave.testing.Snippets;
import countstave.time.Offset;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Swing as the file says it, and what is written under the notes of a swung bar. */
class SwingReadTest {

    private static final String DIRECTION = "<direction><direction-type>%s</direction-type>%s</direction>";

    private static String sound(String swing) {
        return "<sound><swing>" + swing + "</swing></sound>";
    }

    private static String ratio(String first, String second, String type) {
        return "<first>" + first + "</first><second>" + second + "</second>"
                + (type.isEmpty() ? "" : "<swing-type>" + type + "</swing-type>");
    }

    private static String words(String text) {
        return "<words>" + text + "</words>";
    }

    private static String changes(Bar bar) {
        return bar.markings().swings().stream().map(SwingReadTest::change).collect(Collectors.joining(", "));
    }

    private static String change(SwingChange change) {
        Swing swing = change.swing();
        return change.at() + " " + (swing.isStraight() ? "straight"
                : swing.longPart() + ":" + swing.shortPart() + " of " + swing.unit());
    }

    private static String read(String before) {
        return changes(Snippets.in("4/4").before(before).bar("4 4 4 4").part().bars().get(0));
    }

    /** MusicXML 4.0, {@code swing}: straight, or first and second and an eighth where {@code swing-type} is missing. */
    @ParameterizedTest(name = "{0}:{1} {2}")
    @CsvSource(delimiter = ';', value = {
        "2;1;'';0/1 2:1 of 1/8", "3;2;eighth;0/1 3:2 of 1/8", "2;1;16th;0/1 2:1 of 1/16", "60;40;'';0/1 3:2 of 1/8",
        // percent cannot say two thirds
        "67;33;'';0/1 2:1 of 1/8", "66;34;16th;0/1 2:1 of 1/16", "65;35;'';0/1 13:7 of 1/8",
        "1;1;'';0/1 straight", "1;3;'';0/1 1:3 of 1/8",
        // what is no ratio is passed over
        "0;1;'';''", "2;0;'';''", "-2;1;'';''", "2;1;quarter;''", "99999999999999999999;1;'';''", "1001;1;'';''",
    })
    void swingOfASound(String first, String second, String type, String expected) {
        assertEquals(expected, read(sound(ratio(first, second, type))));
        assertEquals(expected, read(DIRECTION.formatted("<dynamics><f/></dynamics>", sound(ratio(first, second, type)))));
    }

    @Test
    void straightOfASound() {
        assertEquals("0/1 straight", read(sound("<straight/>")));
        assertEquals("0/1 straight", read(sound("<straight/><swing-style>Swing</swing-style>")));
        assertEquals("", read("<sound tempo=\"90\"/>"));
    }

    @Test
    void theElementWinsOverWordsAtTheSamePlace() {
        assertEquals("0/1 3:2 of 1/8", read(DIRECTION.formatted(words("Swing"), sound(ratio("3", "2", "")))));
        assertEquals("0/1 straight", read(DIRECTION.formatted(words("Swing"), "") + sound("<straight/>")));
        assertEquals("0/1 2:1 of 1/16", read(sound(ratio("2", "1", "16th")) + DIRECTION.formatted(words("Straight"), "")));
        assertEquals("0/1 2:1 of 1/8", read(DIRECTION.formatted(words("Swing"), "")));
        // at another place both hold
        String later = "<direction><direction-type><words>straight 8ths</words></direction-type><offset sound=\"yes\">16"
                + "</offset></direction>";
        assertEquals("0/1 2:1 of 1/8, 1/2 straight", read(sound(ratio("2", "1", "")) + later));
    }

    /** The example of MusicXML 4.0 for {@code metronome-tuplet}: two eighths are a quarter and an eighth under a three. */
    @Test
    void anEquationOfNotes() {
        String note = "<metronome-note><metronome-type>%s</metronome-type>%s</metronome-note>";
        String three = "<metronome-tuplet type=\"%s\" bracket=\"yes\"><actual-notes>3</actual-notes><normal-notes>2"
                + "</normal-notes><normal-type>%s</normal-type></metronome-tuplet>";
        String equals = "<metronome-relation>equals</metronome-relation>";
        String swing = note.formatted("eighth", "").repeat(2) + equals + note.formatted("quarter", three.formatted("start",
                "eighth")) + note.formatted("eighth", three.formatted("stop", "eighth"));
        assertEquals("0/1 2:1 of 1/8", read(DIRECTION.formatted("<metronome>" + swing + "</metronome>", "")));
        String dotted = note.formatted("16th", "").repeat(2) + equals
                + note.formatted("16th", "<metronome-dot/>") + note.formatted("32nd", "");
        assertEquals("0/1 3:1 of 1/16", read(DIRECTION.formatted("<metronome>" + dotted + "</metronome>", "")));
        // other equations are none
        String modulation = note.formatted("eighth", "").repeat(2) + equals + note.formatted("quarter", "");
        assertEquals("", read(DIRECTION.formatted("<metronome>" + modulation + "</metronome>", "")));
    }

    @Test
    void whatOnePartSaysHoldsForAll() {
        String bar = "<measure number=\"%d\">%s<note><unpitched/><duration>1</duration><voice>1</voice><type>eighth</type>"
                + "</note><note><unpitched/><duration>1</duration><voice>1</voice><type>eighth</type></note></measure>";
        String first = "<attributes><divisions>2</divisions><time><beats>1</beats><beat-type>4</beat-type></time></attributes>";
        String swing = DIRECTION.formatted(words("Swing"), "");
        String xml = "<score-partwise version=\"4.0\"><part-list><score-part id=\"P1\"><part-name>Bass</part-name></score-part>"
                + "<score-part id=\"P2\"><part-name>Drums</part-name></score-part></part-list><part id=\"P1\">"
                + bar.formatted(1, first) + bar.formatted(2, "") + bar.formatted(3, sound("<straight/>")) + "</part><part id=\"P2\">"
                + bar.formatted(1, first) + bar.formatted(2, swing) + bar.formatted(3, "") + "</part></score-partwise>";
        Score score = Snippets.read(xml);
        for (int part = 0; part < 2; part++) {
            assertEquals("[0/1, 1/8] [0/1, 1/6] [0/1, 1/8]", Timeline.of(score.parts().get(part), Selection.ALL,
                    PulseChoice.BY_METER, null).bars().stream().map(b -> b.attacks().toString()).collect(Collectors.joining(" ")));
        }
    }

    private static String lyrics(String annotated) {
        Matcher lyrics = Pattern.compile("name=\"count\">.*?<text>(.*?)</text>").matcher(annotated);
        List<String> words = new ArrayList<>();
        while (lyrics.find()) {
            words.add(lyrics.group(1).replace("&amp;", "&"));
        }
        return String.join(" | ", words);
    }

    /** Each word stands under the note that sounds where it is said: the second eighth, or the 16th of a dotted pair. */
    @ParameterizedTest(name = "{0}")
    @CsvSource(delimiter = ';', value = {
        "8 8 8 8; 2; 3", "8. 16 8. 16; 2; 3", "8 8 3:2[8 8 8]; 2; 2", "16 16 16 16 8 8; 4; 5", "r8 8 8. 16; 1; 3",
    })
    void lyricsOfASwungBar(String rhythm, int second, int beforeLast) {
        String xml = Snippets.in("2/4").tempo(90).before(sound(ratio("2", "1", ""))).bar(rhythm).xml();
        CountedScore counted = CountedScore.of(ScoreFile.of("swing.musicxml", xml.getBytes(StandardCharsets.UTF_8)),
                CountingOptions.defaults());
        String annotated = Annotator.annotate(counted.file().text(), counted.parts(), Selection.ALL, Unplayed.NONE)
                .toString();
        BarCounts bar = counted.parts().get(0).bars().get(0);
        BarTimeline timeline = bar.timeline();
        List<String> said = new ArrayList<>();
        for (Event event : Snippets.part(annotated).bars().get(0).voices().get(0).events()) {
            event.look().lyrics().forEach(lyric -> said.add(event.start() + lyric.text()));
        }
        List<String> expected = bar.segments().stream().flatMap(s -> s.counts().stream()).filter(Count::played)
                .map(count -> timeline.writtenAt(count.at()) + count.say()).toList();
        assertEquals(expected, said);
        assertEquals(timeline.swung().written().size(), said.size(), lyrics(annotated));
    }

    /** A plan made by hand: the pairs are counted 1 & 2 &, said long and short. */
    private static PartCounts pairs(String xml) {
        PartTimeline part = Timeline.of(Snippets.part(xml), Selection.ALL, PulseChoice.BY_METER, null);
        BarTimeline bar = part.bars().get(0);
        Segment segment = new Segment(Offset.ZERO, bar.bar().end(), Swing.EIGHTH, Segment.Kind.FILL, true, 3, List.of(),
                Swing.EIGHTH, bar.swung());
        List<Count> counts = new ArrayList<>();
        for (int k = 0; k < segment.positions(); k++) {
            counts.add(new Count(segment.position(k), k % 2 == 0 ? String.valueOf(k / 2 + 1) : "&",
                    bar.isAttack(segment.position(k))));
        }
        BarPlan plan = new BarPlan(bar, List.of(segment));
        return new PartCounts(new PartPlan(part, List.of(plan), 0, PlanOptions.DEFAULT),
                countstave.count.CountingSystem.named("numbers"),
                List.of(new BarCounts(plan, List.of(new SegmentCounts(segment, counts)))));
    }

    @Test
    void pairsUnderTheNotes() {
        String xml = Snippets.in("4/4").before(sound(ratio("2", "1", ""))).bar("8 8 8. 16 4 r8 8").xml();
        PartCounts counts = pairs(xml);
        assertTrue(counts.bars().get(0).segments().get(0).counts().stream().filter(Count::played).count() == 6);
        assertEquals("1 | & | 2 | & | 3 (&) | (4) | &",
                lyrics(Annotator.annotate(xml, List.of(counts), Selection.ALL, Unplayed.ALL).toString()));
    }

    /** The count written out as a part of its own has two equal notes for each pair, as the score has. */
    @Test
    void pairsAsAPart() {
        String xml = Snippets.in("2/4").before(sound(ratio("2", "1", ""))).bar("8 8 8. 16").xml();
        String annotated = CountPart.annotate(xml, Snippets.read(xml).parts(), List.of(pairs(xml)), NoteNames.SYMBOLS).toString();
        Score read = Snippets.read(annotated);
        assertEquals("[0/1, 1/8, 1/4, 3/8]", read.parts().get(1).bars().get(0).voices().get(0).events().stream()
                .map(Event::start).toList().toString());
        assertEquals("1 | & | 2 | &", read.parts().get(1).bars().get(0).voices().get(0).events().stream()
                .map(e -> e.look().lyrics().get(0).text()).collect(Collectors.joining(" | ")));
    }
}

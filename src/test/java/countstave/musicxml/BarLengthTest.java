package countstave.musicxml;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import countstave.score.Bar;
import countstave.score.BarStyle;
import countstave.score.Fact;
import countstave.score.Meter;
import countstave.score.Score;
import countstave.testing.Corpus;
import countstave.testing.Snippets;
import countstave.time.Duration;
import java.util.List;
import org.junit.jupiter.api.Test;

/** How long bars are, where they begin in their meter, and which of them are reported. */
class BarLengthTest {

    private static List<String> bars(Score score) {
        return score.parts().get(0).bars().stream().map(b -> b.length() + " from " + b.phase()).toList();
    }

    private static List<Class<?>> kinds(Score score) {
        return score.facts().stream().<Class<?>>map(Fact::getClass).toList();
    }

    @Test
    void shortFirstBarIsAPickupAndTheLastBarMayLackIt() {
        Score score = Snippets.in("4/4").bar("4").bar("1").bar("2.").score();
        assertEquals(List.of("1/4 from 3/4", "1/1 from 0/1", "3/4 from 0/1"), bars(score));
        assertEquals(List.of(), score.facts());
    }

    @Test
    void shortAndOverfullBarsKeepTheirLengthAndAreReported() {
        Score score = Snippets.in("4/4").bar("1").bar("2 8").bar("1").bar("1 16").bar("1").score();
        assertEquals(List.of("1/1 from 0/1", "5/8 from 0/1", "1/1 from 0/1", "17/16 from 0/1", "1/1 from 0/1"), bars(score));
        Meter meter = Meter.of(4, 4);
        assertEquals(List.of(new Fact.Short(new Fact.Place("P1", 1, "2", null, null), Duration.of(5, 8), meter),
                new Fact.VoiceOverfull(new Fact.Place("P1", 3, "4", "1", null), Duration.of(17, 16), Duration.WHOLE, meter),
                new Fact.Overfull(new Fact.Place("P1", 3, "4", null, null), Duration.of(17, 16), meter)), score.facts());
    }

    @Test
    void shortBarsThatMakeUpAFullOneAreASplitBar() {
        Score score = Snippets.in("4/4").bar("1").bar("2 8").bar("4.").bar("1").score();
        assertEquals(List.of("1/1 from 0/1", "5/8 from 0/1", "3/8 from 5/8", "1/1 from 0/1"), bars(score));
        assertEquals(List.of(), score.facts());
    }

    @Test
    void implicitBarInTheMiddleIsAPickup() {
        String xml = Snippets.in("4/4").bar("1").bar("4").bar("1").xml().replace("<measure number=\"2\">",
                "<measure number=\"X1\" implicit=\"yes\">");
        Score score = Snippets.read(xml);
        assertEquals("1/4 from 3/4", bars(score).get(1));
        assertEquals("X1", score.parts().get(0).bars().get(1).number());
        assertEquals(List.of(), score.facts());
    }

    @Test
    void barBeforeARepeatOrTheNextMovementMayLackThePickup() {
        String repeat = "<barline location=\"right\"><bar-style>light-heavy</bar-style>%s</barline>";
        for (String end : List.of("", "<repeat direction=\"backward\"/>")) {
            String xml = Snippets.in("3/4").bar("8").bar("2.").bar("2 8").bar("8").bar("2.").bar("2 8").xml()
                    .replace("<measure number=\"4\">", "<measure number=\"4\" implicit=\"yes\">");
            int third = xml.indexOf("    </measure>", xml.indexOf("number=\"3\""));
            Score score = Snippets.read(xml.substring(0, third) + repeat.formatted(end) + xml.substring(third));
            assertEquals(List.of("1/8 from 5/8", "3/4 from 0/1", "5/8 from 0/1", "1/8 from 5/8", "3/4 from 0/1",
                    "5/8 from 0/1"), bars(score));
            assertEquals(List.of(), score.facts());
        }
    }

    @Test
    void emptyBarOfAnotherPartIsAsShortAsThePickup() {
        String one = Snippets.in("4/4").bar("4").bar("1").xml();
        String other = one.substring(one.indexOf("<part id"), one.indexOf("</score-partwise>")).replace("P1", "P2")
                .replaceFirst("<note>[^§]*?</note>", "<note><rest measure=\"yes\"/><duration>32</duration></note>");
        Score score = Snippets.read(one.replace("</score-partwise>", other + "</score-partwise>"));
        Bar rest = score.parts().get(1).bars().get(0);
        assertEquals("1/4 from 3/4", rest.length() + " from " + rest.phase());
        assertEquals(Duration.QUARTER, rest.voices().get(0).events().get(0).length());
    }

    @Test
    void barOfRestLastsTheBar() {
        Score score = Snippets.in("7/8").bar("R").bar("2.. / R").score();
        assertEquals(List.of("7/8 from 0/1", "7/8 from 0/1"), bars(score));
        assertEquals(Duration.of(7, 8), score.parts().get(0).bars().get(0).voices().get(0).events().get(0).length());
        Score whole = Snippets.read(Snippets.score("3/4", 2,
                "<note><rest/><duration>6</duration><voice>1</voice><type>whole</type></note>"));
        assertTrue(whole.parts().get(0).bars().get(0).voices().get(0).events().get(0).barRest());
        assertEquals(List.of(), whole.facts());
    }

    @Test
    void restsInARowAreNumbered() {
        Score score = Snippets.in("4/4").bar("R").bar("4 4 2").bar("R").bar("R").bar("R").bar("1").score();
        assertEquals(List.of(0, 0, 1, 2, 3, 0),
                score.parts().get(0).bars().stream().map(b -> b.look().style().runNumber()).toList());
    }

    /** MusicXML 4.0: a stop stands in the first bar that is written out again. */
    @Test
    void shorthandRunsFromStartToStop() {
        String style = "<attributes><measure-style>%s</measure-style></attributes>";
        String multi = style.formatted("<multiple-rest>2</multiple-rest>");
        String start = style.formatted("<measure-repeat type=\"start\">1</measure-repeat>");
        String stop = style.formatted("<measure-repeat type=\"stop\"/>");
        String slash = style.formatted("<slash type=\"start\"/>");
        Score score = Snippets.in("4/4").before(multi).bar("R").bar("R").bar("1").before(start).bar("R").bar("R")
                .before(stop).bar("1").before(slash).bar("1").bar("1").score();
        assertEquals(List.of(new BarStyle(BarStyle.Kind.MULTI_REST, 2, 1), new BarStyle(BarStyle.Kind.MULTI_REST, 2, 2),
                BarStyle.NONE, new BarStyle(BarStyle.Kind.MEASURE_REPEAT, 1, 1),
                new BarStyle(BarStyle.Kind.MEASURE_REPEAT, 1, 2), BarStyle.NONE, new BarStyle(BarStyle.Kind.SLASH, 0, 1),
                new BarStyle(BarStyle.Kind.SLASH, 0, 2)),
                score.parts().get(0).bars().stream().map(bar -> bar.look().style()).toList());
    }

    @Test
    void backupBeyondTheStartStopsThere() {
        String note = "<note><unpitched/><duration>%d</duration><voice>%d</voice></note>";
        Score score = Snippets.read(Snippets.score("2/4", 1, note.formatted(2, 1)
                + "<backup><duration>3</duration></backup>" + note.formatted(1, 2) + note.formatted(1, 2)));
        assertEquals(List.of(Fact.BackupTooFar.class), kinds(score));
        assertEquals("0/1", score.parts().get(0).bars().get(0).voices().get(1).events().get(0).start().toString());
    }

    @Test
    void voicesWithoutNamesAreKeptApart() {
        String note = "<note><unpitched/><duration>1</duration></note>";
        Score score = Snippets.read(Snippets.score("2/4", 1, note.repeat(2)
                + "<backup><duration>2</duration></backup>" + note.repeat(2)));
        assertEquals(List.of("1", "2"), score.parts().get(0).bars().get(0).voices().stream().map(v -> v.name()).toList());
    }

    /** Files 46d to 46g of the suite, as their own descriptions say. */
    @Test
    void pickupsOfTheOpenTestSuite() {
        // "a 3/8 pickup measure, a measure that is split into one measure and an implicit measure, an incomplete one"
        Score split = ScoreReader.read(ScoreFile.load(Corpus.score("46d")), ReadOptions.DEFAULT);
        assertEquals(List.of("3/8 from 5/8", "1/2 from 0/1", "1/2 from 1/2", "3/4 from 0/1"), bars(split));
        assertEquals(List.of(Fact.Short.class), kinds(split));
        // "the first and third measures contain only two quarters instead of four"
        Score incomplete = ScoreReader.read(ScoreFile.load(Corpus.score("46f")), ReadOptions.DEFAULT);
        assertEquals(List.of("1/2 from 1/2", "1/1 from 0/1", "1/2 from 0/1", "1/1 from 0/1"), bars(incomplete));
        // "pickup measure with chord names and figured bass"
        Score harmony = ScoreReader.read(ScoreFile.load(Corpus.score("46g")), ReadOptions.DEFAULT);
        assertEquals(List.of("1/4 from 3/4", "1/1 from 0/1"), bars(harmony));
        // "voice 2 should start at 2nd beat of first full measure"
        Score second = ScoreReader.read(ScoreFile.load(Corpus.score("46e")), ReadOptions.DEFAULT);
        assertEquals("1/4", second.parts().get(0).bars().get(1).voices().stream().filter(v -> v.name().equals("2"))
                .findFirst().orElseThrow().events().get(0).start().toString());
    }
}

package countstave.musicxml;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import countstave.score.Bar;
import countstave.score.Direction;
import countstave.score.Fact;
import countstave.score.Meter;
import countstave.score.Score;
import countstave.score.TempoChange;
import countstave.testing.Corpus;
import countstave.testing.Snippets;
import java.util.List;
import org.junit.jupiter.api.Test;

/** Time signatures and tempi as the file writes them. */
class MeterTempoTest {

    private static final String NOTE = "<note><unpitched/><duration>4</duration><voice>1</voice><type>whole</type></note>";

    private static Meter meter(String time) {
        String xml = Snippets.score(null, 1, "<attributes>" + time + "</attributes>" + NOTE);
        return Snippets.part(xml).bars().get(0).meter();
    }

    private static List<String> tempi(String... directions) {
        StringBuilder bar = new StringBuilder();
        for (String direction : directions) {
            bar.append(direction.startsWith("<sound") ? direction
                    : "<direction><direction-type><metronome>" + direction + "</metronome></direction-type></direction>")
                    .append(NOTE.replace(">4<", ">1<").replace("whole", "quarter"));
        }
        return Snippets.part(Snippets.score("4/4", 1, bar.toString())).bars().get(0).markings().tempi().stream()
                .map(t -> t.at() + ": " + t.tempo().unit() + " = " + t.tempo().perMinute()).toList();
    }

    @Test
    void signaturesOfEveryKind() {
        assertEquals("3+2+2/8", meter("<time><beats>3+2+2</beats><beat-type>8</beat-type></time>").toString());
        assertEquals("2/4+3/8", meter("<time><beats>2</beats><beat-type>4</beat-type><beats>3</beats>"
                + "<beat-type>8</beat-type></time>").toString());
        assertTrue(meter("<time><senza-misura/></time>").isSenzaMisura());
        assertEquals("3/4", meter("<time><beats>3</beats><beat-type>4</beat-type><interchangeable><time-relation>equals"
                + "</time-relation><beats>6</beats><beat-type>8</beat-type></interchangeable></time>").toString());
        assertEquals(Meter.Symbol.SINGLE_NUMBER, meter("<time symbol=\"single-number\"><beats>3</beats>"
                + "<beat-type>4</beat-type></time>").symbol());
        assertEquals(Meter.Symbol.DOTTED_NOTE, meter("<time symbol=\"dotted-note\"><beats>2</beats>"
                + "<beat-type>4</beat-type></time>").symbol());
        assertEquals(Meter.Symbol.HIDDEN, meter("<time print-object=\"no\"><beats>3</beats><beat-type>4</beat-type></time>")
                .symbol());
    }

    @Test
    void unreadableSignatureIsReportedAndTheOneBeforeKept() {
        for (String beats : List.of("many", "0", "-3", "3.5", "3+", "99999999999", "")) {
            Score score = Snippets.read(Snippets.score("4/4", 1, NOTE, "<attributes><time><beats>" + beats
                    + "</beats><beat-type>4</beat-type></time></attributes>" + NOTE));
            assertEquals("4/4", score.parts().get(0).bars().get(1).meter().toString(), beats);
            assertEquals(List.of(Fact.BadMeter.class), score.facts().stream().map(Fact::getClass).toList(), beats);
        }
    }

    private static String meters(String file) {
        Score score = ScoreReader.read(ScoreFile.load(Corpus.score(file)), ReadOptions.DEFAULT);
        return score.parts().get(0).bars().stream().map(Bar::meter).toList().toString();
    }

    /** Files 11a to 11h of the suite. */
    @Test
    void signaturesOfTheOpenTestSuite() {
        assertEquals("[2/2, 4/4, 2/2, 3/2, 2/4, 3/4, 4/4, 5/4, 3/8, 6/8, 12/8]", meters("11a"));
        assertEquals("[senza misura]", meters("11b"));
        assertEquals("[3+2/8, 5+3+1/4]", meters("11c"));
        assertEquals("[3/8+2/8+3/4, 5/2+1/8]", meters("11d"));
        assertEquals("[3+2/8+3/4]", meters("11e"));
        assertEquals("[3/8, 3+2/8, 1/8+2/4]", meters("11f"));
        assertEquals("[3/8]", meters("11g"));
        assertEquals("[senza misura]", meters("11h"));
    }

    @Test
    void metronomeMarksWithEveryUnit() {
        assertEquals(List.of("0/1: 3/8 = 60"), tempi("<beat-unit>quarter</beat-unit><beat-unit-dot/><per-minute>60</per-minute>"));
        assertEquals(List.of("0/1: 7/16 = 44.5"), tempi("<beat-unit>quarter</beat-unit><beat-unit-dot/><beat-unit-dot/>"
                + "<per-minute>44.5</per-minute>"));
        assertEquals(List.of("0/1: 5/16 = 50"), tempi("<beat-unit>quarter</beat-unit><beat-unit-tied><beat-unit>16th"
                + "</beat-unit></beat-unit-tied><per-minute>50</per-minute>"));
        assertEquals(List.of("0/1: 1/2 = 96"), tempi("<beat-unit>half</beat-unit><per-minute>c. 96</per-minute>"));
        assertEquals(List.of("0/1: 1/2 = 96"), tempi("<beat-unit>half</beat-unit><per-minute>96-100</per-minute>"));
        assertEquals(List.of(), tempi("<beat-unit>half</beat-unit><per-minute>ad lib.</per-minute>"));
        assertEquals(List.of(), tempi("<beat-unit>half</beat-unit><per-minute>0</per-minute>"));
    }

    /** What the player reads is what is counted, whatever an exporter plays at the same place. */
    @Test
    void thePrintedMarkWinsOverThePlaybackTempo() {
        String metronome = "<metronome%s><beat-unit>quarter</beat-unit><beat-unit-dot/><per-minute>60</per-minute></metronome>";
        String mark = "<direction><direction-type>" + metronome + "</direction-type>%s</direction>";
        String both = mark.formatted("", "<sound tempo=\"%s\"/>");
        assertEquals("3/8 = 60", first(both.formatted("90.00")));
        assertEquals("3/8 = 60", first(both.formatted("120")));
        // beside each other, in either order
        assertEquals("3/8 = 60", first("<sound tempo=\"120\"/>" + mark.formatted("", "")));
        assertEquals("3/8 = 60", first(mark.formatted("", "") + "<sound tempo=\"120\"/>"));
        // a mark that is not printed is none; where it says the same, its unit is kept
        String hidden = mark.formatted(" print-object=\"no\"", "<sound tempo=\"%s\"/>");
        assertEquals("1/4 = 120", first(hidden.formatted("120")));
        assertEquals("3/8 = 60", first(hidden.formatted("90")));
        assertEquals("3/8 = 60", first(mark.formatted(" print-object=\"no\"", "")));
        assertEquals(List.of("0/1: 1/4 = 97.3"), tempi("<sound tempo=\"97.30\"/>"));
        assertEquals(List.of(), tempi("<sound tempo=\"-5\"/>"));
    }

    private static String first(String before) {
        TempoChange first = Snippets.part(Snippets.score("4/4", 1, before + NOTE)).bars().get(0).markings().tempi().get(0);
        return first.tempo().unit() + " = " + first.tempo().perMinute();
    }

    /** Of a relation between two values the playback tempo says what comes of it. */
    @Test
    void aModulationWithAPlaybackTempo() {
        assertEquals("1/4 = 132", first("<direction><direction-type><metronome><beat-unit>quarter</beat-unit><beat-unit>quarter"
                + "</beat-unit><beat-unit-dot/></metronome></direction-type><sound tempo=\"132\"/></direction>"));
    }

    @Test
    void modulationHandsTheSpeedToTheNewValue() {
        assertEquals(List.of("0/1: 1/4 = 90", "1/4: 3/8 = 90"), tempi("<sound tempo=\"90\"/>",
                "<beat-unit>quarter</beat-unit><beat-unit>quarter</beat-unit><beat-unit-dot/>"));
        // at quarter = 60 there are 80 dotted eighths a minute
        String dotted = "<metronome-note><metronome-type>eighth</metronome-type><metronome-dot/></metronome-note>";
        String equals = "<metronome-relation>equals</metronome-relation>";
        String quarter = "<metronome-note><metronome-type>quarter</metronome-type></metronome-note>";
        assertEquals(List.of("0/1: 1/4 = 60", "1/4: 1/4 = 80"),
                tempi("<sound tempo=\"60\"/>", dotted + equals + quarter));
        // two quarters for one half: nothing changes
        assertEquals(List.of("0/1: 1/4 = 60"), tempi("<sound tempo=\"60\"/>", quarter + quarter + equals
                + quarter.replace("quarter", "half")));
    }

    @Test
    void modulationWithoutATempoBeforeItStartsFromTheAssumedOne() {
        assertEquals(List.of("0/1: 1/4 = 90", "1/4: 3/8 = 90"), tempi("<beat-unit>quarter</beat-unit>"
                + "<per-minute>slow</per-minute>", "<beat-unit>quarter</beat-unit><beat-unit>quarter</beat-unit>"
                + "<beat-unit-dot/>"));
    }

    @Test
    void tempoOfOnePartHoldsForAll() {
        String one = Snippets.rhythm("4/4", "1", "1");
        String xml = one.replace("</score-part>", "</score-part><score-part id=\"P2\"><part-name>Bass</part-name></score-part>")
                .replace("</part>\n</score-partwise>", "</part><part id=\"P2\"><measure number=\"1\"><attributes><divisions>1"
                        + "</divisions></attributes>" + NOTE + "</measure><measure number=\"2\"><sound tempo=\"77\"/>" + NOTE
                        + "</measure></part></score-partwise>");
        Score score = Snippets.read(xml);
        assertEquals("Bass", score.parts().get(1).name());
        for (int part = 0; part < 2; part++) {
            List<Bar> bars = score.parts().get(part).bars();
            assertEquals(0, bars.get(0).markings().tempi().size());
            assertEquals("77", bars.get(1).markings().tempi().get(0).tempo().perMinute().toPlainString());
        }
    }

    @Test
    void directionsAreKept() {
        String direction = "<direction placement=\"below\"><direction-type>%s</direction-type></direction>";
        Bar bar = Snippets.part(Snippets.score("4/4", 1, direction.formatted("<words>Slower</words><words> now</words>")
                + direction.formatted("<dynamics><mf/></dynamics>") + direction.formatted("<rehearsal>B</rehearsal>")
                + direction.formatted("<segno/>") + direction.formatted("<wedge type=\"crescendo\"/>")
                + direction.formatted("<octave-shift type=\"up\"/>") + NOTE)).bars().get(0);
        assertEquals(List.of("WORDS Slower now", "DYNAMICS mf", "REHEARSAL B", "SEGNO ", "LINE wedge",
                "LINE octave-shift"), bar.directions().stream().map(d -> d.kind() + " " + d.text()).toList());
        assertEquals(countstave.score.Placement.BELOW, bar.directions().get(0).placement());
        assertEquals(Direction.Kind.WORDS, bar.directions().get(0).kind());
    }
}

package countstave.musicxml;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTimeoutPreemptively;
import static org.junit.jupiter.api.Assertions.assertTrue;

import countstave.score.Fact;
import countstave.score.Score;
import countstave.score.ScoreException;
import countstave.testing.Snippets;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Files that are broken or mean harm end in one clear line, or are read as far as they can be. */
class HostileInputTest {

    private static final String NOTE = "<note><unpitched/><duration>%s</duration><voice>1</voice><type>quarter</type></note>";

    private static Score read(String xml) {
        return assertTimeoutPreemptively(Duration.ofSeconds(60), () -> Snippets.read(xml));
    }

    private static String refused(String xml) {
        String message = assertTimeoutPreemptively(Duration.ofSeconds(60),
                () -> assertThrows(ScoreException.class, () -> Snippets.read(xml)).getMessage());
        assertFalse(message.chars().anyMatch(c -> c < ' ' || c >= 0x7F && c <= 0x9F), message);
        assertTrue(message.length() < 400, message);
        return message;
    }

    private static String bar(String contents) {
        return Snippets.score("4/4", 1, contents);
    }

    private static void says(String part, String message) {
        assertTrue(message.contains(part), message);
    }

    /** XML 1.0, 2.4: "]]>" may stand in text only as the end of a CDATA section; wherever the parser's buffer ends. */
    @Test
    void endOfASectionInText() {
        int place = bar("<!---->]]>").indexOf("]]>");
        // the parser overlooks it at characters 4126 and 4127
        for (int at = 4_100; at < 4_150; at++) {
            String before = "<!--" + "x".repeat(at - place) + "-->";
            says("not well-formed XML", refused(bar(before + "]]>" + NOTE.formatted(4))));
        }
        String harmless = "<!-- ]]> --><?x ]]>?><listening name=']]>'/><x><![CDATA[a]]></x><x>]]&gt;</x>"
                + "<x><![CDATA[]]]]><![CDATA[>]]></x>";
        assertEquals(1, read(bar(harmless + NOTE.formatted(4))).parts().get(0).bars().get(0).voices().get(0).events().size());
    }

    /** A short text for a very long number, where a key's or a chord's alteration stands. */
    @Test
    void endlessAlterations() {
        for (String number : List.of("1e999999999", "1e-999999999", "-1e999999999")) {
            String key = "<attributes><key><key-step>C</key-step><key-alter>" + number + "</key-alter></key></attributes>";
            String chord = "<harmony><root><root-step>C</root-step><root-alter>" + number + "</root-alter></root>"
                    + "<kind>major</kind></harmony>";
            Score score = read(bar(key + chord + NOTE.formatted(4)));
            assertEquals(1, score.parts().get(0).bars().get(0).voices().get(0).events().size(), number);
        }
    }

    @Test
    void notAScore() {
        says("not well-formed XML", refused("hello"));
        says("not a MusicXML score", refused("<html><body/></html>"));
        says("an opus", refused("<opus/>"));
        says("no parts", refused("<score-partwise/>"));
        says("part P1: it has no bars", refused("<score-partwise><part id=\"P1\"/></score-partwise>"));
        String good = bar(NOTE.formatted(4));
        String cut = refused(good.substring(0, good.indexOf("</note>")));
        says("ends in the middle", cut);
        says("line 12", cut);
        says("line ", refused(good.replace("</note>", "</not>")));
        says("well-formed", refused(good + "<again/>"));
        says("well-formed", refused(good.replace("<unpitched/>", "<unpitched/>\u0001")));
    }

    @Test
    void entitiesAreNeverExpandedNorFetched(@TempDir Path folder) throws Exception {
        Path secret = folder.resolve("secret.txt");
        Files.writeString(secret, "SECRET");
        String good = bar(NOTE.formatted(4)).replaceAll("<!DOCTYPE[^>]*>", "");
        String head = "<?xml version=\"1.0\" encoding=\"UTF-8\"?>";
        StringBuilder bomb = new StringBuilder("<!DOCTYPE score-partwise [<!ENTITY a0 \"ha\">");
        for (int i = 1; i < 40; i++) {
            bomb.append("<!ENTITY a").append(i).append(" \"&a").append(i - 1).append(";&a").append(i - 1).append(";\">");
        }
        String bombed = good.replace(head, head + bomb + "]>").replace("<part-name>Drums", "<part-name>&a39;");
        says("an entity is used that is not read here", refused(bombed));
        String external = good.replace(head, head + "<!DOCTYPE score-partwise [<!ENTITY x SYSTEM \"" + secret.toUri()
                + "\">]>").replace("<part-name>Drums", "<part-name>&x;");
        assertFalse(refused(external).contains("SECRET"));
        // declared and not used: nothing happens
        assertEquals(1, read(good.replace(head, head + bomb + "]>")).parts().size());
        String parameter = good.replace(head, head + "<!DOCTYPE score-partwise [<!ENTITY % p SYSTEM \"" + secret.toUri()
                + "\"> %p;]>");
        assertEquals(1, read(parameter).parts().size());
        String include = good.replace("<part-name>Drums", "<part-name><xi:include xmlns:xi=\"http://www.w3.org/2001/"
                + "XInclude\" href=\"" + secret.toUri() + "\" parse=\"text\"/>Drums");
        assertEquals("Drums", read(include).parts().get(0).name());
    }

    @Test
    void builtBeyondMeasure() {
        says("beyond all measure", refused(bar("<x>".repeat(5000) + "</x>".repeat(5000))));
        says("beyond all measure", refused(bar("<note x=\"" + "a".repeat(10_000_000) + "\"/>")));
        String many = "";
        for (int i = 0; i < 1000; i++) {
            many += " a" + i + "=\"\"";
        }
        says("beyond all measure", refused(bar("<note" + many + "/>")));
        // endless digits cost no time
        says("cannot be right", refused(bar(NOTE.formatted("9".repeat(3_000_000)))));
        Score digits = read(bar(NOTE.formatted("4")).replace("</note>", "<staff>" + "8".repeat(1_000_000) + "</staff></note>"));
        assertEquals(1, digits.parts().get(0).staves());
    }

    @Test
    void divisionsThatCannotBe() {
        for (String divisions : List.of("0", "-4", "1e30", "0.0")) {
            String message = refused(bar(NOTE.formatted(4)).replace("<divisions>1<", "<divisions>" + divisions + "<"));
            says("part P1, bar 1: divisions are", message);
        }
        // not a number at all: as if it were missing
        Score score = read(bar(NOTE.formatted(3)).replace("<divisions>1<", "<divisions>many<"));
        assertEquals("1/4", score.parts().get(0).bars().get(0).length().toString());
    }

    @Test
    void durationsThatCannotBe() {
        for (String duration : List.of("99999999999999999999", "1e999999999", "1e18", "5000")) {
            says("part P1, bar 1: a duration of", refused(bar(NOTE.formatted(duration))));
        }
        says("part P1, bar 1: the bar is longer", refused(bar(NOTE.formatted(900).replace("quarter", "").repeat(2))));
        says("cannot be kept exactly", refused(bar(NOTE.formatted("1") + primes())));
        for (String duration : List.of("-1", "0", "x", "")) {
            Score score = read(bar(NOTE.formatted(duration) + NOTE.formatted(1)));
            assertEquals("1/2", score.parts().get(0).bars().get(0).length().toString(), duration);
            assertEquals(Fact.BadDuration.class, score.facts().get(0).getClass(), duration);
        }
        for (String jump : List.of("backup", "forward")) {
            for (String duration : List.of("-1", "0", "x")) {
                Score score = read(bar(NOTE.formatted(1) + "<" + jump + "><duration>" + duration + "</duration></" + jump
                        + ">" + NOTE.formatted(1)));
                assertEquals("1/2", score.parts().get(0).bars().get(0).length().toString());
                assertEquals(Fact.BadDuration.class, score.facts().get(0).getClass());
            }
        }
    }

    /** Divisions of many large primes: the common denominator leaves 64 bits. */
    private static String primes() {
        StringBuilder bar = new StringBuilder();
        for (int prime : new int[] {999_999_937, 999_999_929, 999_999_893, 999_999_883}) {
            bar.append("<attributes><divisions>").append(prime).append("</divisions></attributes>")
                    .append("<note><unpitched/><duration>1000001</duration></note>");
        }
        return bar.toString();
    }

    @Test
    void strayThingsAreReadOver() {
        String note = "<note><future/><unpitched><colour>red</colour></unpitched><duration>1</duration><voice>1</voice>"
                + "<type>quaver</type><dot/><stem>sideways</stem><staff>-1</staff><beam number=\"77\">x</beam>"
                + "<notations><tuplet/><tied/><ornaments><tremolo>99</tremolo></ornaments></notations></note>";
        Score score = read(bar("<novelty><note/></novelty>" + note + "<note/>" + "<direction/><attributes/><sound/><barline/>"));
        assertEquals(2, score.parts().get(0).bars().get(0).voices().get(0).events().size());
        assertEquals("1/4", score.parts().get(0).bars().get(0).length().toString());
    }

    @Test
    void nothingFromTheFileReachesTheTerminalAsACommand() {
        String csi = "\u009b31m";
        Score score = read(bar(NOTE.formatted(5)).replace("Drums", "Dr" + csi + "ums\u202e").replace("number=\"1\"",
                "number=\"1" + csi + "\""));
        assertEquals("Dr\ufffd31mums\ufffd", score.parts().get(0).name());
        assertEquals("1\ufffd31m", score.parts().get(0).bars().get(0).number());
        says("part P1, bar 1\ufffd31m", refused(bar(NOTE.formatted(5)).replace("<divisions>1<", "<divisions>0<")
                .replace("number=\"1\"", "number=\"1" + csi + "\"")));
        assertEquals("snippet", score.title());
    }

    @Test
    void partsWithoutIdOrTwiceTheSame() {
        String xml = bar(NOTE.formatted(4));
        String part = xml.substring(xml.indexOf("<part id"), xml.indexOf("</score-partwise>"));
        assertEquals(List.of("P1", "P1-2"), read(xml.replace(part, part + part)).parts().stream().map(p -> p.id()).toList());
        assertEquals("P1", read(xml.replace("<part id=\"P1\">", "<part>")).parts().get(0).id());
        assertEquals("Q9", read(xml.replace("<part id=\"P1\">", "<part id=\"Q9\">")).parts().get(0).name());
    }

    @Test
    void timewiseScoreIsTheSameScore() {
        String one = Snippets.rhythm("4/4", "4 4 3:2[8 8 8] 4", "8 8 2.");
        Score partwise = Snippets.read(one);
        String first = one.substring(one.indexOf("<measure number=\"1\">") + 20, one.indexOf("</measure>"));
        String second = one.substring(one.indexOf("<measure number=\"2\">") + 20, one.lastIndexOf("</measure>"));
        String timewise = one.substring(0, one.indexOf("<part id")).replace("score-partwise", "score-timewise")
                + "<measure number=\"1\"><part id=\"P1\">" + first + "</part></measure><measure number=\"2\"><part id=\"P1\">"
                + second + "</part></measure></score-timewise>";
        Score read = Snippets.read(timewise);
        assertEquals(withoutSpots(partwise), withoutSpots(read));
    }

    private static String withoutSpots(Score score) {
        return score.toString().replaceAll("SourceSpot\\[[^]]*]", "");
    }

    @Test
    void bytesOfAnyKindGiveOneLine() {
        for (byte[] bytes : List.of(new byte[] {0}, new byte[] {'P', 'K', 3, 4, 0, 0}, new byte[] {(byte) 0xFF, (byte) 0xFE},
                "<?xml version=\"1.0\" encoding=\"\"?><a/>".getBytes(StandardCharsets.US_ASCII),
                new byte[] {(byte) 0xFE, (byte) 0xFF, 0}, "\u0000<\u0000".getBytes(StandardCharsets.US_ASCII))) {
            ScoreException refused = assertThrows(ScoreException.class,
                    () -> ScoreReader.read(ScoreFile.of("x", bytes), ReadOptions.DEFAULT));
            assertFalse(refused.getMessage().contains("\n"));
        }
    }

    /** Found by spoiled scores (docs/fuzzing.md). */
    @Test
    void whatMutantsFound() throws Exception {
        String good = bar(NOTE.formatted(1));
        // the binding lets these through
        says("not a number", refused(bar(NOTE.formatted(1).replace("</note>",
                "<beam number=\"many\">begin</beam></note>"))));
        // staves for more octaves than there are would be drawn without end
        Score high = read(bar(NOTE.formatted(1).replace("<unpitched/>",
                "<pitch><step>C</step><octave>2147483647</octave></pitch>")));
        assertEquals(9, high.parts().get(0).bars().get(0).voices().get(0).events().get(0).heads().get(0).pitch().octave());
        // names stand in every message
        Score named = read(good.replace("<part-name>Drums", "<part-name>" + "Drums".repeat(900)));
        assertEquals(200, named.parts().get(0).name().length());
        // another program's hand: a mark within a mark
        String mark = "<lyric><?countstave?><text><?countstave?>1</text></lyric>";
        assertEquals(good, OwnMarks.strip(good.replace("</note>", mark + "</note>")));
        says("no list of parts", assertThrows(ScoreException.class,
                () -> ScorePlaces.of(good.replace("part-list>", "part-lost>"))).getMessage());
    }

    /** A day in the zip that no calendar has. */
    @Test
    void impossibleDayInACompressedScore() {
        byte[] packed = ScoreFile.of("day.musicxml", bar(NOTE.formatted(1)).getBytes(StandardCharsets.UTF_8)).toMxl();
        // ZIP application note, local file header: signature, version, flags, method, time (at 10), date (at 12)
        packed[12] = (byte) 0xE0;
        packed[13] = (byte) 0xFF;
        assertTrue(ScoreFile.of("day.mxl", packed).text().contains("score-partwise"));
    }
}

package countstave.json;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNull;
import static org.junit.jupiter.api.Assertions.assertTrue;

import countstave.count.HandPlans;
import countstave.count.PartCounts;
import countstave.count.TestPlans;
import countstave.score.PartTimeline;
import countstave.score.Tempo;
import countstave.testing.JsonTree;
import countstave.time.Duration;
import countstave.time.Offset;
import java.io.IOException;
import java.io.StringWriter;
import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;

class JsonWriterTest {

    private static String write(String title, PartCounts... parts) throws IOException {
        StringWriter out = new StringWriter();
        JsonWriter.write(title, "a.musicxml", List.of(parts), out);
        return out.toString();
    }

    @SuppressWarnings("unchecked")
    private static Map<String, Object> map(Object value) {
        return (Map<String, Object>) value;
    }

    private static Map<String, Object> in(Object value, Object... path) {
        Object here = value;
        for (Object step : path) {
            here = step instanceof Integer index ? ((List<?>) here).get(index) : map(here).get(step);
        }
        return map(here);
    }

    /** The example of the contract (docs/json.md), value by value. */
    @Test
    void theContract() throws IOException {
        PartCounts counts = TestPlans.part("Snare").tempo(new Tempo(Duration.QUARTER, new BigDecimal("96.0")))
                .bar("4/4", "1/4").attacks("0/1", "1/12", "1/6", "1/4", "1/2", "3/4")
                .fill("1/12", "1/4").fill("1/4", "1/1").end().counts("numbers");
        Object json = JsonTree.read(write("Demo", counts));
        assertEquals(List.of("schema", "score", "parts"), List.copyOf(map(json).keySet()));
        assertEquals("countstave/2", map(json).get("schema"));
        assertEquals(Map.of("title", "Demo", "source", "a.musicxml"), in(json, "score"));
        Map<String, Object> part = in(json, "parts", 0);
        assertEquals(List.of("id", "name", "system", "bars"), List.copyOf(part.keySet()));
        assertEquals("P1 Snare numbers", part.get("id") + " " + part.get("name") + " " + part.get("system"));
        Map<String, Object> bar = in(part, "bars", 0);
        assertEquals(List.of("index", "number", "meter", "length", "beats", "tempo", "attacks", "segments"),
                List.copyOf(bar.keySet()));
        assertEquals(BigDecimal.ZERO, bar.get("index"));
        assertEquals("1 4/4 1/1", bar.get("number") + " " + bar.get("meter") + " " + bar.get("length"));
        assertEquals(List.of("0/1", "1/4", "1/2", "3/4"), bar.get("beats"));
        assertEquals(Map.of("unit", "1/4", "perMinute", new BigDecimal("96")), bar.get("tempo"));
        assertEquals(List.of("0/1", "1/12", "1/6", "1/4", "1/2", "3/4"), bar.get("attacks"));
        Map<String, Object> segment = in(bar, "segments", 0);
        assertEquals(List.of("start", "end", "unit", "kind", "change", "rate", "counts"), List.copyOf(segment.keySet()));
        assertEquals("0/1 1/4 1/12 fill true 4.8", String.join(" ", List.of("start", "end", "unit", "kind", "change", "rate")
                .stream().map(k -> segment.get(k).toString()).toList()));
        assertEquals(List.of(Map.of("at", "0/1", "say", "1", "played", true), Map.of("at", "1/12", "say", "trip", "played", true),
                Map.of("at", "1/6", "say", "let", "played", true)), segment.get("counts"));
    }

    private static Map<String, Object> bar(PartCounts counts) throws IOException {
        return in(JsonTree.read(write("t", counts)), "parts", 0, "bars", 0);
    }

    /**
     * By hand: eighths said, a 16th after 1 and one of three 16th-triplets before 2 felt. The coarsest grid that holds
     * 0, 1/16, 1/8 and 5/24 is 1/48.
     */
    @Test
    void feltNotesAreListedWithTheGridOfAllNotes() throws IOException {
        PartTimeline timeline = TestPlans.part("S").bar("2/4", "1/4").attacks("0/1", "1/16", "1/8", "5/24", "1/4").end()
                .plan().timeline();
        Map<String, Object> bar = bar(HandPlans.counts(timeline, "1/8..1/4 1/4"));
        Map<String, Object> segment = in(bar, "segments", 0);
        assertEquals(List.of("start", "end", "unit", "kind", "change", "rate", "grid", "felt", "counts"),
                List.copyOf(segment.keySet()));
        assertEquals("1/8 1/48", segment.get("unit") + " " + segment.get("grid"));
        assertEquals(List.of("1/16", "5/24"), segment.get("felt"));
        assertEquals(List.of(Map.of("at", "0/1", "say", "1", "played", true), Map.of("at", "1/8", "say", "&", "played", true)),
                segment.get("counts"));
        assertEquals(List.of("start", "end", "unit", "kind", "change", "rate", "counts"),
                List.copyOf(in(bar, "segments", 1).keySet()), "nothing is felt here");
        assertEquals(bar.get("attacks"), attacks(bar));
    }

    /** By hand, 2:1: the second eighth of a pair sounds at 2/3 of the quarter; the felt 16th stays where it is. */
    @Test
    void aSwungBarHasItsSoundingAndItsWrittenPlaces() throws IOException {
        PartTimeline straight = TestPlans.part("S").bar("2/4", "1/4").attacks("0/1", "1/8", "1/4", "3/8", "7/16").end()
                .plan().timeline();
        Map<String, Object> bar = bar(HandPlans.counts(HandPlans.swing(straight, "1/8", 2, 1), "swung:1/8"));
        assertEquals(List.of("index", "number", "meter", "length", "beats", "tempo", "attacks", "written", "segments"),
                List.copyOf(bar.keySet()));
        assertEquals(List.of("0/1", "1/6", "1/4", "5/12", "7/16"), bar.get("attacks"));
        assertEquals(List.of("0/1", "1/8", "1/4", "3/8", "7/16"), bar.get("written"));
        Map<String, Object> segment = in(bar, "segments", 0);
        assertEquals("1/8 2:1 1/48", segment.get("unit") + " " + segment.get("swing") + " " + segment.get("grid"));
        assertEquals(List.of("0/1", "1/6", "1/4", "5/12"),
                ((List<?>) segment.get("counts")).stream().map(c -> map(c).get("at")).toList());
        assertEquals(List.of("1", "&", "2", "&"),
                ((List<?>) segment.get("counts")).stream().map(c -> map(c).get("say")).toList());
        assertEquals(bar.get("attacks"), attacks(bar));
    }

    /** What a reader of the contract finds played: the counts that are, and what is felt, in order. */
    private static List<String> attacks(Map<String, Object> bar) {
        List<Offset> found = new ArrayList<>();
        for (Object segment : (List<?>) bar.get("segments")) {
            ((List<?>) map(segment).get("counts")).stream().filter(c -> map(c).get("played").equals(true))
                    .forEach(c -> found.add(Offset.parse((String) map(c).get("at"))));
            if (map(segment).get("felt") instanceof List<?> felt) {
                felt.forEach(at -> found.add(Offset.parse((String) at)));
            }
        }
        return found.stream().sorted().map(Offset::toString).toList();
    }

    @Test
    void irregularMetersCarryTheirGroups() throws IOException {
        PartCounts counts = TestPlans.part("Snare").groups("3+2+2/8", 3, 2, 2).attackEvery("1/8").fill("1/8").counts("numbers");
        Map<String, Object> bar = in(JsonTree.read(write("t", counts)), "parts", 0, "bars", 0);
        assertEquals(List.of("0/1", "3/8", "5/8"), bar.get("groups"));
        assertEquals("3+2+2/8", bar.get("meter"));
        PartCounts regular = TestPlans.part("Snare").bar("2/4", "1/4").fill("1/4").counts("numbers");
        assertNull(in(JsonTree.read(write("t", regular)), "parts", 0, "bars", 0).get("groups"));
    }

    @Test
    void aPickupListsItsOwnBeatsOnly() throws IOException {
        PartCounts counts = TestPlans.part("S").bar("2/4", "1/4").pickup("3/8").attacks("0/1").fill("1/8").counts("numbers");
        assertEquals(List.of("1/8"), in(JsonTree.read(write("t", counts)), "parts", 0, "bars", 0).get("beats"));
    }

    @Test
    void severalParts() throws IOException {
        PartCounts counts = TestPlans.part("A").bar("2/4", "1/4").fill("1/4").counts("numbers");
        Object json = JsonTree.read(write("t", counts, counts));
        assertEquals(2, ((List<?>) map(json).get("parts")).size());
        assertEquals(List.of(), map(JsonTree.read(write("t"))).get("parts"));
    }

    /** RFC 8259, section 7: what must be escaped; and nothing a terminal would obey passes either. */
    @Test
    void textsAreEscaped() throws IOException {
        String title = "a\"b\\c\n\r\t\u0000\u001b[31m\u007f\u009b\u2028 \u00e9 \ud834\udd1e";
        String text = write(title);
        assertEquals(title, in(JsonTree.read(text), "score").get("title"));
        assertTrue(text.codePoints().noneMatch(c -> Character.isISOControl(c) && c != '\n'));
        assertTrue(text.contains("\\u2028"), "some readers take it for the end of a line");
        assertTrue(text.contains("\ud834\udd1e"), "a whole pair stays as it is");
    }

    @Test
    void numbersNeverExplode() throws IOException {
        for (String perMinute : List.of("96.5", "1E+3", "1E999999", "1E-999999", "120.00")) {
            PartCounts counts = TestPlans.part("A").tempo(new Tempo(Duration.QUARTER, new BigDecimal(perMinute)))
                    .bar("2/4", "1/4").fill("1/4").counts("numbers");
            String json = write("t", counts);
            assertTrue(json.length() < 2000);
            assertEquals(0, new BigDecimal(perMinute).compareTo(
                    (BigDecimal) in(JsonTree.read(json), "parts", 0, "bars", 0, "tempo").get("perMinute")));
        }
    }
}

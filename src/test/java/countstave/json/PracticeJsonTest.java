package countstave.json;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import countstave.CountedScore;
import countstave.practice.DayOptions;
import countstave.practice.Passage;
import countstave.practice.Plans;
import countstave.practice.PracticePlan;
import countstave.practice.Seam;
import countstave.practice.Stage;
import countstave.practice.StepCount;
import countstave.practice.Stretch;
import countstave.testing.Snippets;
import java.io.IOException;
import java.math.BigDecimal;
import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Every figure of the JSON plan against an example that is worked out by hand, and its texts against the plan. */
@SuppressWarnings("unchecked")
class PracticeJsonTest {

    private static final String SIXTEENTHS = "16 16 16 16 16 16 16 16 16 16 16 16 16 16 16 16";
    private static final String TRIPLETS = "3:2[8 8 8] 3:2[8 8 8] 3:2[8 8 8] 3:2[8 8 8]";

    private static Map<String, Object> json(CountedScore counted) throws IOException {
        StringBuilder out = new StringBuilder();
        PracticeJson.write(counted.score().title(), counted.score().source(), Plans.of(counted), 10, DayOptions.DEFAULT, out);
        return (Map<String, Object>) TinyJson.read(out.toString());
    }

    private static Map<String, Object> map(Object from, String... keys) {
        Object at = from;
        for (String key : keys) {
            at = ((Map<String, Object>) at).get(key);
        }
        return (Map<String, Object>) at;
    }

    private static List<Object> list(Object from, String key) {
        return (List<Object>) ((Map<String, Object>) from).get(key);
    }

    private static Object part(Map<String, Object> json) {
        return list(json, "parts").get(0);
    }

    /** The count of the written tempo. */
    private static Object count(Object passage) {
        List<Object> counts = list(passage, "counts");
        return counts.get(counts.size() - 1);
    }

    private static void figures(Map<String, Object> figures, int changes, double perBar, double peak, double fastest,
            int rarity, double distance, double difficulty, int sayable) {
        assertEquals(changes, number(figures, "changes"), 0);
        assertEquals(perBar, number(figures, "changesPerBar"), 6e-5);
        assertEquals(peak, number(figures, "peak"), 6e-5);
        assertEquals(fastest, number(figures, "fastest"), 6e-5);
        assertEquals(rarity, number(figures, "rarity"), 0);
        assertEquals(distance, number(figures, "distance"), 6e-5);
        assertEquals(difficulty, number(figures, "difficulty"), 6e-5);
        assertEquals(sayable, number(figures, "sayableTempo"), 0);
    }

    private static double number(Object from, String key) {
        return ((BigDecimal) ((Map<String, Object>) from).get(key)).doubleValue();
    }

    /**
     * By hand, ♩ = 120: a bar of sixteenths (8 a second), a bar of eighth-triplets (6 a second). One change from 1/16 to
     * 1/12, ratio 3:4, distance log₂ 12 = 3.585. Rarity 1 (threes). Sixteenths can be said to 6.5 · 60 / 4 = 97.5, so 97;
     * triplets to 6.5 · 60 / 3 = 130. Difficulty: 1/2 + 3 · 8/6.5 + 1 + 3.585/2.
     */
    @Test
    void figuresOfTwoBars() throws IOException {
        Map<String, Object> json = json(Plans.everyNoteSaid(Snippets.in("4/4").tempo(120).bar(SIXTEENTHS).bar(TRIPLETS).xml()));
        assertEquals("countstave-practice/3", json.get("schema"));
        assertEquals("test.musicxml", map(json, "score").get("source"));
        Object part = part(json);
        assertEquals("P1", map(part).get("id"));
        assertEquals("numbers", map(part).get("system"));
        assertEquals(6.5, number(part, "voiceLimit"));
        assertEquals(6, number(part, "breathSeconds"));
        assertEquals(false, map(part).get("tempoAssumed"));
        double distance = Math.log(12) / Math.log(2);
        figures(map(part, "whole"), 1, 0.5, 8, 8, 1, distance, 0.5 + 24 / 6.5 + 1 + distance / 2, 97);
        assertEquals(1, list(part, "passages").size());
        Object passage = list(part, "passages").get(0);
        assertEquals(1, number(passage, "rank"));
        assertEquals(0, number(passage, "sameAs"));
        assertEquals(0, number(map(passage, "first"), "index"));
        assertEquals("1", map(passage, "first").get("number"));
        assertEquals(1, number(map(passage, "last"), "index"));
        assertEquals("2", map(passage, "last").get("number"));
        assertEquals("1/4", map(passage, "tempo").get("unit"));
        assertEquals(120, number(map(passage, "tempo"), "perMinute"));
        figures(map(passage, "figures"), 1, 0.5, 8, 8, 1, distance, 0.5 + 24 / 6.5 + 1 + distance / 2, 97);
        List<Object> bars = list(passage, "bars");
        figures(map(bars.get(0), "figures"), 0, 0, 8, 8, 0, 0, 24 / 6.5, 97);
        figures(map(bars.get(1), "figures"), 0, 0, 6, 6, 1, 0, 18 / 6.5 + 1, 130);
    }

    /**
     * By hand: from half of 120, steps of 5 to 8 % on whole numbers; five clean repeats at the ends, three between; up to
     * 97 all of it can be said, above it half the grid, 4 a second at 120 (all sixteenths are played, so stage 2 says as much as stage 1).
     */
    @Test
    void ladderOfTwoBars() throws IOException {
        Object passage = list(part(json(Plans.everyNoteSaid(
                Snippets.in("4/4").tempo(120).bar(SIXTEENTHS).bar(TRIPLETS).xml()))), "passages").get(0);
        List<Object> ladder = list(passage, "ladder");
        assertEquals(60, number(ladder.get(0), "perMinute"));
        assertEquals(120, number(ladder.get(ladder.size() - 1), "perMinute"));
        for (int i = 0; i < ladder.size(); i++) {
            double tempo = number(ladder.get(i), "perMinute");
            assertEquals(tempo, Math.rint(tempo));
            boolean end = i == 0 || i == ladder.size() - 1;
            assertEquals(end ? 5 : 3, number(ladder.get(i), "clean"));
            assertEquals(tempo <= 97 ? "all" : "half", map(ladder.get(i)).get("stage"), () -> "at " + tempo);
            if (i > 0) {
                double step = tempo / number(ladder.get(i - 1), "perMinute");
                assertTrue(step >= 1.0499 && step <= 1.0801, () -> "a step of " + step);
            }
        }
    }

    /** By hand: at the slowest step, ♩ = 60, each bar lasts 4 s, both 8 s: one breath at the barline, after 4 s. */
    @Test
    void breathOfTwoBars() throws IOException {
        Object passage = list(part(json(Plans.everyNoteSaid(
                Snippets.in("4/4").tempo(120).bar(SIXTEENTHS).bar(TRIPLETS).xml()))), "passages").get(0);
        assertEquals(1, list(count(passage), "breaths").size());
        Map<String, Object> breath = map(list(count(passage), "breaths").get(0));
        assertEquals(1, number(breath, "index"));
        assertEquals("2", breath.get("number"));
        assertEquals("0/1", breath.get("at"));
        assertEquals(4, number(breath, "seconds"));
        assertEquals("barline", breath.get("reason"));
    }

    /** By hand, for 4/4 in sixteenths, then triplets: 16 + 12 said, all played, then 8 + 4, then the 8 beats, then 1 and 3, then none. */
    @Test
    void stagesOfTwoBars() throws IOException {
        Object passage = list(part(json(Plans.everyNoteSaid(
                Snippets.in("4/4").tempo(120).bar(SIXTEENTHS).bar(TRIPLETS).xml()))), "passages").get(0);
        List<Object> stages = list(count(passage), "stages");
        assertEquals(List.of("all", "half", "beats", "strong-beats", "none"),
                stages.stream().map(s -> map(s).get("id")).toList());
        int[] said = {28, 12, 8, 4, 0};
        for (int i = 0; i < said.length; i++) {
            List<Object> counts = list(stages.get(i), "counts");
            assertEquals(28, counts.size());
            assertTrue(counts.stream().allMatch(c -> map(c).get("played").equals(true)));
            assertEquals(said[i], counts.stream().filter(c -> map(c).get("said").equals(true)).count());
        }
        // the words: common practice (facts.md, table of systems), positions by arithmetic
        List<Object> all = list(stages.get(0), "counts");
        assertEquals("1 e & a 2 e & a 3 e & a 4 e & a 1 trip let 2 trip let 3 trip let 4 trip let",
                all.stream().map(c -> (String) map(c).get("say")).collect(Collectors.joining(" ")));
        assertEquals("0/1 1/16 1/8 3/16", all.stream().limit(4).map(c -> (String) map(c).get("at"))
                .collect(Collectors.joining(" ")));
        assertEquals("0/1 1/12 1/6 1/4", all.stream().skip(16).limit(4).map(c -> (String) map(c).get("at"))
                .collect(Collectors.joining(" ")));
        assertEquals(List.of("1", "3", "1", "3"), list(stages.get(3), "counts").stream()
                .filter(c -> map(c).get("said").equals(true)).map(c -> map(c).get("say")).toList());
    }

    /** By hand, ♩ = 70, dotted eighths with sixteenths: of sixteen counts, the beats and the "a" of 1 and 2 are said. */
    @Test
    void feltPositionsStayInThePlan() throws IOException {
        Object passage = list(part(json(Plans.everyNoteSaid(
                Snippets.in("4/4").tempo(70).bar("8. 16 8. 16 4 4").xml()))), "passages").get(0);
        List<Object> counts = list(list(count(passage), "stages").get(1), "counts");
        assertEquals(16, counts.size());
        assertEquals("1 a 2 a 3 4", counts.stream().filter(c -> map(c).get("said").equals(true))
                .map(c -> (String) map(c).get("say")).collect(Collectors.joining(" ")));
        assertEquals(6, counts.stream().filter(c -> map(c).get("played").equals(true)).count());
    }

    /** A score without a tempo is practised at ♩ = 90, and the plan says that this is assumed. */
    @Test
    void anAssumedTempoIsSaid() throws IOException {
        Object part = part(json(Plans.everyNoteSaid(Snippets.in("4/4").bar("4 4 4 4").bar("8 8 4 4 4").xml())));
        assertEquals(true, map(part).get("tempoAssumed"));
        assertEquals(90, number(map(list(part, "passages").get(0), "tempo"), "perMinute"));
    }

    /** By hand, ♩ = 152: 16ths up to 97, above it eighths; each count with its steps, its words and what is felt in it. */
    @Test
    void aCountForEachTempo() throws IOException {
        StringBuilder out = new StringBuilder();
        CountedScore counted = Plans.countedXml(Snippets.in("2/4").tempo(152).bar("16 16 16 16 8 16 16").xml());
        PracticeJson.write("t", "s", List.of(Plans.by(counted, tempo -> tempo <= 97 ? "1/16" : "1/8")), 10, DayOptions.DEFAULT, out);
        Object passage = list(part((Map<String, Object>) TinyJson.read(out.toString())), "passages").get(0);
        List<Object> ladder = list(passage, "ladder");
        assertEquals("1 1 1 1 2 2 2 2 2 2 2 2",
                ladder.stream().map(r -> map(r).get("count").toString()).collect(Collectors.joining(" ")));
        List<Object> counts = list(passage, "counts");
        assertEquals(List.of("number", "from", "to", "felt", "breaths", "stages"), List.copyOf(map(counts.get(1)).keySet()));
        assertEquals("76 92 98 152", map(counts.get(0)).get("from") + " " + map(counts.get(0)).get("to") + " "
                + map(counts.get(1)).get("from") + " " + map(counts.get(1)).get("to"));
        assertEquals(List.of(), list(counts.get(0), "felt"));
        assertEquals(List.of("1/16", "3/16", "7/16"),
                list(counts.get(1), "felt").stream().map(f -> map(f).get("at")).toList());
        assertEquals("1 & 2 &", list(list(counts.get(1), "stages").get(0), "counts").stream()
                .map(c -> (String) map(c).get("say")).collect(Collectors.joining(" ")));
    }

    /** The demo scores: what the file says is what the plan holds. */
    @ParameterizedTest
    @ValueSource(strings = {"dense", "song"})
    void theFileHoldsThePlan(String score) throws IOException {
        CountedScore counted = Plans.counted(score);
        List<Object> parts = list(json(counted), "parts");
        List<PracticePlan> plans = Plans.of(counted);
        assertEquals(plans.size(), parts.size());
        for (int p = 0; p < plans.size(); p++) {
            List<Object> passages = list(parts.get(p), "passages");
            assertEquals(plans.get(p).passages().size(), passages.size());
            for (int i = 0; i < passages.size(); i++) {
                Passage passage = plans.get(p).passages().get(i);
                Stretch stretch = passage.stretch();
                assertEquals(stretch.timeline(0).bar().number(), map(passages.get(i), "first").get("number"));
                assertEquals(passage.sameAs(), number(passages.get(i), "sameAs"));
                assertEquals(passage.figures().difficulty(), number(map(passages.get(i), "figures"), "difficulty"), 6e-5);
                assertEquals(stretch.size(), list(passages.get(i), "bars").size());
                theFileHoldsTheSeams(passage, list(passages.get(i), "seams"));
                List<Object> written = list(passages.get(i), "counts");
                assertEquals(passage.counts().size(), written.size());
                for (StepCount count : passage.counts()) {
                    theFileHoldsTheCount(count, written.get(count.number() - 1));
                }
            }
        }
    }

    private static void theFileHoldsTheSeams(Passage passage, List<Object> written) {
        assertEquals(passage.seams().stream().map(Seam::name).toList(), written.stream().map(s -> map(s).get("name")).toList());
        for (int i = 0; i < written.size(); i++) {
            Seam seam = passage.seams().get(i);
            assertEquals(seam.figures().sum(), number(written.get(i), "difficulty"), 6e-5);
            assertEquals(seam.at().toString(), map(written.get(i)).get("at"));
            assertEquals(seam.loops().stream().map(l -> l.size().id()).toList(),
                    list(written.get(i), "loops").stream().map(l -> map(l).get("size")).toList());
        }
    }

    /**
     * By hand: 16ths, on beat 3 of the second bar a five, so two seams. The first piece goes from beat 2 to the end of beat
     * 3; its last, three bars, ends with the third, at 1/1 of it. Speed 5/4.
     */
    @Test
    void seamsAndDays() throws IOException {
        String xml = Snippets.in("4/4").tempo(60).bar(SIXTEENTHS).bar("16 16 16 16 16 16 16 16 5:4[16 16 16 16 16] 16 16 16 16")
                .bar(SIXTEENTHS).xml();
        Object part = part(json(Plans.countedXml(xml)));
        Object seam = list(list(part, "passages").get(0), "seams").get(0);
        assertEquals("1a", map(seam).get("name"));
        assertEquals("5/4", map(seam).get("speed"));
        assertEquals("16ths", map(seam).get("before"));
        assertEquals("quintuplets", map(seam).get("after"));
        assertEquals("beat", map(seam).get("place"));
        List<Object> loops = list(seam, "loops");
        assertEquals(Map.of("index", BigDecimal.ONE, "at", "1/4"), map(map(loops.get(0)).get("from")));
        assertEquals(Map.of("index", BigDecimal.ONE, "at", "3/4"), map(map(loops.get(0)).get("to")));
        assertEquals("1/1", map(map(loops.get(loops.size() - 1)).get("to")).get("at"));
        List<Object> days = list(map(part).get("dayPlan"), "days");
        assertEquals(14, days.size());
        assertEquals(true, map(days.get(6)).get("rest"));
        assertEquals("new-seam", map(list(days.get(0), "items").get(0)).get("kind"));
        assertEquals(30, list(days.get(0), "items").stream().mapToDouble(item -> number(item, "minutes")).sum());
    }

    private static void theFileHoldsTheCount(StepCount count, Object written) {
        assertEquals(count.number(), number(written, "number"));
        assertEquals(count.from().perMinute().doubleValue(), number(written, "from"));
        assertEquals(count.to().perMinute().doubleValue(), number(written, "to"));
        assertEquals(count.breaths().size(), list(written, "breaths").size());
        assertEquals(count.stretch().slices().stream().mapToInt(s -> s.segment().felt().size()).sum(),
                list(written, "felt").size());
        List<Object> stages = list(written, "stages");
        assertEquals(count.stages().stream().map(Stage::id).toList(), stages.stream().map(s -> map(s).get("id")).toList());
        for (Stage stage : count.stages()) {
            Object here = stages.get(count.stages().indexOf(stage));
            assertEquals(count.sayable().get(stage), (int) number(here, "sayableTempo"));
            List<Object> counts = list(here, "counts");
            assertEquals(Plans.said(count, stage).stream().map(s -> s.replaceFirst("^\\^", "")).toList(),
                    counts.stream().filter(c -> map(c).get("said").equals(true)).map(c -> map(c).get("say")).toList());
        }
    }
}

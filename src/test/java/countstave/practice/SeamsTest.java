package countstave.practice;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import countstave.count.HandPlans;
import countstave.count.NoteNames;
import countstave.count.PartCounts;
import countstave.grid.Bars;
import countstave.score.Meter;
import countstave.score.PartTimeline;
import countstave.testing.Snippets;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import java.util.function.Function;
import org.junit.jupiter.api.Test;

/** Seams, worked out by hand. */
class SeamsTest {

    private static final String PLAIN = "16 16 16 16 16 16 16 16 16 16 16 16 16 16 16 16";

    private static List<Seam> seams(int tempo, String... bars) {
        PracticePlan plan = PracticePlan.of(Parts.of(Meter.of(4, 4), tempo, bars), PracticeOptions.DEFAULT);
        return plan.passages().stream().flatMap(p -> p.seams().stream()).toList();
    }

    private static List<String> loops(Seam seam) {
        return seam.loops().stream().map(l -> l.size().id() + " " + l.from() + " " + l.to()).toList();
    }

    /**
     * Three bars; in the second the third beat is a five. By hand: the change to the five is on beat 3 of bar 2, at 3/2
     * from the start. Two beats: beats 2 and 3, from 5/4 to 7/4; one more on either side: beats 1 to 4, from 1 to 2, which
     * is the bar, so that the bar is no piece of its own; with its neighbours all three bars.
     */
    @Test
    void theChangeToAFive() {
        List<Seam> seams = seams(60, PLAIN, "16 16 16 16 16 16 16 16 5:4[16 16 16 16 16] 16 16 16 16", PLAIN);
        assertEquals(2, seams.size());
        Seam five = seams.get(0);
        assertEquals("1a", five.name());
        assertEquals("2", five.barNumber());
        assertEquals("1/2", five.at().toString());
        assertEquals(List.of("two-beats 5/4 7/4", "beat-more 1/1 2/1", "neighbours 0/1 3/1"), loops(five));
        assertEquals("Bar 2, beat 3: the quintuplets come right after the 16ths, ×5/4 faster.",
                SeamWords.of(five, NoteNames.SYMBOLS));
        // back again on beat 4: beats 3 and 4, then 2 to 4 and the first beat of bar 3, then the bar, then its neighbours
        assertEquals(List.of("two-beats 3/2 2/1", "beat-more 5/4 9/4", "bar 1/1 2/1", "neighbours 0/1 3/1"), loops(seams.get(1)));
        assertEquals("Bar 2, beat 4: the 16ths come right after the quintuplets, ×4/5, slower.",
                SeamWords.of(seams.get(1), NoteNames.SYMBOLS));
    }

    /** log₂ 5/4 = 0.32, another family 2, on a beat 0.5, fives are 2 of 4, so 1: 3.82. */
    @Test
    void difficultyByHand() {
        Seam five = seams(60, PLAIN, "16 16 16 16 16 16 16 16 5:4[16 16 16 16 16] 16 16 16 16", PLAIN).get(0);
        assertEquals(0.3219, five.figures().jump(), 1e-4);
        assertEquals(3.8219, five.figures().sum(), 1e-4);
        assertEquals(new Seam.Difficulty(five.figures().jump(), true, Seam.Place.BEAT, 2), five.figures());
    }

    /** Over a barline the two beats lie in two bars, and so does "the bar". */
    @Test
    void overABarline() {
        String fives = "5:4[16 16 16 16 16] 5:4[16 16 16 16 16] 5:4[16 16 16 16 16] 5:4[16 16 16 16 16]";
        List<Seam> seams = seams(60, PLAIN, PLAIN, fives, fives);
        assertEquals(1, seams.size());
        assertEquals("3", seams.get(0).barNumber());
        assertEquals(Seam.Place.BARLINE, seams.get(0).figures().place());
        // wherever the passages are cut, the bars around begin with bar 1 or 2: from the change on it is the same
        Seam seam = seams.get(0);
        var change = seam.around().position(seam.bar(), seam.at());
        assertEquals("-1/4 1/4", seam.loops().get(0).from().minus(change) + " " + seam.loops().get(0).to().minus(change));
        assertEquals("-1/2 1/2", seam.loops().get(1).from().minus(change) + " " + seam.loops().get(1).to().minus(change));
        assertEquals("-1/1 1/1", seam.loops().get(2).from().minus(change) + " " + seam.loops().get(2).to().minus(change));
    }

    /** The same two beats elsewhere are no seam of their own: its bar is named instead. */
    @Test
    void noSeamTwice() {
        String bar = "16 16 16 16 16 16 16 16 5:4[16 16 16 16 16] 16 16 16 16";
        List<Seam> seams = seams(60, bar, PLAIN, PLAIN, bar);
        assertEquals(2, seams.size());
        seams.forEach(seam -> assertEquals(1, seam.also().size(), seam.toString()));
    }

    /**
     * 16ths, 8ths, 16ths, 8ths, 16ths, two bars each, cut by rehearsal marks: nothing changes before bar 1, but bars 5 and 9,
     * with which its like begin, come after 8ths. The change is a seam, and the passage is not left to be read at sight.
     */
    @Test
    void aChangeWithWhichOnlyAnAlikePassageBegins() {
        String eighths = "8 8 8 8 8 8 8 8";
        String mark = "<direction><direction-type><rehearsal>A</rehearsal></direction-type></direction>";
        String xml = Snippets.in("4/4").tempo(50).bar(PLAIN).bar(PLAIN)
                .before(mark).bar(eighths).bar(eighths).before(mark).bar(PLAIN).bar(PLAIN)
                .before(mark).bar(eighths).bar(eighths).before(mark).bar(PLAIN).bar(PLAIN).xml();
        PracticePlan plan = Plans.of(Plans.countedXml(xml)).get(0);
        assertEquals(List.of("1–2 0", "5–6 1", "9–10 1", "3–4 0", "7–8 4"),
                plan.passages().stream().map(p -> p.stretch().numbers() + " " + p.sameAs()).toList());
        List<Seam> seams = plan.passages().stream().flatMap(p -> p.seams().stream()).toList();
        assertEquals(List.of("1a 5 [9]", "4a 3 [7]"), seams.stream().map(s -> s.name() + " " + s.barNumber() + " " + s.also()).toList());
        // 3.3 words a second are less than six tenths of 6.5
        assertTrue(plan.passages().get(0).isAtSight());
        assertEquals(List.of(1, 4), plan.different().stream().map(Passage::rank).toList());
        assertEquals(List.of(), plan.atSight());
    }

    /** In 7/8 as 2+2+3 what is felt as a beat are the groups: a change on the second eighth is inside one, on the third not. */
    @Test
    void aChangeInsideAGroupIsInsideABeat() {
        String sixteenths = "16 16 16 16 16 16 16 16 16 16 16 16 16 16";
        Function<PartTimeline, PartCounts> planning = t -> HandPlans.counts(t, "1/8..1/8 1/16", "1/8..1/4 1/16");
        PracticePlan plan = Plans.by(planning.apply(Bars.of(Meter.of(7, 8), 60, sixteenths, sixteenths)), planning);
        List<Seam> seams = Seams.of(plan.passages().get(0).atWritten());
        assertEquals(List.of("1 1/8 INSIDE_BEAT", "2 0/1 BARLINE", "2 1/4 BEAT"),
                seams.stream().map(s -> s.barNumber() + " " + s.at() + " " + s.figures().place()).toList());
    }

    /** A tuplet is never cut: the loop goes from its start to its end. By hand: 5:4 over the bar at 100 is counted 1 to 5. */
    @Test
    void aTupletIsNeverCut() {
        List<Seam> seams = seams(100, "4 4 4 4", "4 4 4 4", "5:4[4 4 4 4 4]", "4 4 4 4");
        assertTrue(seams.size() >= 2);
        for (Seam seam : seams) {
            for (Seam.Loop loop : seam.loops()) {
                for (var slice : seam.around().slices()) {
                    if (slice.segment().isSpan()) {
                        assertTrue(!loop.from().isAfter(slice.start()) || !loop.from().isBefore(slice.end()), loop::toString);
                        assertTrue(!loop.to().isAfter(slice.start()) || !loop.to().isBefore(slice.end()), loop::toString);
                    }
                }
            }
        }
    }

    /** On the demo scores: hardest first, names once each, every change of every count in one seam or another. */
    @Test
    void ofTheDemoScores() {
        for (String score : List.of("dense", "polyrhythms", "groove", "meters", "song")) {
            for (PracticePlan plan : Plans.of(Plans.counted(score))) {
                Set<String> names = new HashSet<>();
                for (Passage passage : plan.passages()) {
                    double before = Double.MAX_VALUE;
                    for (Seam seam : passage.seams()) {
                        assertTrue(names.add(seam.name()), seam::name);
                        assertTrue(seam.figures().sum() <= before);
                        before = seam.figures().sum();
                        Seam.Loop last = null;
                        for (Seam.Loop loop : seam.loops()) {
                            assertTrue(loop.from().isBefore(loop.to()));
                            last = loop;
                        }
                        assertTrue(!last.from().isAfter(seam.loops().get(0).from()) && !last.to().isBefore(seam.loops().get(0).to()));
                    }
                }
            }
        }
    }

    @Test
    void letters() {
        assertEquals(List.of("a", "z", "aa", "az", "ba"), List.of(Seams.letter(0), Seams.letter(25), Seams.letter(26),
                Seams.letter(51), Seams.letter(52)));
    }
}

package countstave.grid;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import countstave.score.BarTimeline;
import countstave.score.Beat;
import countstave.score.Meter;
import countstave.score.PartTimeline;
import countstave.score.Tuplet;
import countstave.score.VoiceAttacks;
import countstave.time.Duration;
import countstave.time.Offset;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Random;
import java.util.Set;
import java.util.TreeSet;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** What must hold of every plan, over generated bars; a fixed seed, so that a failure can be repeated. */
class PlannerPropertyTest {

    private static final String[] BEATS = {
        "4", "8 8", "8. 16", "16 8.", "16 16 8", "16 8 16", "8 16 16", "16 16 16 16", "r4", "r8 8", "3:2[8 8 8]",
        "3:2[4 8]", "3:2[8 r8 8]", "5:4[16 16 16 16 16]", "5:4[8 16 8]", "6:4[16 16 16 16 16 16]",
        "7:4[16 16 16 16 16 16 16]", "8 3:2[16 16 16]", "32 32 16 8", "3:2[8 8 3:2[16 16 16]]"};
    private static final String[] HALVES = {
        "3:2[4 4 4]", "5:4[8 8 8 8 8]", "3:2[4 5:4[16 16 16 16 16] 4]", "2", "4. 8", "8 4 8", "7:4[8 8 8 8 8 8 8]"};

    private static String bar(Random random) {
        StringBuilder bar = new StringBuilder();
        for (int beat = 0; beat < 4; ) {
            if (beat % 2 == 0 && random.nextInt(4) == 0) {
                bar.append(HALVES[random.nextInt(HALVES.length)]).append(' ');
                beat += 2;
            } else {
                bar.append(BEATS[random.nextInt(BEATS.length)]).append(' ');
                beat++;
            }
        }
        return bar.toString();
    }

    private static String[] bars(Random random, int count) {
        String[] bars = new String[count];
        for (int i = 0; i < count; i++) {
            bars[i] = bar(random);
        }
        return bars;
    }

    @ParameterizedTest
    @ValueSource(ints = {50, 72, 100, 160})
    void everyAttackIsSaidOrFeltAndSegmentsFillTheBar(int tempo) {
        Random random = new Random(tempo);
        for (int round = 0; round < 100; round++) {
            String[] rhythms = bars(random, 6);
            PartPlan plan = Planner.plan(Bars.of(Meter.of(4, 4), tempo, rhythms), PlanOptions.DEFAULT);
            Duration before = null;
            for (BarPlan bar : plan.bars()) {
                Set<Offset> attacks = new HashSet<>(bar.timeline().attacks());
                Offset at = Offset.ZERO;
                for (Segment segment : bar.segments()) {
                    assertEquals(at, segment.start(), rhythms[0]);
                    assertEquals(!segment.unit().equals(before), segment.change());
                    assertTrue(segment.end().minus(segment.start()).isMultipleOf(segment.unit()));
                    Set<Offset> said = new HashSet<>();
                    for (int k = 0; k < segment.positions(); k++) {
                        said.add(segment.position(k));
                    }
                    assertEquals(bar.timeline().attacks().stream()
                            .filter(a -> a.isWithin(segment.start(), segment.end()) && !said.contains(a)).toList(), segment.felt());
                    for (Offset felt : segment.felt()) {
                        assertTrue(felt.minus(segment.start()).isMultipleOf(segment.grid()));
                    }
                    assertTrue(segment.unit().isMultipleOf(segment.grid()));
                    attacks.removeAll(said);
                    segment.felt().forEach(attacks::remove);
                    if (!segment.isSpan()) {
                        for (Beat beat : bar.timeline().beats()) {
                            if (beat.start().isWithin(segment.start(), segment.end())) {
                                assertTrue(beat.start().minus(segment.start()).isMultipleOf(segment.unit()));
                            }
                        }
                    }
                    at = segment.end();
                    before = segment.unit();
                }
                assertEquals(bar.timeline().bar().end(), at);
                assertTrue(attacks.isEmpty(), () -> "not counted: " + attacks + " in " + String.join(" | ", rhythms));
            }
        }
    }

    /** Where every note is said nothing is felt, at whatever speed. */
    @ParameterizedTest
    @ValueSource(ints = {72, 160, 240})
    void nothingIsFeltWhereAllIsSaid(int tempo) {
        Random random = new Random(500 + tempo);
        PlanOptions all = new PlanOptions(Weights.DEFAULT, PlanOptions.DEFAULT_VOICE_LIMIT, false, false);
        for (int round = 0; round < 50; round++) {
            for (BarPlan bar : Planner.plan(Bars.of(Meter.of(4, 4), tempo, bars(random, 4)), all).bars()) {
                assertTrue(bar.segments().stream().noneMatch(Segment::hasFelt));
            }
        }
    }

    private static final String[] SMALL = {"4 4", "8 8 4", "16 16 16 16 4", "3:2[8 8 8] 4", "3:2[4 4 4]", "8. 16 8 8", "r4 16 8.",
        "5:4[16 16 16 16 16] 8 8", "8 4 8", "r2", "4 3:2[8 8 8]", "5:4[8 8 8 8 8]", "32 32 16 8 4", "8 3:2[16 16 16] 4",
        "6:4[16 16 16 16 16 16] 4", "4 7:4[16 16 16 16 16 16 16]", "3:2[r8 8 8] 8 8", "7:4[8 8 8 8 8 8 8]"};
    private static final String[] DOTTED = {"4. 4.", "8 8 8 4 8", "8 16 16 8 4.", "2:3[8 8] 8 8 8", "16 16 16 16 16 16 4.", "r2.",
        "4:3[8 8 8 8] 4.", "4 8 4 8"};

    /** Compared with trying out every sequence of units, written independently of the search. */
    @ParameterizedTest
    @ValueSource(ints = {45, 60, 100, 152})
    void costsWhatTryingEverythingFinds(int tempo) {
        Random random = new Random(7 + tempo);
        for (int round = 0; round < 40; round++) {
            String[] rhythms = {pick(random, SMALL), pick(random, SMALL), pick(random, SMALL)};
            costsTheLeast(Bars.of(Meter.of(2, 4), tempo, rhythms), String.join(" | ", rhythms));
            String[] dotted = {pick(random, DOTTED), pick(random, DOTTED)};
            costsTheLeast(Bars.of(Meter.of(6, 8), tempo, dotted), String.join(" | ", dotted));
        }
    }

    /** The same of two voices, so that one may be felt against the other. */
    @ParameterizedTest
    @ValueSource(ints = {60, 88, 132})
    void costsWhatTryingEverythingFindsOfTwoVoices(int tempo) {
        Random random = new Random(70 + tempo);
        int against = 0;
        for (int round = 0; round < 40; round++) {
            String[] hands = {pick(random, SMALL), pick(random, SMALL)};
            String[] feet = {pick(random, SMALL), pick(random, SMALL)};
            PartTimeline both = together(Bars.of(Meter.of(2, 4), tempo, hands), Bars.of(Meter.of(2, 4), tempo, feet));
            costsTheLeast(both, String.join(" | ", hands) + " against " + String.join(" | ", feet));
            for (BarPlan bar : Planner.plan(both, PlanOptions.DEFAULT).bars()) {
                against += bar.segments().stream().mapToInt(s -> s.felt().size()).sum();
            }
        }
        assertTrue(against > 0, "something is felt");
    }

    private static String pick(Random random, String[] all) {
        return all[random.nextInt(all.length)];
    }

    private static void costsTheLeast(PartTimeline part, String what) {
        PlanOptions options = PlanOptions.DEFAULT;
        assertEquals(new EveryPlan(part, options).least(), Planner.plan(part, options).cost(), what);
    }

    /** Two parts as two voices of one. */
    static PartTimeline together(PartTimeline one, PartTimeline other) {
        List<BarTimeline> bars = new ArrayList<>();
        for (int b = 0; b < one.bars().size(); b++) {
            BarTimeline x = one.bars().get(b);
            BarTimeline y = other.bars().get(b);
            TreeSet<Offset> attacks = new TreeSet<>(x.attacks());
            attacks.addAll(y.attacks());
            List<VoiceAttacks> lines = new ArrayList<>(x.lines());
            y.lines().forEach(line -> lines.add(new VoiceAttacks(1, "2", line.attacks())));
            List<Tuplet> tuplets = new ArrayList<>(x.tuplets());
            tuplets.addAll(y.tuplets());
            bars.add(new BarTimeline(x.bar(), x.beats(), false, List.copyOf(attacks), lines, tuplets, x.tempi(), null));
        }
        return new PartTimeline(one.part(), bars, false);
    }

    @ParameterizedTest
    @ValueSource(ints = {72, 120})
    void explanationsAddUpAndNameDearerPlans(int tempo) {
        Random random = new Random(3);
        for (int round = 0; round < 30; round++) {
            PartTimeline part = Bars.of(Meter.of(4, 4), tempo, bars(random, 5));
            PartPlan plan = Planner.plan(part, PlanOptions.DEFAULT);
            long sum = 0;
            int b = 0;
            for (Explanation why : Explanation.of(part, PlanOptions.DEFAULT)) {
                assertTrue(why.extra() >= 0);
                assertNotEquals(plan.bars().get(b++).segments(), why.other());
                assertEquals(why.bar().bar().end(), why.other().get(why.other().size() - 1).end());
                assertEquals(why.cost(), why.terms().values().stream().mapToLong(t -> t).sum());
                sum += why.cost();
            }
            assertEquals(plan.cost(), sum);
        }
    }
}

package countstave.grid;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import countstave.score.BarTimeline;
import countstave.score.Beat;
import countstave.score.Meter;
import countstave.score.PartTimeline;
import countstave.score.Tuplet;
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
    void everyAttackLiesOnItsSegmentsGridAndSegmentsFillTheBar(int tempo) {
        Random random = new Random(tempo);
        for (int round = 0; round < 200; round++) {
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
                    for (int k = 0; k < segment.positions(); k++) {
                        attacks.remove(segment.position(k));
                    }
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

    /** A run of one unit over whole beats is never finer than its attacks and beats ask for. */
    @ParameterizedTest
    @ValueSource(ints = {50, 72, 100})
    void noCoarserGridWouldCoverARun(int tempo) {
        Random random = new Random(1000 + tempo);
        for (int round = 0; round < 200; round++) {
            String[] rhythms = bars(random, 4);
            PartPlan plan = Planner.plan(Bars.of(Meter.of(4, 4), tempo, rhythms), PlanOptions.DEFAULT);
            checkRuns(plan.bars(), rhythms);
        }
    }

    private static void checkRuns(List<BarPlan> bars, String[] rhythms) {
        Duration covering = null;
        Duration unit = null;
        for (BarPlan bar : bars) {
            for (Segment segment : bar.segments()) {
                if (segment.isSpan() || !segment.unit().equals(unit)) {
                    assertNotCoarser(covering, unit, rhythms);
                    covering = Duration.ZERO;
                    unit = segment.isSpan() ? null : segment.unit();
                }
                if (segment.isSpan()) {
                    assertEquals(segment.unit(), CoveringGrid.unit(segment.start(), segment.end(),
                            bar.timeline().attacks()), "a span count of a full tuplet is its covering grid");
                    continue;
                }
                // measured from the beat and dividing it, since a count keeps the beat's phase
                Offset from = bar.timeline().beatAt(segment.start()).start();
                List<Offset> held = new ArrayList<>(bar.timeline().attacks().stream()
                        .filter(a -> a.isWithin(segment.start(), segment.end())).toList());
                held.add(segment.start());
                bar.timeline().beats().forEach(b -> held.add(b.start()));
                covering = covering.gcd(bar.timeline().beatAt(segment.start()).length())
                        .gcd(CoveringGrid.unit(from, segment.end(), held));
            }
        }
        assertNotCoarser(covering, unit, rhythms);
    }

    private static void assertNotCoarser(Duration covering, Duration unit, String[] rhythms) {
        if (unit != null) {
            assertFalse(covering.isLongerThan(unit),
                    () -> "counted in " + unit + ", covered by " + covering + ": " + String.join(" | ", rhythms));
        }
    }

    /** Compared with trying out every sequence of units, written independently of the search. */
    @ParameterizedTest
    @ValueSource(ints = {60, 100})
    void costsWhatTryingEverythingFinds(int tempo) {
        Random random = new Random(7 + tempo);
        String[] small = {"4 4", "8 8 4", "16 16 16 16 4", "3:2[8 8 8] 4", "3:2[4 4 4]", "8. 16 8 8", "r4 16 8.",
            "5:4[16 16 16 16 16] 8 8", "8 4 8", "r2", "4 3:2[8 8 8]", "5:4[8 8 8 8 8]"};
        for (int round = 0; round < 30; round++) {
            String[] rhythms = {small[random.nextInt(small.length)], small[random.nextInt(small.length)]};
            PartTimeline part = Bars.of(Meter.of(2, 4), tempo, rhythms);
            assertEquals(new EveryPlan(part).least(), Planner.plan(part, PlanOptions.DEFAULT).cost(),
                    () -> String.join(" | ", rhythms));
        }
    }

    @ParameterizedTest
    @ValueSource(ints = {72})
    void explanationsNameDearerPlans(int tempo) {
        Random random = new Random(3);
        for (int round = 0; round < 50; round++) {
            PartTimeline part = Bars.of(Meter.of(4, 4), tempo, bars(random, 5));
            long sum = 0;
            for (Explanation why : Explanation.of(part, PlanOptions.DEFAULT)) {
                assertTrue(why.extra() >= 0 && why.otherUnit() != null);
                sum += why.cost();
            }
            assertEquals(Planner.plan(part, PlanOptions.DEFAULT).cost(), sum);
        }
    }

    /** All plans of a short part by plain recursion over cuts; only the weights are shared with the planner. */
    private static final class EveryPlan {

        private final List<BarTimeline> bars;
        private final Weights w = Weights.DEFAULT;
        private long best = Long.MAX_VALUE;

        EveryPlan(PartTimeline part) {
            bars = part.bars();
        }

        long least() {
            go(0, Offset.ZERO, null, 0);
            return best;
        }

        private void go(int b, Offset at, Duration before, long cost) {
            if (cost >= best) {
                return;
            }
            if (b == bars.size()) {
                best = cost;
                return;
            }
            BarTimeline bar = bars.get(b);
            if (at.equals(bar.bar().end())) {
                go(b + 1, Offset.ZERO, before, cost);
                return;
            }
            TreeSet<Offset> cuts = new TreeSet<>(bar.attacks());
            bar.beats().forEach(x -> cuts.add(x.start()));
            bar.tuplets().forEach(t -> {
                cuts.add(t.start());
                cuts.add(t.end());
            });
            cuts.add(bar.bar().end());
            Offset next = cuts.higher(at);
            Beat beat = bar.beatAt(at);
            for (int d = 1; d <= 16; d++) {
                Duration unit = beat.length().dividedBy(d);
                if (at.minus(beat.start()).isMultipleOf(unit) && next.minus(beat.start()).isMultipleOf(unit)) {
                    long n = next.minus(at).floorOver(unit);
                    long extra = (n - (bar.attacks().contains(at) ? 1 : 0)) * w.unplayed() + (d > 9 ? n : 0) * w.rareDivision();
                    go(b, next, unit, cost + extra + speed(bar, unit, n) + change(before, unit, bar, at));
                }
            }
            for (Tuplet t : bar.tuplets()) {
                long hidden = bar.beats().stream().filter(x -> x.start().isAfter(t.start()) && x.start().isBefore(t.end())).count();
                if (t.start().equals(at) && hidden > 0 && bar.attacks().stream().filter(a -> a.isWithin(t.start(), t.end()))
                        .allMatch(a -> a.minus(t.start()).isMultipleOf(t.unit()))) {
                    long n = t.ratio().actual();
                    long played = bar.attacks().stream().filter(a -> a.isWithin(t.start(), t.end())).count();
                    go(b, t.end(), t.unit(), cost + (n - played) * w.unplayed() + hidden * w.hiddenBeat()
                            + speed(bar, t.unit(), n) + change(before, t.unit(), bar, at));
                }
            }
        }

        private long speed(BarTimeline bar, Duration unit, long n) {
            return bar.tempo().rate(unit) > 6.5 ? n * w.tooFast() : 0;
        }

        private long change(Duration before, Duration unit, BarTimeline bar, Offset at) {
            if (before == null || before.equals(unit)) {
                return 0;
            }
            boolean family = before.isMultipleOf(unit) || unit.isMultipleOf(before);
            boolean onBeat = bar.beats().stream().anyMatch(x -> x.start().equals(at));
            return (family ? w.sameFamily() : w.otherFamily()) + (onBeat ? 0 : w.offBeat());
        }
    }
}

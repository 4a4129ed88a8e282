package countstave.grid;

import countstave.score.BarTimeline;
import countstave.score.Beat;
import countstave.score.PartTimeline;
import countstave.score.Tuplet;
import countstave.score.VoiceAttacks;
import countstave.time.Duration;
import countstave.time.Offset;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;

/**
 * All plans of a short part by plain recursion over its cuts. It shares the weights and the measured limits with the planner,
 * and no other line: every position is worked out as a fraction, nothing is remembered but what was said before.
 */
final class EveryPlan {

    private static final int DIVISIONS = 16;

    /** What is said, and what was left: {@code bars} barlines ago. */
    private record Said(Duration unit, boolean span, Duration left, int bars) {
    }

    private final List<BarTimeline> bars;
    private final PlanOptions options;
    private final Weights w;
    private long best = Long.MAX_VALUE;

    EveryPlan(PartTimeline part, PlanOptions options) {
        this.bars = part.bars();
        this.options = options;
        this.w = options.weights();
    }

    /** The least cost of all plans. */
    long least() {
        go(0, Offset.ZERO, null, 0);
        return best;
    }

    private void go(int b, Offset at, Said before, long cost) {
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
        Beat beat = bar.beatAt(at);
        Offset next = cuts(bar).higher(at);
        for (int d = 1; d <= DIVISIONS; d++) {
            Duration unit = beat.length().dividedBy(d);
            boolean same = before != null && !before.span && before.unit.equals(unit);
            boolean word = at.minus(beat.start()).isMultipleOf(unit);
            if (!same && !(word && (before == null || wordAt(before, beat, at))) || !isOffered(b, beat, d)) {
                continue;
            }
            long felt = bar.attacks().contains(at) && !word ? felt(b, beat, at, d) : 0;
            if (felt >= 0) {
                long change = same || before == null ? 0 : change(before, unit, false, bar, beat, at);
                go(b, next, said(before, unit, false, at), cost + felt + change + words(bar, beat, at, next, d));
            }
        }
        if (before == null || wordAt(before, beat, at)) {
            spans(b, at, before, cost);
        }
    }

    private void spans(int b, Offset at, Said before, long cost) {
        BarTimeline bar = bars.get(b);
        for (Tuplet t : bar.tuplets()) {
            long hidden = bar.beats().stream().filter(x -> x.start().isAfter(t.start()) && x.start().isBefore(t.end())).count();
            if (!t.start().equals(at) || hidden == 0) {
                continue;
            }
            long added = w.hiddenBeat() * hidden;
            long words = t.length().floorOver(t.unit());
            long played = 0;
            for (Offset attack : bar.attacks()) {
                if (!attack.isWithin(t.start(), t.end())) {
                    continue;
                }
                if (isOn(attack, t.start(), t.unit())) {
                    played++;
                } else if (options.felt() && options.against()
                        && goesOn(bar, attack, t.start(), t.end(), t.start(), t.unit())
                        && (bar.beats().stream().anyMatch(x -> x.start().equals(attack)) || spanIsTooFast(bar, t))) {
                    added += w.feltAgainst();
                } else {
                    added = Long.MIN_VALUE;
                    break;
                }
            }
            if (added >= 0) {
                long change = before == null ? 0 : change(before, t.unit(), true, bar, bar.beatAt(at), at);
                go(b, t.end(), said(before, t.unit(), true, at), cost + added + change
                        + (words - played) * w.unplayed() + words * hard(bar, t.unit()));
            }
        }
    }

    private boolean spanIsTooFast(BarTimeline bar, Tuplet t) {
        Duration common = t.unit();
        List<Offset> all = new ArrayList<>(bar.attacks());
        bar.beats().forEach(x -> all.add(x.start()));
        for (Offset o : all) {
            common = o.isWithin(t.start(), t.end()) ? common.gcd(o.minus(t.start())) : common;
        }
        return speed(bar, common) > BeatGrids.UNSAYABLE;
    }

    private static TreeSet<Offset> cuts(BarTimeline bar) {
        TreeSet<Offset> cuts = new TreeSet<>(bar.attacks());
        bar.beats().forEach(x -> cuts.add(x.start()));
        bar.tuplets().forEach(t -> {
            cuts.add(t.start());
            cuts.add(t.end());
        });
        cuts.add(bar.bar().end());
        return cuts;
    }

    private static boolean isOn(Offset at, Offset start, Duration unit) {
        return at.minus(start).isMultipleOf(unit);
    }

    /** A span count ends where it ends; a fill count can be left on its words. */
    private static boolean wordAt(Said said, Beat beat, Offset at) {
        return said.span || at.equals(beat.start()) || beat.length().isMultipleOf(said.unit) && isOn(at, beat.start(), said.unit);
    }

    /** Dotted beats are cut in twos only where a voice of the beat itself is. */
    private boolean isOffered(int b, Beat beat, int d) {
        if (beat.length().numerator() != 3 || d == 1 || d % 3 == 0) {
            return true;
        }
        BarTimeline bar = bars.get(b);
        boolean own = parts(bar.attacks(), beat) == d;
        for (VoiceAttacks line : bar.lines()) {
            long parts = parts(line.attacks(), beat);
            own |= parts % 3 != 0 && parts % d == 0;
        }
        return own;
    }

    /** Into how many parts the attacks cut a beat. */
    private static long parts(List<Offset> attacks, Beat beat) {
        Duration grid = beat.length();
        for (Offset at : attacks) {
            grid = at.isWithin(beat.start(), beat.end()) ? grid.gcd(at.minus(beat.start())) : grid;
        }
        return beat.length().floorOver(grid);
    }

    private long words(BarTimeline bar, Beat beat, Offset at, Offset next, int d) {
        Duration unit = beat.length().dividedBy(d);
        long cost = 0;
        for (int k = 0; k < d; k++) {
            Offset word = beat.start().plus(unit.times(k));
            if (word.isWithin(at, next)) {
                cost += hard(bar, unit) + (d > 9 ? w.rareDivision() : 0);
                cost += bar.attacks().contains(word) ? 0 : w.unplayed() + (bar.attacks().isEmpty() ? w.resting() : 0);
                if (d == 1 && beat.length().numerator() == 3) {
                    cost += w.dottedAlone() * Math.max(0, 1000 - speed(bar, beat.length().dividedBy(3))) / 1000;
                }
            }
        }
        return cost;
    }

    private long hard(BarTimeline bar, Duration unit) {
        long milliseconds = (long) Math.floor(1000 * bar.tempo().seconds(unit) + 1e-9);
        return w.tooFast() * Math.max(0, speed(bar, unit) - 1000) / 1000
                + w.tooSlow() * Math.max(0, milliseconds - 1000) / 1000;
    }

    private long speed(BarTimeline bar, Duration unit) {
        return (long) Math.floor(1000 * bar.tempo().rate(unit) / options.voiceLimit().doubleValue() + 1e-9);
    }

    private boolean isAttack(int b, Offset at) {
        BarTimeline bar = bars.get(b);
        return bar.attacks().contains(at) || at.equals(bar.bar().end()) && b + 1 < bars.size()
                && bars.get(b + 1).attacks().contains(Offset.ZERO);
    }

    /** Whether another voice than the note's has two or more notes in a time, all on a grid. */
    private static boolean goesOn(BarTimeline bar, Offset note, Offset from, Offset to, Offset start, Duration unit) {
        return bar.lines().stream().anyMatch(line -> {
            List<Offset> there = line.attacks().stream().filter(a -> a.isWithin(from, to)).toList();
            return there.size() >= 2 && !there.contains(note) && there.stream().allMatch(a -> isOn(a, start, unit));
        });
    }

    /** What it costs to feel a note between the words of beat/d; below zero where it has to be said. */
    private long felt(int b, Beat beat, Offset at, int d) {
        BarTimeline bar = bars.get(b);
        Duration unit = beat.length().dividedBy(d);
        if (!options.felt()) {
            return -1;
        }
        if (options.against() && speed(bar, beat.length().dividedBy(parts(bar.attacks(), beat))) > BeatGrids.UNSAYABLE
                && goesOn(bar, at, beat.start(), beat.end(), beat.start(), unit)) {
            return w.feltAgainst();
        }
        Tuplet inside = bar.tuplets().stream().filter(t -> !t.start().isBefore(beat.start()) && !t.end().isAfter(beat.end())
                && t.start().isBefore(at) && at.isBefore(t.end()) && isOn(at, t.start(), t.unit()))
                .min((x, y) -> x.length().compareTo(y.length())).orElse(null);
        if (inside != null) {
            for (int k = 0; k <= d; k++) {
                Offset word = beat.start().plus(unit.times(k));
                if (word.isAfter(inside.start()) && word.isBefore(inside.end()) && !isOn(word, inside.start(), inside.unit())) {
                    return -1;
                }
            }
            if (!isOn(inside.start(), beat.start(), unit) || !isOn(inside.end(), beat.start(), unit)) {
                return -1;
            }
        }
        long doubled = doubled(b, beat, at, d, inside != null);
        if (doubled >= 0 || inside == null) {
            return doubled;
        }
        int odd = inside.ratio().actual();
        while (odd % 2 == 0) {
            odd /= 2;
        }
        return odd > 3 && speed(bar, inside.unit()) > BeatGrids.BEYOND_WORDS ? w.feltBeyond() : -1;
    }

    private long doubled(int b, Beat beat, Offset at, int d, boolean inTuplet) {
        BarTimeline bar = bars.get(b);
        Duration unit = beat.length().dividedBy(d);
        Offset word = beat.start().plus(unit.times(at.minus(beat.start()).floorOver(unit)));
        long cut = at.minus(word).over(unit).denominator();
        boolean family = bar.lines().stream().anyMatch(line -> line.attacks().contains(at)
                && parts(line.attacks(), beat) % d == 0);
        boolean led = isAttack(b, word);
        boolean met = isAttack(b, word.plus(unit)) && (cut == 2 || inTuplet);
        if (!Set.of(2L, 3L, 4L, 6L, 8L).contains(cut) || !family || !led && !met) {
            return -1;
        }
        long full = speed(bar, unit.dividedBy(cut));
        long cost = cut == 2 ? w.felt() : led ? w.feltThird() : 2 * w.feltThird();
        if (full > BeatGrids.UNSAYABLE) {
            return cost;
        }
        long ordinary = beat.length().numerator() == 3 ? 3 : 4;
        return d * cut > ordinary && full > BeatGrids.EASY && (led || cut == 2) ? cost + w.feltThoughSayable() : -1;
    }

    private long change(Said before, Duration unit, boolean span, BarTimeline bar, Beat beat, Offset at) {
        if (before.unit.equals(unit)) {
            return 0;
        }
        long back = isBack(before, unit, span) ? w.flicker() : 0;
        boolean family = before.unit.isMultipleOf(unit) || unit.isMultipleOf(before.unit);
        boolean slower = unit.isLongerThan(before.unit);
        long ratio = slower ? unit.floorOver(before.unit) : before.unit.floorOver(unit);
        int doublings = 0;
        for (long r = ratio; r >= 2; r /= 2) {
            doublings++;
        }
        long cost = (!family ? w.otherFamily() : slower ? w.slower() : w.faster()) + w.doubling() * Math.max(0, doublings - 1);
        boolean plainSlower = slower && !span && !before.span;
        if (at.equals(Offset.ZERO)) {
            cost = Math.max(0, cost - w.barline());
        } else if (at.equals(beat.start())) {
            int n = bar.beats().size();
            boolean strong = beat.groupLength().isLongerThan(beat.length()) ? beat.isGroupStart()
                    : n > 2 && n % 2 == 0 && beat.number() % 2 == 1;
            cost += strong ? 0 : w.weakBeat() + (plainSlower ? w.slowerOnWeakBeat() : 0);
            cost += plainSlower && family ? w.slowerInBar() : 0;
        } else {
            boolean half = at.minus(beat.start()).times(2).equals(beat.length()) && bar.attacks().contains(at);
            boolean edge = bar.tuplets().stream().anyMatch(t -> t.start().equals(at) || t.end().equals(at));
            cost += w.insideBeat() + (half || edge ? 0 : w.anywhere());
            cost += plainSlower ? w.slowerInBeat() + (family ? w.slowerInBar() : 0) : 0;
        }
        return cost + back;
    }

    /** What is said and remembered from {@code at} on. */
    private static Said said(Said before, Duration unit, boolean span, Offset at) {
        if (before == null) {
            return new Said(unit, span, null, 0);
        }
        boolean barline = at.equals(Offset.ZERO);
        int age = before.bars + (barline ? 1 : 0);
        if (isBack(before, unit, span)) {
            return new Said(unit, false, null, 0);
        }
        boolean kept = before.left != null && age <= 1 && (span || isFasterKin(before.left, unit));
        if (kept) {
            return new Said(unit, span, before.left, age);
        }
        boolean left = !span && !before.span && isFasterKin(before.unit, unit);
        return new Said(unit, span, left ? before.unit : null, barline ? 1 : 0);
    }

    /** Up again to a faster unit of the family, soon after a faster one was left. */
    private static boolean isBack(Said before, Duration unit, boolean span) {
        return before.left != null && !span && !before.span && isFasterKin(unit, before.unit);
    }

    private static boolean isFasterKin(Duration left, Duration unit) {
        return left.isShorterThan(unit) && unit.isMultipleOf(left);
    }
}

package countstave.practice;

import countstave.count.Count;
import countstave.count.Words;
import countstave.grid.Segment;
import countstave.score.BarTimeline;
import countstave.score.Beat;
import countstave.score.Meter;
import countstave.time.Offset;
import countstave.time.Proportion;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;

/**
 * The same counts with a part of them said aloud, at every stage another. Mostly these grow fewer, but {@link Stage#HALF}
 * goes by the grid and not by what is played: where {@link Stage#BEATS_AND_PLAYED} says {@code 1 a}, it says {@code 1 &}.
 * Notes that the plan leaves to be felt are no counts: they are never said.
 *
 * <p>Where the count changes to another family (neither unit divides the other), everything in the first beat of the
 * new count is still said at {@link Stage#BEATS_AND_PLAYED}: the new speed has to be found there. So it is too where the
 * stretch begins with such a change, as it will be in the score. Beats inside a tuplet that is counted through are no
 * counts of the plan; from {@link Stage#BEATS} on, when the tuplet is no longer counted, they are said at their own time.
 */
public final class Thinning {

    /** A count at a stage. {@code bar} counts from the first bar of the stretch. */
    public record Thinned(int bar, Count count, boolean said) {
    }

    private Thinning() {
    }

    /** All counts of the stretch in order, each said or felt at {@code stage}; beats inside a tuplet only where said. */
    public static List<Thinned> of(Stretch stretch, Stage stage) {
        List<Stretch.Slice> slices = stretch.slices();
        Set<Integer> newFamilies = newFamilies(stretch, slices);
        List<Thinned> thinned = new ArrayList<>();
        for (int i = 0; i < slices.size(); i++) {
            Stretch.Slice slice = slices.get(i);
            BarTimeline timeline = stretch.timeline(slice.bar());
            Segment segment = slice.segment();
            Offset firstBeatEnd = newFamilies.contains(i) ? timeline.beatAt(segment.start()).end() : segment.start();
            Set<Offset> half = stage == Stage.HALF ? half(timeline, segment) : Set.of();
            List<Thinned> here = new ArrayList<>();
            List<Count> counts = slice.counts().counts();
            for (int k = 0; k < counts.size(); k++) {
                Count count = counts.get(k);
                boolean said = stage == Stage.HALF ? half.contains(segment.start().plus(segment.unit().times(k)))
                        : isSaid(timeline, count, stage, count.at().isBefore(firstBeatEnd));
                here.add(new Thinned(slice.bar(), count, said));
            }
            if (segment.isSpan() && (stage == Stage.BEATS || stage == Stage.STRONG_BEATS)) {
                addBeats(stretch, slice, stage, here);
            }
            thinned.addAll(here);
        }
        return thinned;
    }

    private static Set<Integer> newFamilies(Stretch stretch, List<Stretch.Slice> slices) {
        Set<Integer> newFamilies = new HashSet<>();
        for (UnitChange change : UnitChange.in(slices)) {
            if (change.leavesFamily()) {
                newFamilies.add(change.to());
            }
        }
        if (beginsNewFamily(stretch)) {
            newFamilies.add(0);
        }
        return newFamilies;
    }

    /** Whether the count leaves the family of what is counted just before the stretch. */
    static boolean beginsNewFamily(Stretch stretch) {
        List<Stretch.Slice> slices = stretch.slices();
        return stretch.unitBefore() != null && !slices.isEmpty()
                && new UnitChange(0, stretch.unitBefore(), UnitChange.even(slices.get(0).segment())).leavesFamily();
    }

    /** Where a segment is said at half the grid, as written. */
    private static Set<Offset> half(BarTimeline bar, Segment segment) {
        if (segment.isSpan()) {
            return Halves.of(bar, segment.start(), segment.positions(), segment.unit(), false);
        }
        TreeSet<Offset> said = new TreeSet<>();
        for (Beat beat : bar.beats()) {
            if (beat.start().isBefore(segment.end()) && beat.end().isAfter(segment.start())) {
                int parts = (int) beat.length().floorOver(segment.unit());
                said.addAll(Halves.of(bar, beat.start(), parts, segment.unit(), beat.isDotted()));
            }
        }
        // a count that begins inside a beat is said where it begins: there its speed is found
        said.add(segment.start());
        return said;
    }

    /** Says the beats that a span count hides, in the order of time among its counts. */
    private static void addBeats(Stretch stretch, Stretch.Slice slice, Stage stage, List<Thinned> here) {
        BarTimeline timeline = stretch.timeline(slice.bar());
        for (Beat beat : timeline.beats()) {
            Offset at = beat.start();
            boolean hidden = at.isAfter(slice.segment().start()) && at.isBefore(slice.segment().end())
                    && here.stream().noneMatch(t -> t.count().at().equals(at));
            if (hidden && (stage == Stage.BEATS || isStrong(timeline, beat))) {
                Count count = new Count(at, Words.onBeat(timeline, beat, stretch.system()), timeline.isAttack(at));
                here.add(new Thinned(slice.bar(), count, true));
            }
        }
        here.sort(Comparator.comparing(t -> t.count().at()));
    }

    private static boolean isSaid(BarTimeline timeline, Count count, Stage stage, boolean stillFinding) {
        Beat beat = timeline.beatAt(count.at());
        boolean onBeat = beat.start().equals(count.at());
        return switch (stage) {
            case ALL, HALF -> true;
            case BEATS_AND_PLAYED -> onBeat || count.played() || stillFinding;
            case BEATS -> onBeat;
            case STRONG_BEATS -> onBeat && isStrong(timeline, beat);
            case NONE -> false;
        };
    }

    /**
     * Beat 1; in meters with groups the first beat of each group; else the beat that opens the second half of a bar
     * of four, six, eight … beats.
     */
    static boolean isStrong(BarTimeline timeline, Beat beat) {
        if (beat.number() == 1) {
            return true;
        }
        if (timeline.irregular() || beat.groupLength().isLongerThan(beat.length())) {
            return beat.isGroupStart();
        }
        Meter meter = timeline.bar().meter();
        if (meter.isSenzaMisura()) {
            return false;
        }
        Proportion beats = meter.length().over(beat.length());
        long count = beats.numerator();
        return beats.isWhole() && count >= 4 && count % 2 == 0 && beat.number() == count / 2 + 1;
    }
}

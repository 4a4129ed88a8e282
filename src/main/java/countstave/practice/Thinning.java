package countstave.practice;

import countstave.count.Count;
import countstave.score.BarTimeline;
import countstave.score.Beat;
import countstave.score.Meter;
import countstave.time.Offset;
import countstave.time.Proportion;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Set;

/**
 * The same counts with fewer and fewer of them said aloud. Notes that the plan leaves to be felt are no counts: they are
 * never said.
 *
 * <p>Where the count changes to another family (neither unit divides the other), everything in the first beat of the
 * new count is still said at {@link Stage#BEATS_AND_PLAYED}: the new speed has to be found there. So it is too where the
 * stretch begins with such a change, as it will be in the score. In a span count the
 * beats inside are no counts, so they are heard in the click and not said.
 */
public final class Thinning {

    /** A count at a stage. {@code bar} counts from the first bar of the stretch. */
    public record Thinned(int bar, Count count, boolean said) {
    }

    private Thinning() {
    }

    /** All counts of the stretch in order, each said or felt at {@code stage}. */
    public static List<Thinned> of(Stretch stretch, Stage stage) {
        List<Stretch.Slice> slices = stretch.slices();
        Set<Integer> newFamilies = new HashSet<>();
        for (UnitChange change : UnitChange.in(slices)) {
            if (change.leavesFamily()) {
                newFamilies.add(change.to());
            }
        }
        if (beginsNewFamily(stretch)) {
            newFamilies.add(0);
        }
        List<Thinned> thinned = new ArrayList<>();
        for (int i = 0; i < slices.size(); i++) {
            Stretch.Slice slice = slices.get(i);
            BarTimeline timeline = stretch.timeline(slice.bar());
            Offset firstBeatEnd = newFamilies.contains(i)
                    ? timeline.beatAt(slice.segment().start()).end() : slice.segment().start();
            for (Count count : slice.counts().counts()) {
                boolean stillFinding = count.at().isBefore(firstBeatEnd);
                thinned.add(new Thinned(slice.bar(), count, isSaid(timeline, count, stage, stillFinding)));
            }
        }
        return thinned;
    }

    /** Whether the count leaves the family of what is counted just before the stretch. */
    static boolean beginsNewFamily(Stretch stretch) {
        List<Stretch.Slice> slices = stretch.slices();
        return stretch.unitBefore() != null && !slices.isEmpty()
                && new UnitChange(0, stretch.unitBefore(), UnitChange.even(slices.get(0).segment())).leavesFamily();
    }

    private static boolean isSaid(BarTimeline timeline, Count count, Stage stage, boolean stillFinding) {
        Beat beat = timeline.beatAt(count.at());
        boolean onBeat = beat.start().equals(count.at());
        return switch (stage) {
            case ALL -> true;
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

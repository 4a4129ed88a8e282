package countstave.count;

import countstave.grid.BarPlan;
import countstave.grid.PartPlan;
import countstave.grid.Segment;
import countstave.score.BarTimeline;
import countstave.score.Beat;
import countstave.score.Tempo;
import countstave.score.TempoChange;
import countstave.time.Duration;
import countstave.time.Offset;
import java.util.ArrayList;
import java.util.List;

/**
 * Finds the marks of a plan, bar by bar in order: where the spoken unit changes, and where only the words do.
 *
 * <p>The speed of speech is compared at the moment of the change, with the tempo before it and the tempo after it.
 */
public final class ChangeWords {

    /** A speed factor is printed as a fraction up to these terms; beyond them a decimal is easier to grasp. */
    private static final long HANDY = 16;

    /** Tempi of more decimal places than a metronome could follow are compared as decimals only. */
    private static final int MOST_PLACES = 9;

    private Segment before;
    private List<Duration> frameBefore = List.of();
    private Duration partsBefore;
    private Tempo tempoBefore;

    /** The marks of a whole part: one list for each bar. */
    public static List<List<ChangeMark>> of(PartPlan plan) {
        ChangeWords words = new ChangeWords();
        return plan.bars().stream().map(words::next).toList();
    }

    /** The marks of the next bar. */
    public List<ChangeMark> next(BarPlan bar) {
        List<ChangeMark> marks = new ArrayList<>();
        List<Duration> frame = frame(bar.timeline());
        for (Segment segment : bar.segments()) {
            ChangeMark mark = mark(bar.timeline(), segment, frame);
            if (mark != null) {
                marks.add(mark);
            }
            before = segment;
            partsBefore = partsIn(bar.timeline(), segment);
            frameBefore = frame;
        }
        List<TempoChange> tempi = bar.timeline().tempi();
        tempoBefore = tempi.get(tempi.size() - 1).tempo();
        return List.copyOf(marks);
    }

    private ChangeMark mark(BarTimeline bar, Segment segment, List<Duration> frame) {
        if (before == null) {
            return mark(ChangeMark.Kind.FIRST, bar, segment, Duration.WHOLE, 1);
        }
        boolean unitChanges = !segment.unit().equals(before.unit());
        if (!unitChanges && !wordsChange(bar, segment, frame)) {
            return null;
        }
        Tempo old = tempoBefore(bar, segment.start());
        Tempo now = bar.tempoAt(segment.start());
        Duration speed = before.unit().over(segment.unit());
        double factor = now.rate(segment.unit()) / old.rate(before.unit());
        if (!old.equals(now)) {
            speed = handy(speed, old, now);
        }
        return mark(unitChanges ? ChangeMark.Kind.COUNT : ChangeMark.Kind.WORDS, bar, segment, speed, factor);
    }

    private ChangeMark mark(ChangeMark.Kind kind, BarTimeline bar, Segment segment, Duration speed, double factor) {
        Duration beat = bar.beatAt(segment.start()).length();
        Duration kept = kind == ChangeMark.Kind.FIRST ? null : speed;
        if (segment.isSpan()) {
            NoteAmount over = NoteAmount.of(segment.end().minus(segment.start()), beat);
            return new ChangeMark(kind, segment.start(), true, segment.positions(), over, kept, factor);
        }
        int parts = Math.toIntExact(beat.floorOver(segment.unit()));
        return new ChangeMark(kind, segment.start(), false, parts, NoteAmount.one(beat), kept, factor);
    }

    /** With the unit the same, the words still differ where the beat it divides does, or a tuplet begins or ends. */
    private boolean wordsChange(BarTimeline bar, Segment segment, List<Duration> frame) {
        if (segment.isSpan() != before.isSpan()) {
            return true;
        }
        if (segment.isSpan()) {
            return !partsBefore.equals(partsIn(bar, segment));
        }
        return segment.start().equals(Offset.ZERO) && !frame.equals(frameBefore)
                && !partsBefore.equals(partsIn(bar, segment));
    }

    private static Duration partsIn(BarTimeline bar, Segment segment) {
        Duration whole = segment.isSpan() ? segment.end().minus(segment.start()) : bar.beatAt(segment.start()).length();
        return whole.over(segment.unit());
    }

    /** The lengths of a bar's beats: one where they are all the same, so that 3/4 after 4/4 is no change. */
    private static List<Duration> frame(BarTimeline bar) {
        List<Duration> lengths = bar.beats().stream().map(Beat::length).toList();
        return lengths.stream().distinct().count() == 1 ? lengths.subList(0, 1) : lengths;
    }

    private Tempo tempoBefore(BarTimeline bar, Offset at) {
        Tempo tempo = tempoBefore == null ? bar.tempo() : tempoBefore;
        for (TempoChange change : bar.tempi()) {
            if (change.at().isBefore(at)) {
                tempo = change.tempo();
            }
        }
        return tempo;
    }

    /** The exact factor with the change of tempo, or null where it has no handy fraction. */
    private static Duration handy(Duration units, Tempo old, Tempo now) {
        if (Math.abs((long) old.perMinute().scale()) > MOST_PLACES || Math.abs((long) now.perMinute().scale()) > MOST_PLACES) {
            return null;
        }
        try {
            int scale = Math.max(0, Math.max(old.perMinute().scale(), now.perMinute().scale()));
            long nowScaled = now.perMinute().setScale(scale).unscaledValue().longValueExact();
            long oldScaled = old.perMinute().setScale(scale).unscaledValue().longValueExact();
            Duration exact = units.times(nowScaled, oldScaled)
                    .times(now.unit().numerator(), now.unit().denominator())
                    .times(old.unit().denominator(), old.unit().numerator());
            return exact.numerator() <= HANDY && exact.denominator() <= HANDY ? exact : null;
        } catch (ArithmeticException e) {
            return null;
        }
    }
}

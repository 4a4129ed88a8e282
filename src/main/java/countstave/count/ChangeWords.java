package countstave.count;

import countstave.grid.BarPlan;
import countstave.grid.PartPlan;
import countstave.grid.PlanOptions;
import countstave.grid.Segment;
import countstave.score.BarTimeline;
import countstave.score.Beat;
import countstave.score.Tempo;
import countstave.score.TempoChange;
import countstave.time.Duration;
import countstave.time.Offset;
import countstave.time.Proportion;
import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.List;

/**
 * Finds the marks of a plan, bar by bar in order: where the spoken unit changes, where only the words do, and where notes
 * begin to be felt that cannot be said.
 *
 * <p>The speed of speech is compared at the moment of the change, with the tempo before it and the tempo after it. What is
 * felt is told once for as long as one count goes on.
 */
public final class ChangeWords {

    /** A factor with a change of tempo in it is kept exact up to these terms. */
    private static final long HANDY = 16;

    /** Tempi of more decimal places than a metronome could follow are compared as decimals only. */
    private static final int MOST_PLACES = 9;

    private final BigDecimal voiceLimit;
    private Segment before;
    private List<Duration> frameBefore = List.of();
    private Proportion partsBefore;
    private Tempo tempoBefore;
    private FeltWords told;

    /** @param options what the plan was made with: its voice limit says what cannot be said */
    public ChangeWords(PlanOptions options) {
        this.voiceLimit = options.voiceLimit();
    }

    /** The marks of a whole part: one list for each bar. */
    public static List<List<ChangeMark>> of(PartPlan plan) {
        ChangeWords words = new ChangeWords(plan.options());
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
        SpokenUnit unit = SpokenUnit.of(bar, segment);
        FeltWords felt = FeltWords.of(bar, segment, voiceLimit);
        if (before == null) {
            told = felt;
            return new ChangeMark(ChangeMark.Kind.FIRST, segment.start(), unit, Manner.NONE, null, 1, felt);
        }
        boolean unitChanges = !segment.unit().equals(before.unit());
        if (!unitChanges && !wordsChange(bar, segment, frame)) {
            if (felt == null || felt.equals(told)) {
                return null;
            }
            told = felt;
            return new ChangeMark(ChangeMark.Kind.FELT, saidBefore(segment), unit, Manner.NONE, Proportion.ONE, 1, felt);
        }
        told = unitChanges || felt != null ? felt : told;
        Tempo old = tempoBefore(bar, segment.start());
        Tempo now = bar.tempoAt(segment.start());
        Proportion speed = before.unit().over(segment.unit());
        double factor = now.rate(segment.unit()) / old.rate(before.unit());
        if (!old.equals(now)) {
            speed = handy(speed, old, now);
        }
        return new ChangeMark(unitChanges ? ChangeMark.Kind.COUNT : ChangeMark.Kind.WORDS, segment.start(), unit,
                unitChanges ? Manner.NONE : manner(bar, segment, frame), speed, factor, felt);
    }

    /** The spoken position before the segment's first felt note: there the eye looks for the words. */
    private static Offset saidBefore(Segment segment) {
        Offset at = segment.start();
        for (int k = 1; k < segment.positions() && !segment.position(k).isAfter(segment.felt().get(0)); k++) {
            at = segment.position(k);
        }
        return at;
    }

    /**
     * With the unit the same, the words still differ where the beat it divides does, or a tuplet begins or ends; and
     * swung is said otherwise than straight.
     */
    private boolean wordsChange(BarTimeline bar, Segment segment, List<Duration> frame) {
        if (segment.isSpan() != before.isSpan() || !ratio(segment).equals(ratio(before))) {
            return true;
        }
        if (segment.isSpan()) {
            return !partsBefore.equals(partsIn(bar, segment));
        }
        return frameChanges(segment, frame) && !partsBefore.equals(partsIn(bar, segment));
    }

    private boolean frameChanges(Segment segment, List<Duration> frame) {
        return segment.start().equals(Offset.ZERO) && !frame.equals(frameBefore);
    }

    private static String ratio(Segment segment) {
        return segment.isSwung() ? segment.swung().ratio() : "";
    }

    /** What the name of the unit does not say: that it is straight again, or how it is now grouped in beats. */
    private Manner manner(BarTimeline bar, Segment segment, List<Duration> frame) {
        if (segment.isSpan() || segment.isSwung()) {
            return Manner.NONE;
        }
        if (before.isSwung()) {
            return Manner.STRAIGHT;
        }
        if (!frameChanges(segment, frame)) {
            return Manner.NONE;
        }
        if (frame.size() == 1) {
            return Manner.in(List.of(partsIn(bar, segment)));
        }
        return Manner.in(frame.stream().map(beat -> beat.over(segment.unit())).toList());
    }

    private static Proportion partsIn(BarTimeline bar, Segment segment) {
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
    private static Proportion handy(Proportion units, Tempo old, Tempo now) {
        if (Math.abs((long) old.perMinute().scale()) > MOST_PLACES || Math.abs((long) now.perMinute().scale()) > MOST_PLACES) {
            return null;
        }
        try {
            int scale = Math.max(0, Math.max(old.perMinute().scale(), now.perMinute().scale()));
            long nowScaled = now.perMinute().setScale(scale).unscaledValue().longValueExact();
            long oldScaled = old.perMinute().setScale(scale).unscaledValue().longValueExact();
            Proportion exact = units.times(Proportion.of(nowScaled, oldScaled)).times(now.unit().over(old.unit()));
            return exact.numerator() <= HANDY && exact.denominator() <= HANDY ? exact : null;
        } catch (ArithmeticException e) {
            return null;
        }
    }
}

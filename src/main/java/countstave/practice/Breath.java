package countstave.practice;

import countstave.count.Count;
import countstave.grid.Segment;
import countstave.score.BarTimeline;
import countstave.score.Beat;
import countstave.score.Event;
import countstave.score.Voice;
import countstave.time.Duration;
import countstave.time.Exact;
import countstave.time.Offset;
import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;

/**
 * Where to breathe in while going on counting.
 *
 * <p>A mark stands before a count and means: breathe just before saying this one. Marks are at most a given time of
 * continuous speech apart; among all ways to place them the cheapest is taken, exactly, by a shortest path. A mark costs
 * 6, and as much as its place is worse than a rest (see {@link Reason}), and 0 to 3 more the faster one is speaking
 * there: two marks at barlines are better than one in the middle of a bar. Never inside a beat, a group of an irregular
 * meter, a tuplet or a span count: where one of them lasts longer than the time allowed, the mark comes at its end, late,
 * and says how long the stretch was. Where a beat is slow and its words are close, the breath may last the beat: its words
 * are then said silently.
 */
public final class Breath {

    /**
     * Longest stretch of speech without a mark, in seconds: an assumption. Breath groups in reading aloud last some
     * 3 s on average (docs/practice.md); a player who prepares for it can take about twice as long.
     */
    public static final BigDecimal LONGEST = BigDecimal.valueOf(6);

    /** The sign that stands before a count: breathe first. Our own; it is explained wherever it is used. */
    public static final String SIGN = "^";

    /** A beat that lasts so long can be given to a breath: the others do not come too close. An assumption. */
    static final Exact SLOW_BEAT = Exact.ONE;

    /** Words further apart than this leave time to breathe between them. An assumption. */
    private static final Exact QUICK_BREATH = Exact.of(1, 2);

    private static final int EACH = 6;
    private static final int FAST_SPEECH = 3;
    /** A second too long costs more than any number of marks. */
    private static final double TOO_LONG = 10_000;

    /** Why a mark stands where it stands: the first reason that holds. */
    public enum Reason {
        REST("rest", 0), HELD_NOTE("held note", 1), BARLINE("barline", 2), SLOWER_COUNT("slower count", 8),
        BEAT("beat", 14);

        private final String title;
        private final int cost;

        Reason(String title, int cost) {
            this.title = title;
            this.cost = cost;
        }

        public String title() {
            return title;
        }
    }

    /**
     * Breathe before this count.
     *
     * @param bar from the first bar of the stretch, 0 the first
     * @param at from that bar's start
     * @param since seconds of speech since the mark before (or the start of the stretch)
     * @param beat whether the breath may last the beat that begins here, whose words are said silently: the beat is
     *     slow, the words before it are close, and no new count begins that has to be heard
     */
    public record Mark(int bar, Offset at, Exact since, Reason reason, boolean beat) {
    }

    private record Place(int bar, Offset at, Exact second, int cost, Reason reason, boolean beat) {
    }

    private Breath() {
    }

    /**
     * @param clock the speed at which it is said; marks made for a slow speed are good for every faster one too
     * @param longest seconds of continuous speech, above 0
     * @param voiceLimit syllables a second, for how much fast speech disturbs
     */
    public static List<Mark> marks(Stretch stretch, Clock clock, BigDecimal longest, BigDecimal voiceLimit) {
        List<Place> places = places(stretch, clock, voiceLimit);
        double limit = longest.doubleValue();
        int size = places.size();
        double[] cost = new double[size + 1];
        int[] from = new int[size + 1];
        Arrays.fill(cost, Double.POSITIVE_INFINITY);
        Exact start = clock.at(Offset.ZERO);
        Exact end = clock.at(stretch.end());
        for (int i = 0; i <= size; i++) {
            Exact here = i < size ? places.get(i).second() : end;
            double own = i < size ? places.get(i).cost() : 0;
            for (int before = i - 1; before >= -1; before--) {
                Exact since = here.minus(before < 0 ? start : places.get(before).second());
                boolean tooLong = since.isMoreThan(Exact.of(longest));
                double through = (before < 0 ? 0 : cost[before]) + own
                        + (tooLong ? TOO_LONG * (1 + since.toDouble() - limit) : 0);
                if (through < cost[i]) {
                    cost[i] = through;
                    from[i] = before;
                }
                // the nearest place before is always tried, further ones only within the limit
                if (tooLong) {
                    break;
                }
            }
        }
        List<Mark> marks = new ArrayList<>();
        for (int i = from[size]; i >= 0; i = from[i]) {
            Place place = places.get(i);
            Exact since = place.second().minus(from[i] < 0 ? start : places.get(from[i]).second());
            marks.add(0, new Mark(place.bar(), place.at(), since, place.reason(), place.beat()));
        }
        return marks;
    }

    /** Every count before which one may breathe, in order; the first of the stretch has its breath before the start. */
    private static List<Place> places(Stretch stretch, Clock clock, BigDecimal voiceLimit) {
        List<Place> places = new ArrayList<>();
        Segment before = null;
        Offset lastWord = null;
        for (Stretch.Slice slice : stretch.slices()) {
            Segment segment = slice.segment();
            BarTimeline timeline = stretch.timeline(slice.bar());
            boolean slower = before != null && segment.unit().isLongerThan(before.unit());
            for (Count count : slice.counts().counts()) {
                Offset at = count.at();
                Offset position = stretch.position(slice.bar(), at);
                boolean first = at.equals(segment.start());
                boolean allowed = position.isAfter(Offset.ZERO)
                        && (first || !segment.isSpan())
                        && opensBeat(timeline, at)
                        && timeline.tuplets().stream().noneMatch(t -> t.hides(at));
                if (allowed) {
                    Offset written = timeline.writtenAt(at);
                    Reason reason = reason(timeline, count, written, slower && first);
                    double rate = 1 / clock.lasting(segment.unit(), position).toDouble();
                    int fast = (int) Math.min(FAST_SPEECH, Math.round(FAST_SPEECH * rate / voiceLimit.doubleValue()));
                    boolean close = lastWord != null && clock.between(lastWord, position).isLessThan(QUICK_BREATH);
                    boolean known = before != null && (!first || segment.unit().equals(before.unit()));
                    boolean beat = close && known && !clock.lasting(timeline.beatAt(at).length(), position).isLessThan(SLOW_BEAT);
                    places.add(new Place(slice.bar(), at, clock.at(position), EACH + reason.cost + fast, reason, beat));
                }
                lastWord = position;
            }
            before = segment;
        }
        return places;
    }

    private static Reason reason(BarTimeline timeline, Count count, Offset written, boolean slowerFromHere) {
        if (isInRest(timeline, count, written)) {
            return Reason.REST;
        }
        if (isOnHeldNote(timeline, count)) {
            return Reason.HELD_NOTE;
        }
        if (count.at().equals(Offset.ZERO)) {
            return Reason.BARLINE;
        }
        if (slowerFromHere) {
            return Reason.SLOWER_COUNT;
        }
        return Reason.BEAT;
    }

    /** In an irregular meter, whose beats are single units, its group: its number is not torn from what follows. */
    private static boolean opensBeat(BarTimeline timeline, Offset at) {
        Beat beat = timeline.beatAt(at);
        return beat.start().equals(at) && timeline.opens(beat);
    }

    /** Whether rests, and no note, are written at a count that is not played; a bar without an attack is a rest too. */
    private static boolean isInRest(BarTimeline timeline, Count count, Offset written) {
        boolean rest = timeline.attacks().isEmpty();
        for (Voice voice : timeline.bar().voices()) {
            for (Event event : voice.events()) {
                boolean here = !event.isGrace() && !event.cue() && written.isWithin(event.start(), event.end());
                if (here && event.isNote()) {
                    return false;
                }
                rest |= here;
            }
        }
        return rest && !count.played();
    }

    /** Whether nothing is played here and nothing has been, or will be, within a beat's length around it. */
    private static boolean isOnHeldNote(BarTimeline timeline, Count count) {
        if (count.played()) {
            return false;
        }
        Offset before = Offset.ZERO;
        Offset after = timeline.bar().end();
        for (Offset attack : timeline.attacks()) {
            if (!attack.isAfter(count.at())) {
                before = attack;
            } else {
                after = attack;
                break;
            }
        }
        Duration beat = timeline.beatAt(count.at()).length();
        return !after.minus(before).isShorterThan(beat);
    }
}

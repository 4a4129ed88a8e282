package countstave.sound;

import countstave.count.Feel;
import countstave.count.Words;
import countstave.practice.Clock;
import countstave.practice.Stretch;
import countstave.score.Bar;
import countstave.score.BarTimeline;
import countstave.score.Beat;
import countstave.time.Duration;
import countstave.time.Exact;
import countstave.time.Offset;
import java.util.ArrayList;
import java.util.List;

/**
 * The clicks before a stretch: one full bar, two when there are fewer than 60 beats a minute. Before a pickup, or the
 * second part of a split bar, the beats of the bar's missing beginning follow, so that the pickup falls on its own beat
 * (four and one quarter of pickup: 1 2 3 4, 1 2 3, then the pickup on 4). Common practice, no source.
 *
 * @param length from its start to the stretch's start
 * @param barStarts where its bars begin
 * @param beats where its beats fall
 * @param words what is said on each of these beats
 */
public record CountIn(Duration length, List<Offset> barStarts, List<Offset> beats, List<String> words) {

    static final CountIn NONE = new CountIn(Duration.ZERO, List.of(), List.of(), List.of());

    /** A beat of a bar, and the word on it. */
    private record Spoken(Offset at, String word) {
    }

    /** Longest beat, in seconds, for which one bar is enough: 60 a minute. */
    private static final Exact ONE_BAR = Exact.of(1);

    /** @param clock the speed at which the leg is going to be played */
    static CountIn of(Leg leg, Clock clock) {
        Stretch stretch = leg.stretch();
        BarTimeline first = stretch.timeline(leg.firstBar());
        List<Spoken> inBar = beatsOfFullBar(stretch, leg.firstBar());
        Duration barLength = first.bar().meter().isSenzaMisura() ? first.bar().length() : first.bar().meter().length();
        Duration inside = leg.from().minus(stretch.starts().get(leg.firstBar()));
        Duration phase = first.bar().phase().plus(inside);
        Exact beatSeconds = clock.lasting(first.beatAt(Offset.at(inside)).length(), Offset.ZERO);
        // a piece of some beats is not worth two bars of waiting
        int bars = beatSeconds.isMoreThan(ONE_BAR) && !leg.isPiece() ? 2 : 1;
        List<Offset> starts = new ArrayList<>();
        List<Offset> beats = new ArrayList<>();
        List<String> words = new ArrayList<>();
        int rounds = bars + (phase.isPositive() ? 1 : 0);
        Duration length = barLength.times(bars).plus(phase);
        for (int i = 0; i < rounds; i++) {
            Offset start = Offset.at(barLength.times(i));
            starts.add(start);
            for (Spoken beat : inBar) {
                Offset at = start.plus(beat.at().sinceStart());
                if (at.isBefore(Offset.at(length))) {
                    beats.add(at);
                    words.add(beat.word());
                }
            }
        }
        return new CountIn(length, starts, beats, words);
    }

    /**
     * The beats that are missing between the end of a stretch and its repeat when it begins with a pickup: none where
     * its last bar leaves room for the pickup, else as many as put the pickup on its own beat again.
     */
    public static CountIn beforeRepeat(Leg leg) {
        if (leg.isPiece()) {
            return NONE;
        }
        Stretch stretch = leg.stretch();
        Bar first = stretch.timeline(0).bar();
        if (!first.phase().isPositive() || first.meter().isSenzaMisura()) {
            return NONE;
        }
        Bar last = stretch.timeline(stretch.size() - 1).bar();
        Duration barLength = first.meter().length();
        Duration reached = last.phase().plus(last.length());
        boolean full = !last.meter().equals(first.meter()) || !reached.isShorterThan(barLength);
        Offset from = full ? Offset.ZERO : Offset.at(reached);
        Offset to = Offset.at(first.phase());
        List<Offset> starts = new ArrayList<>();
        List<Offset> beats = new ArrayList<>();
        List<String> words = new ArrayList<>();
        if (to.isBefore(from)) {
            to = to.plus(barLength);
        }
        for (Offset bar : List.of(Offset.ZERO, Offset.at(barLength))) {
            if (bar.isWithin(from, to)) {
                starts.add(Offset.at(bar.minus(from)));
            }
            for (Spoken beat : beatsOfFullBar(stretch, 0)) {
                Offset at = bar.plus(beat.at().sinceStart());
                if (at.isWithin(from, to)) {
                    beats.add(Offset.at(at.minus(from)));
                    words.add(beat.word());
                }
            }
        }
        return new CountIn(to.minus(from), starts, beats, words);
    }

    /** Beats of a whole bar in the meter of a bar, which may itself be a pickup. */
    private static List<Spoken> beatsOfFullBar(Stretch stretch, int firstBar) {
        Bar first = stretch.timeline(firstBar).bar();
        for (int bar = firstBar; bar < stretch.size(); bar++) {
            BarTimeline timeline = stretch.timeline(bar);
            boolean full = timeline.bar().phase().isZero() && timeline.bar().meter().equals(first.meter())
                    && (first.meter().isSenzaMisura() || timeline.bar().length().equals(first.meter().length()));
            if (full) {
                return timeline.beats().stream().map(beat -> new Spoken(beat.start(), word(stretch, timeline, beat))).toList();
            }
        }
        List<Spoken> beats = new ArrayList<>();
        Duration beat = stretch.timeline(firstBar).beats().get(0).length();
        Offset end = first.meter().isSenzaMisura() ? first.end() : Offset.at(first.meter().length());
        for (Offset at = Offset.ZERO; at.isBefore(end); at = at.plus(beat)) {
            beats.add(new Spoken(at, Integer.toString(beats.size() + 1)));
        }
        return beats;
    }

    /**
     * What is said on a beat before the music begins: what the system says there where it numbers the beats, else the
     * number all the same, since nobody is counted in with "ta ta ta ta" (common practice, no source).
     */
    private static String word(Stretch stretch, BarTimeline bar, Beat beat) {
        boolean numbered = stretch.system().row(1, Feel.SIMPLE).say(0, 1).equals("1");
        return numbered && bar.bar().look().style().runNumber() < 1 ? Words.onBeat(bar, beat, stretch.system())
                : Integer.toString(beat.number());
    }
}

package countstave.sound;

import countstave.practice.Clock;
import countstave.score.Meter;
import countstave.score.ScoreException;
import countstave.time.Duration;
import countstave.time.Exact;
import countstave.time.Offset;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.HashSet;
import java.util.Iterator;
import java.util.List;
import java.util.Map;
import java.util.Set;

/**
 * A guide track before it is a file: legs one after the other, each with its count-in and repeats, on one exact clock.
 *
 * <p>Positions are fractions of a whole note from the start of the track. Clicks are handed out one at a time, so that
 * a track of hours needs no more memory than one of seconds.
 */
public final class GuideTrack {

    /** Longest track, seconds. Six hours of sound are 0.95 GB; a WAV file ends at 4 GB. */
    public static final long LONGEST = 6 * 60 * 60;

    /**
     * A click.
     *
     * @param at position in the track, displacement by note value included
     * @param later seconds that it comes after that position (earlier if negative)
     * @param second when it comes: the moment of {@code at}, plus {@code later}
     */
    public record Click(Offset at, Exact later, Exact second, Layer layer) {
    }

    /** A sentence for the player at a position; {@code meter}: the signature from here on, or null if unchanged. */
    public record Note(Offset at, String text, Meter meter) {
    }

    /** Where a pattern begins in the track. */
    record Placed(Offset start, Pattern pattern) {
    }

    private final List<Placed> placed = new ArrayList<>();
    private final List<Note> notes = new ArrayList<>();
    private final List<Offset> barlines = new ArrayList<>();
    private final Clock clock;
    private final Offset end;
    private final boolean endless;
    private Offset loopStart = Offset.ZERO;
    private boolean leavesOutWords;

    private GuideTrack(List<Leg> legs, GuideOptions options) {
        List<Clock.Pace> paces = new ArrayList<>();
        Offset at = Offset.ZERO;
        Meter meter = null;
        for (Leg leg : legs) {
            Clock legClock = leg.clock();
            paces.add(new Clock.Pace(at, legClock.anchors().get(0).perWhole()));
            CountIn countIn = options.countIn() ? CountIn.of(leg, legClock) : CountIn.NONE;
            notes.add(new Note(at, leg.label(), null));
            meter = signature(at, leg.stretch().timeline(leg.firstBar()).bar().meter(), meter);
            addCountIn(countIn, at, options);
            at = at.plus(countIn.length());
            loopStart = at;
            Map<Set<Integer>, Pattern> patterns = new HashMap<>();
            LegWords words = LegWords.of(leg, options);
            leavesOutWords |= words.leavesOut();
            patterns.put(Set.of(), Pattern.of(leg, options, words.words()));
            CountIn between = options.countIn() ? CountIn.beforeRepeat(leg) : CountIn.NONE;
            for (int i = 0; i < leg.repeats(); i++) {
                if (i > 0 && between.length().isPositive()) {
                    paces.add(new Clock.Pace(at, legClock.anchors().get(0).perWhole()));
                    addCountIn(between, at, options);
                    at = at.plus(between.length());
                }
                placed.add(new Placed(at, patterns.computeIfAbsent(silent(leg, i, options.click()),
                        silent -> patterns.get(Set.of()).without(silent))));
                for (Clock.Anchor anchor : legClock.anchors()) {
                    paces.add(new Clock.Pace(at.plus(anchor.at().sinceStart()), anchor.perWhole()));
                }
                meter = addBarlines(leg, at, meter);
                at = at.plus(leg.length());
            }
        }
        this.clock = Clock.of(paces);
        this.end = at;
        this.endless = options.endless() && legs.size() == 1;
    }

    /** Which bars of a leg are silent at its {@code repeat}th time; the rounds go on through the repeats. */
    private static Set<Integer> silent(Leg leg, int repeat, ClickRule rule) {
        Set<Integer> silent = new HashSet<>();
        for (int bar = 0; bar < leg.bars(); bar++) {
            if (rule.isSilent((long) repeat * leg.bars() + bar)) {
                silent.add(bar);
            }
        }
        return silent;
    }

    private Meter addBarlines(Leg leg, Offset at, Meter before) {
        Meter meter = before;
        for (int i = 0; i < leg.bars(); i++) {
            int bar = leg.firstBar() + i;
            Offset start = i == 0 ? at : at.plus(leg.stretch().starts().get(bar).minus(leg.from()));
            barlines.add(start);
            meter = signature(start, leg.meter(bar), meter);
        }
        return meter;
    }

    /**
     * Lays the legs out.
     *
     * @param legs at least one
     * @throws ScoreException if it would last more than six hours, or begin before its own start
     */
    public static GuideTrack of(List<Leg> legs, GuideOptions options) {
        Exact seconds = Exact.ZERO;
        for (Leg leg : legs) {
            Clock legClock = leg.clock();
            Exact once = legClock.at(Offset.at(leg.length()));
            Duration clicks = Duration.ZERO;
            if (options.countIn()) {
                Duration between = CountIn.beforeRepeat(leg).length();
                clicks = CountIn.of(leg, legClock).length().plus(between.times(leg.repeats() - 1));
            }
            seconds = seconds.plus(once.times(leg.repeats())).plus(legClock.lasting(clicks, Offset.ZERO));
        }
        if (seconds.isMoreThan(Exact.of(LONGEST))) {
            throw new ScoreException("a guide track of " + Math.round(seconds.toDouble() / 360) / 10.0
                    + " hours is too long; at most " + LONGEST / 3600
                    + " hours fit: ask for fewer bars with --bars, fewer tempo steps or fewer repeats");
        }
        GuideTrack track = new GuideTrack(legs, options);
        Iterator<Click> clicks = track.clicks();
        if (clicks.hasNext() && clicks.next().second().isNegative()) {
            throw new ScoreException("a click placed early would come before the track begins; keep the count-in");
        }
        return track;
    }

    private Meter signature(Offset at, Meter meter, Meter before) {
        if (!meter.equals(before)) {
            notes.add(new Note(at, meter.toString(), meter));
        }
        return meter;
    }

    private void addCountIn(CountIn countIn, Offset at, GuideOptions options) {
        List<Pattern.Step> steps = new ArrayList<>();
        // somebody who wants the played rhythm alone still has to know when to come in
        Layer layer = options.layers().contains(Layer.BEAT) ? Layer.BEAT
                : options.layers().stream().min(Comparator.naturalOrder()).orElseThrow();
        if (options.layers().contains(Layer.BAR) && layer != Layer.BAR) {
            countIn.barStarts().forEach(start -> steps.add(new Pattern.Step(start, Exact.ZERO, Layer.BAR, 0)));
        }
        if (layer != Layer.VOICE) {
            countIn.beats().forEach(beat -> steps.add(new Pattern.Step(beat, Exact.ZERO, layer, 0)));
        }
        placed.add(new Placed(at, new Pattern(steps, options.isSpoken() ? LegWords.of(countIn) : List.of())));
        countIn.barStarts().forEach(start -> barlines.add(at.plus(start.sinceStart())));
    }

    /** The track's clock, through all its tempi. */
    public Clock clock() {
        return clock;
    }

    /** Where its last bar ends. */
    public Offset end() {
        return end;
    }

    /** How long it lasts, in seconds. */
    public Exact seconds() {
        return clock.at(end);
    }

    /** Whether it is to be looped, from {@link #loopStart} to its end. */
    public boolean isEndless() {
        return endless;
    }

    /** Where the count-in of its last leg is over. */
    public Offset loopStart() {
        return loopStart;
    }

    /** Whether somewhere more has to be said than the voice can say, so that it leaves out words without a note. */
    public boolean leavesOutWords() {
        return leavesOutWords;
    }

    /** What each leg is, and the time signatures. */
    public List<Note> notes() {
        return notes;
    }

    /** Where bars begin, those of the count-in included, in order. */
    public List<Offset> barlines() {
        return barlines;
    }

    List<Placed> placed() {
        return placed;
    }

    /** Whether a word is said in it. */
    public boolean isSpoken() {
        return words().hasNext();
    }

    /** All words in the order of time. */
    Iterator<WordStream.Said> words() {
        return new WordStream(this);
    }

    /** All clicks in the order of time. */
    public Iterator<Click> clicks() {
        return new ClickStream(this);
    }
}

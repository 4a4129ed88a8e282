package countstave.listen;

import countstave.count.Count;
import countstave.count.SegmentCounts;
import countstave.count.SpokenUnit;
import countstave.practice.Clock;
import countstave.practice.Stage;
import countstave.practice.Stretch;
import countstave.score.BarTimeline;
import countstave.score.Beat;
import countstave.score.Event;
import countstave.score.Voice;
import countstave.sound.CountIn;
import countstave.sound.Displacement;
import countstave.sound.Leg;
import countstave.time.Duration;
import countstave.time.Exact;
import countstave.time.Offset;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;

/**
 * A passage as it is to be played, once through: all times exact.
 *
 * @param stretch the bars
 * @param strokes in the order of time
 * @param runs what is counted, in order
 * @param beats seconds of its beats
 * @param seconds how long it lasts
 * @param pause seconds from its end to its repeat, as in the guide tracks: none but for a passage that begins with a
 *     pickup
 */
public record PlannedPass(Stretch stretch, List<PlannedStroke> strokes, List<UnitRun> runs, List<Exact> beats, Exact seconds,
        Exact pause) {

    /** Strokes that are planned closer than this are heard as one. */
    static final Exact ONE_STROKE = Exact.of(25, 1000);

    /** @param places early and late beats; a stroke is moved by the first that fits it */
    public static PlannedPass of(Stretch stretch, List<Displacement> places) {
        return new Builder(stretch, places).pass();
    }

    /** From the start of a repeat to the start of the next. */
    public Exact period() {
        return seconds.plus(pause);
    }

    /** Moments of the passage, over so many times through it; each exact until it is a number. */
    double[] repeated(List<Exact> once, int repeats) {
        double[] all = new double[once.size() * repeats];
        Exact start = Exact.ZERO;
        for (int repeat = 0; repeat < repeats; repeat++) {
            for (int i = 0; i < once.size(); i++) {
                all[repeat * once.size() + i] = start.plus(once.get(i)).toDouble();
            }
            start = start.plus(period());
        }
        return all;
    }

    private static final class Builder {

        private final Stretch stretch;
        private final List<Displacement> places;
        private final Clock clock;
        private final List<UnitRun> runs;
        private final List<PlannedStroke> strokes = new ArrayList<>();

        Builder(Stretch stretch, List<Displacement> places) {
            this.stretch = stretch;
            this.places = places;
            this.clock = Clock.of(stretch);
            this.runs = runs();
        }

        PlannedPass pass() {
            List<Exact> beats = new ArrayList<>();
            for (int bar = 0; bar < stretch.size(); bar++) {
                BarTimeline timeline = stretch.timeline(bar);
                for (Offset attack : timeline.attacks()) {
                    add(stroke(bar, attack));
                }
                for (Beat beat : timeline.beats()) {
                    if (beat.start().isWithin(Offset.ZERO, timeline.bar().end()) && timeline.opens(beat)) {
                        beats.add(clock.at(stretch.position(bar, beat.start())));
                    }
                }
            }
            // what is placed early or late on purpose may change places
            strokes.sort(Comparator.comparing(PlannedStroke::second));
            Leg leg = new Leg(stretch, Exact.ONE, Stage.ALL, 1, "");
            Exact pause = clock.lasting(CountIn.beforeRepeat(leg).length(), Offset.ZERO);
            return new PlannedPass(stretch, List.copyOf(strokes), runs, List.copyOf(beats), clock.at(stretch.end()), pause);
        }

        /** Two strokes too close to be told apart are one, at the moment of the first. */
        private void add(PlannedStroke stroke) {
            PlannedStroke before = strokes.isEmpty() ? null : strokes.get(strokes.size() - 1);
            if (before == null || !stroke.second().minus(before.second()).isLessThan(ONE_STROKE)) {
                strokes.add(stroke);
            }
        }

        private PlannedStroke stroke(int bar, Offset at) {
            Offset position = stretch.position(bar, at);
            Exact second = clock.at(position);
            BarTimeline timeline = stretch.timeline(bar);
            Beat beat = timeline.beatAt(at);
            int onBeat = beat.start().equals(at) ? beat.number() : 0;
            for (Displacement place : places) {
                if (place.moves(onBeat)) {
                    second = clock.at(position.plus(place.length())).plus(place.seconds());
                    break;
                }
            }
            return new PlannedStroke(new Spot(bar, at, position), word(bar, at), runAt(position), hasGrace(timeline, at), second);
        }

        private String word(int bar, Offset at) {
            for (SegmentCounts segment : stretch.bars().get(bar).segments()) {
                for (Count count : segment.counts()) {
                    if (count.at().equals(at)) {
                        return count.say();
                    }
                }
            }
            return "";
        }

        private int runAt(Offset position) {
            int run = 0;
            while (run + 1 < runs.size() && !runs.get(run + 1).from().position().isAfter(position)) {
                run++;
            }
            return run;
        }

        private static boolean hasGrace(BarTimeline timeline, Offset at) {
            for (Voice voice : timeline.bar().voices()) {
                for (Event event : voice.events()) {
                    if (event.isGrace() && event.isNote() && event.start().equals(at)) {
                        return true;
                    }
                }
            }
            return false;
        }

        private List<UnitRun> runs() {
            List<UnitRun> found = new ArrayList<>();
            for (Stretch.Slice slice : stretch.slices()) {
                BarTimeline timeline = stretch.timeline(slice.bar());
                SpokenUnit unit = SpokenUnit.of(timeline, slice.segment());
                UnitRun before = found.isEmpty() ? null : found.get(found.size() - 1);
                if (before != null && before.unit().unit().equals(unit.unit()) && before.unit().swing().equals(unit.swing())) {
                    continue;
                }
                Offset start = slice.segment().start();
                Beat beat = timeline.beatAt(start);
                Duration opened = timeline.opens(beat) ? beat.length() : beat.groupLength();
                found.add(new UnitRun(found.size(), unit, new Spot(slice.bar(), start, slice.start()),
                        clock.lasting(slice.segment().unit(), slice.start()), clock.lasting(opened, slice.start())));
            }
            return List.copyOf(found);
        }
    }
}

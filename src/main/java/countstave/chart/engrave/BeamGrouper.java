package countstave.chart.engrave;

import countstave.score.BeamMark;
import countstave.score.Beat;
import countstave.score.Event;
import countstave.score.Meter;
import countstave.score.NoteValue;
import countstave.score.Tuplet;
import countstave.time.Duration;
import countstave.time.Offset;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;

/**
 * Which notes of a voice stand under one beam: as the file says, or, where a bar has no beam elements, by the beats.
 *
 * <p>Rules where the file says nothing (common practice; "beams follow the beats and show the middle of a 4/4 bar"):
 * one beam a beat, one a group in irregular meters; plain eighths of a 4/4 or 2/4 bar by half bars; a beat longer than
 * a quarter is split at its quarters as soon as it holds sixteenths; beats shorter than a quarter (3/8) join to one
 * bar; a tuplet that crosses beats is one beam. Rests inside a group stay under the beam, rests at its ends do not.
 */
final class BeamGrouper {

    private static final Duration HALF = Duration.of(1, 2);
    private static final Duration EIGHTH = Duration.of(1, 8);

    private final List<Event> events;
    private final List<Tuplet> tuplets;
    private final List<Beat> beats;
    private final Meter meter;
    private final int staff;

    /**
     * @param events all events of one voice of one bar
     * @param tuplets the tuplets of that voice
     * @param beats the bar's beats
     * @param meter the bar's meter
     * @param staff only notes of this staff are grouped
     */
    BeamGrouper(List<Event> events, List<Tuplet> tuplets, List<Beat> beats, Meter meter, int staff) {
        this.events = events;
        this.tuplets = tuplets;
        this.beats = beats;
        this.meter = meter;
        this.staff = staff;
    }

    /** All groups of at least two notes, ordinary and grace notes apart from each other. */
    List<BeamGroup> groups() {
        List<BeamGroup> groups = new ArrayList<>();
        boolean marked = events.stream().anyMatch(e -> !e.isGrace() && !e.look().beams().isEmpty());
        Set<Integer> far = FarBeams.in(events);
        for (List<Integer> run : marked ? markedRuns() : computedRuns()) {
            if (run.stream().noneMatch(far::contains)) {
                add(groups, run, marked);
            }
        }
        for (List<Integer> run : graceRuns()) {
            add(groups, run, false);
        }
        return groups;
    }

    private void add(List<BeamGroup> groups, List<Integer> run, boolean marked) {
        List<Integer> trimmed = trim(run);
        if (trimmed.stream().filter(i -> events.get(i).isNote()).count() >= 2) {
            groups.add(new BeamGroup(List.copyOf(trimmed), new BeamSpans(events, tuplets, beats, trimmed, marked).spans()));
        }
    }

    private boolean isHere(Event event) {
        return event.staff() == staff && event.written() != null && !event.look().isSharedTremolo();
    }

    private boolean isBeamable(Event event) {
        return event.staff() == staff && FarBeams.isBeamable(event);
    }

    private List<Integer> trim(List<Integer> run) {
        int from = 0;
        int to = run.size();
        while (from < to && events.get(run.get(from)).isRest()) {
            from++;
        }
        while (to > from && events.get(run.get(to - 1)).isRest()) {
            to--;
        }
        return run.subList(from, to);
    }

    // ---- from the file's beam elements

    private List<List<Integer>> markedRuns() {
        List<List<Integer>> runs = new ArrayList<>();
        List<Integer> open = null;
        for (int i = 0; i < events.size(); i++) {
            Event event = events.get(i);
            if (event.isGrace() || event.staff() != staff) {
                continue;
            }
            BeamMark.Kind kind = firstLevel(event);
            if (kind == BeamMark.Kind.BEGIN) {
                open = new ArrayList<>();
                runs.add(open);
            }
            if (open == null) {
                continue;
            }
            if (event.isRest() || kind != null && isBeamable(event)) {
                open.add(i);
            } else {
                open = null;
            }
            if (kind == BeamMark.Kind.END) {
                open = null;
            }
        }
        return runs;
    }

    /** What the file's eighth beam does at this event, or null. */
    static BeamMark.Kind firstLevel(Event event) {
        for (BeamMark mark : event.look().beams()) {
            if (mark.level() == 1) {
                return mark.kind();
            }
        }
        return null;
    }

    private List<List<Integer>> graceRuns() {
        List<List<Integer>> runs = new ArrayList<>();
        List<Integer> open = null;
        for (int i = 0; i < events.size(); i++) {
            Event event = events.get(i);
            if (!event.isGrace() || !isBeamable(event)) {
                open = null;
                continue;
            }
            if (open == null) {
                open = new ArrayList<>();
                runs.add(open);
            }
            open.add(i);
        }
        return runs;
    }

    // ---- from the beats

    private List<List<Integer>> computedRuns() {
        List<List<Integer>> runs = new ArrayList<>();
        List<Integer> open = null;
        Offset openKey = null;
        for (int i = 0; i < events.size(); i++) {
            Event event = events.get(i);
            if (event.isGrace() || event.staff() != staff) {
                continue;
            }
            boolean rest = event.isRest() && isHere(event) && event.written().value().flags() > 0;
            if (!rest && !isBeamable(event)) {
                open = null;
                continue;
            }
            Offset key = key(i);
            if (open == null || !key.equals(openKey)) {
                open = new ArrayList<>();
                openKey = key;
                runs.add(open);
            }
            open.add(i);
        }
        return runs;
    }

    /** Start of the stretch of the bar whose notes share a beam with event {@code i}. */
    private Offset key(int i) {
        Offset at = events.get(i).start();
        Tuplet tuplet = outerTuplet(i);
        if (tuplet != null) {
            Stretch stretch = stretch(tuplet.start());
            if (tuplet.end().isAfter(stretch.end)) {
                return tuplet.start();
            }
        }
        return stretch(at).start;
    }

    private Tuplet outerTuplet(int i) {
        for (Tuplet tuplet : tuplets) {
            if (tuplet.depth() == 0 && tuplet.events().holds(i)) {
                return tuplet;
            }
        }
        return null;
    }

    private record Stretch(Offset start, Offset end) {
    }

    private Stretch stretch(Offset at) {
        Beat beat = beatAt(at);
        if (beat == null) {
            return new Stretch(at, at);
        }
        Offset start = beat.groupStart();
        Duration length = beat.groupLength();
        if (length.isShorterThan(Duration.QUARTER) && beat.length().equals(length)) {
            return shortBeats(at);
        }
        if (length.compareTo(HALF) >= 0 && holdsFlags(start, start.plus(length), 2)) {
            long quarter = at.minus(start).floorOver(Duration.QUARTER);
            Offset from = start.plus(Duration.QUARTER.times(quarter));
            return new Stretch(from, from.plus(Duration.QUARTER));
        }
        if (length.equals(Duration.QUARTER) && isEvenQuarters()) {
            Offset half = start.minus(Duration.QUARTER.times((beat.number() - 1) % 2));
            if (holdsOnlyPlainEighths(half, half.plus(HALF))) {
                return new Stretch(half, half.plus(HALF));
            }
        }
        return new Stretch(start, start.plus(length));
    }

    /** 3/8, 2/8, 3/16: a regular bar of beats shorter than a quarter is one beam, 4/8 two. */
    private Stretch shortBeats(Offset at) {
        Offset from = beats.get(0).start();
        Offset to = beats.get(beats.size() - 1).end();
        Duration whole = to.minus(from);
        if (whole.isLongerThan(Duration.of(3, 8))) {
            long k = at.minus(from).floorOver(Duration.QUARTER);
            Offset start = from.plus(Duration.QUARTER.times(k));
            return new Stretch(start, start.plus(Duration.QUARTER));
        }
        return new Stretch(from, to);
    }

    private boolean isEvenQuarters() {
        return meter.components().size() == 1 && !meter.components().get(0).isAdditive()
                && meter.components().get(0).unit() == 4 && meter.components().get(0).sum() % 2 == 0;
    }

    private boolean holdsFlags(Offset from, Offset to, int flags) {
        return events.stream().anyMatch(e -> e.start().isWithin(from, to) && isBeamable(e) && !e.isGrace()
                && e.written().value().flags() >= flags);
    }

    private boolean holdsOnlyPlainEighths(Offset from, Offset to) {
        int count = 0;
        for (Event event : events) {
            if (event.isGrace() || event.end().compareTo(from) <= 0 || event.start().compareTo(to) >= 0) {
                continue;
            }
            if (!isBeamable(event) || event.written().value() != NoteValue.EIGHTH || !event.length().equals(EIGHTH)
                    || !event.start().minus(from).isMultipleOf(EIGHTH)) {
                return false;
            }
            count++;
        }
        return count == 4;
    }

    private Beat beatAt(Offset at) {
        Beat found = null;
        for (Beat beat : beats) {
            if (beat.start().isAfter(at)) {
                break;
            }
            found = beat;
        }
        return found;
    }
}

package countstave.musicxml;

import countstave.score.Bar;
import countstave.score.BarLook;
import countstave.score.BarName;
import countstave.score.BarSource;
import countstave.score.BarStyle;
import countstave.score.Barline;
import countstave.score.Direction;
import countstave.score.Event;
import countstave.score.Markings;
import countstave.score.Meter;
import countstave.score.Notation;
import countstave.score.NoteValue;
import countstave.score.SourceSpot;
import countstave.score.StaffChange;
import countstave.score.SwingChange;
import countstave.score.TempoChange;
import countstave.score.Tuplet;
import countstave.score.Voice;
import countstave.time.Duration;
import countstave.time.Offset;
import countstave.time.Proportion;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/** A bar that has been read, but whose length and place among its neighbours are not settled yet. */
final class BarDraft {

    final int index;
    final String number;
    final boolean implicit;
    /** As {@link BarName#movement}. */
    int movement;
    Meter meter;
    boolean meterShown;
    final Map<String, List<EventDraft>> drafts = new LinkedHashMap<>();
    final List<Direction> directions = new ArrayList<>();
    final List<StaffChange> staffChanges = new ArrayList<>();
    Barline left;
    Barline right;
    BarStyle style = BarStyle.NONE;
    Proportion divisions = Proportion.ONE;
    SourceSpot source = SourceSpot.NONE;

    /** Where the fullest voice ends, rests of a whole bar left aside; zero if there is nothing else. */
    Offset filled = Offset.ZERO;
    /** What the bar's rest of a whole bar lasts by the file, or null. */
    Duration barRest;
    /** Whether anything but a rest of a whole bar stands in it. */
    boolean hasContent;
    List<Voice> voices = List.of();
    List<Tuplet> tuplets = List.of();
    Duration length;
    /** False where the bar is longer or shorter than its meter without a reason. */
    boolean fits = true;
    final Contradictions contradictions = new Contradictions();
    Duration phase = Duration.ZERO;

    private Offset figuresFrom;
    private Offset figuresNext;

    BarDraft(int index, String number, boolean implicit) {
        this.index = index;
        this.number = number;
        this.implicit = implicit;
    }

    /** A barline that the file puts into the middle of the bar: it is drawn, and nothing is repeated from there. */
    void inside(Barline line, Offset at) {
        if (line.style() != null) {
            directions.add(new Direction(at, 1, Direction.Kind.BARLINE, line.style(), null, null));
        }
        if (line.repeat() != null || line.ending() != null) {
            passedOver(at, 1, (line.repeat() != null ? "repeat" : "ending") + " in the middle of a bar");
        }
    }

    /** Something that is not read beyond its name: it is told to those who draw. */
    void passedOver(Offset at, int staff, String name) {
        directions.add(new Direction(at, staff, Direction.Kind.OTHER, name, null, null));
    }

    /** Several one after the other stand over one note: each where the one before ends. MusicXML 4.0, figured-bass. */
    void figures(Offset now, FiguredBassReader.Figures read, Proportion perQuarter) {
        Offset at = now.equals(figuresFrom) ? figuresNext : now;
        figuresFrom = now;
        figuresNext = read.duration() == null || read.duration().signum() < 0 ? at : at.plus(Duration.QUARTER.times(Rationals.of(read.duration())).dividedBy(perQuarter));
        if (!read.figures().isEmpty()) {
            directions.add(new Direction(at, 1, Direction.Kind.FIGURES, String.join("\n", read.figures()), null, null));
        }
    }

    void fill(Offset end) {
        if (end.isAfter(filled)) {
            filled = end;
        }
    }

    /**
     * A whole rest that stands alone is the sign for a bar of rest, however long the bar is; so is a rest that the file gives
     * no sign, if it fills the bar.
     */
    private void wholeBarRest(List<EventDraft> events) {
        EventDraft rest = events.get(0);
        if (events.size() > 1 || rest.kind != Event.Kind.REST || rest.barRest || !rest.start.equals(Offset.ZERO)) {
            return;
        }
        boolean wholeSign = rest.written == null || rest.written.value() == NoteValue.WHOLE && rest.written.dots() == 0
                && rest.written.ratio().isPlain();
        if (wholeSign && !meter.isSenzaMisura() && meter.length().equals(rest.length)) {
            rest.barRest = true;
            barRest = rest.length;
            if (drafts.size() == 1) {
                hasContent = false;
            }
        }
    }

    /** Makes records of the drafts: from here on only lengths of bar rests may change. */
    void close() {
        List<Voice> closed = new ArrayList<>(drafts.size());
        for (Map.Entry<String, List<EventDraft>> voice : drafts.entrySet()) {
            wholeBarRest(voice.getValue());
            List<Event> events = new ArrayList<>(voice.getValue().size());
            Notation notation = null;
            for (EventDraft draft : voice.getValue()) {
                notation = draft.notation(notation);
                events.add(draft.toEvent(notation));
            }
            contradictions.see(voice.getKey(), voice.getValue(), events);
            // a voice may be written in several runs with backups between them; the sort keeps grace notes in place
            events.sort(Comparator.comparing(Event::start));
            closed.add(new Voice(voice.getKey(), List.copyOf(events)));
        }
        voices = List.copyOf(closed);
        drafts.clear();
    }

    boolean hasOnlyRests() {
        for (Voice voice : voices) {
            for (Event event : voice.events()) {
                if (event.isNote()) {
                    return false;
                }
            }
        }
        return true;
    }

    boolean isShort() {
        return !meter.isSenzaMisura() && length.isShorterThan(meter.length());
    }

    /** A barline that is said to stand in the middle, but behind the last note or before the first, is the bar's own. */
    private boolean isAtEdge(Direction line) {
        if (line.kind() != Direction.Kind.BARLINE || line.at().isAfter(Offset.ZERO) && line.at().isBefore(Offset.at(length))) {
            return false;
        }
        Barline own = new Barline(line.text(), null, null, null);
        if (line.at().isAfter(Offset.ZERO) && right == null) {
            right = own;
        } else if (!line.at().isAfter(Offset.ZERO) && left == null && !Barline.isPlain(own)) {
            left = own;
        }
        return true;
    }

    Bar toBar(List<TempoChange> tempi, List<SwingChange> swings) {
        directions.removeIf(this::isAtEdge);
        directions.sort(Comparator.comparing(Direction::at));
        staffChanges.sort(Comparator.comparing(StaffChange::at));
        return new Bar(new BarName(index, number, implicit, movement), meter, length, phase, stretched(), tuplets,
                Markings.of(List.copyOf(directions), tempi, List.copyOf(staffChanges), swings),
                BarLook.of(meterShown, left, right, style), new BarSource(source, divisions));
    }

    /** The voices with rests of the whole bar as long as the bar. */
    private List<Voice> stretched() {
        if (barRest == null) {
            return voices;
        }
        List<Voice> stretched = new ArrayList<>(voices.size());
        for (Voice voice : voices) {
            List<Event> events = new ArrayList<>(voice.events().size());
            for (Event event : voice.events()) {
                events.add(stretch(event));
            }
            stretched.add(new Voice(voice.name(), List.copyOf(events)));
        }
        return List.copyOf(stretched);
    }

    private Event stretch(Event e) {
        Duration rest = Offset.at(length).minus(e.start());
        if (!e.barRest() || !rest.isPositive()) {
            return e;
        }
        return e.withLength(rest);
    }
}

package countstave.musicxml;

import countstave.score.Event;
import countstave.score.Head;
import countstave.score.Look;
import countstave.score.Nature;
import countstave.score.Notation;
import countstave.score.SourceSpot;
import countstave.score.Tremolo;
import countstave.score.TupletMark;
import countstave.score.Written;
import countstave.time.Duration;
import countstave.time.Offset;
import countstave.time.Proportion;
import countstave.time.Ratio;
import java.util.ArrayList;
import java.util.List;

/** An event that may still get further heads. */
final class EventDraft {

    /**
     * How the written value and the duration agree: to the last fraction, or one of them is missing or of no use; to
     * within one division, so that the written one is right; or not at all.
     */
    enum Agreement { EXACT, ROUNDED, DIFFERENT }

    Offset start;
    Duration length;
    Event.Kind kind;
    final List<Head> heads = new ArrayList<>(1);
    Written written;
    Duration sounding;
    Proportion divisions;
    Event.Grace grace;
    boolean cue;
    boolean barRest;
    boolean printed;
    int staff;
    Look look;
    List<TupletMark> marks = List.of();
    SourceSpot source;
    boolean openTremolo;
    Agreement agreement = Agreement.EXACT;

    /** @param before what the file says of the event before, or null: the same thing is not kept twice */
    Notation notation(Notation before) {
        Notation own = new Notation(written, sounding, divisions, List.copyOf(marks));
        return own.equals(before) ? before : own;
    }

    Event toEvent(Notation notation) {
        return new Event(start, length, Nature.of(kind, grace, cue, barRest, printed), List.copyOf(heads), notation, staff,
                look, source, repeats());
    }

    /**
     * Where an opened tremolo strikes again. A stroke halves the value as a flag does, so one stroke on a quarter or on
     * a half note means eighths, one on an eighth means sixteenths; in a tuplet the tuplet's.
     */
    private List<Offset> repeats() {
        Tremolo tremolo = look.tremolo();
        boolean measured = openTremolo && tremolo != null && tremolo.kind() == Tremolo.Kind.SINGLE
                && tremolo.slashes() >= 1 && tremolo.slashes() <= 2;
        if (!measured || kind != Event.Kind.NOTE || grace != Event.Grace.NONE || !length.isPositive()) {
            return List.of();
        }
        int flags = written == null ? 0 : written.value().flags();
        Ratio ratio = written == null ? Ratio.ONE : written.ratio();
        Duration step = ratio.applyTo(Duration.of(1, 4L << (flags + tremolo.slashes())));
        if (!length.isMultipleOf(step)) {
            return List.of();
        }
        List<Offset> repeats = new ArrayList<>();
        for (Offset at = start.plus(step); at.isBefore(start.plus(length)); at = at.plus(step)) {
            repeats.add(at);
        }
        return List.copyOf(repeats);
    }
}

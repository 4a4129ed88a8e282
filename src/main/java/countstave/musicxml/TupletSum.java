package countstave.musicxml;

import countstave.score.TupletMark;
import countstave.score.Written;
import countstave.time.Duration;
import countstave.time.Ratio;
import java.util.ArrayList;
import java.util.List;
import org.audiveris.proxymusic.Note;

/**
 * A group of tuplet notes as it is read, and what it adds up to: by its written values and by its durations. It reaches
 * from the start of an outermost bracket to its stop, or where there is no bracket, over notes of one ratio until they
 * fill a tuplet.
 */
final class TupletSum {

    private final Duration division;
    private final Ratio ratio;
    private final Written opening;
    private final boolean bracketed;
    private final List<Note> notes = new ArrayList<>();
    private final List<Duration> writtenEnds = new ArrayList<>();
    private final List<Duration> soundingEnds = new ArrayList<>();
    private Duration shortest;
    private Duration shortestValue;
    private Duration gain;
    private int open;
    private boolean complete;

    private TupletSum(Written opening, boolean bracketed, Duration division) {
        this.opening = opening;
        this.ratio = opening.ratio();
        this.bracketed = bracketed;
        this.division = division;
    }

    /** The group that begins with this note, not added yet; null if it is in no tuplet. */
    static TupletSum startingWith(Note note, Duration division) {
        Written written = NoteConverter.written(note);
        return written == null || written.ratio().isPlain() ? null
                : new TupletSum(written, bracketsOpened(note) > 0, division);
    }

    /** Whether this tuplet note is written as one length and lasts another, by a division or more. */
    static boolean differs(Note note, Duration sounding, Duration division) {
        Written written = NoteConverter.written(note);
        return written != null && !written.ratio().isPlain() && written(note, sounding, division) == null;
    }

    /** The written length where the duration is that to within one division; else null. */
    static Duration written(Note note, Duration sounding, Duration division) {
        Written written = NoteConverter.written(note);
        return written != null && written.length().minus(sounding).abs().isShorterThan(division) ? written.length()
                : null;
    }

    private static int bracketsOpened(Note note) {
        int opened = 0;
        for (TupletMark mark : new NotationReader(note).tuplets()) {
            opened += mark.start() ? 1 : -1;
        }
        return opened;
    }

    /** Whether the note goes on with this group. */
    boolean takes(Note note) {
        Written written = NoteConverter.written(note);
        return written != null
                && (bracketed || bracketsOpened(note) <= 0 && written.ratio().sameProportionAs(ratio));
    }

    void add(Note note, Duration sounding) {
        Written written = NoteConverter.written(note);
        Duration length = written.length();
        boolean first = notes.isEmpty();
        notes.add(note);
        writtenEnds.add(first ? length : end(writtenEnds).plus(length));
        soundingEnds.add(first ? sounding : end(soundingEnds).plus(sounding));
        shortest = first || length.isShorterThan(shortest) ? length : shortest;
        Duration value = written.value().length();
        shortestValue = first || value.isShorterThan(shortestValue) ? value : shortestValue;
        if (differs(note, sounding, division)) {
            Duration more = length.minus(sounding);
            gain = gain == null ? more : gain.plus(more);
        }
        open += bracketsOpened(note);
        complete = bracketed ? open <= 0
                : TupletFinder.fills(end(writtenEnds), opening, shortestValue, ratio, Ratio.ONE);
    }

    private static Duration end(List<Duration> ends) {
        return ends.get(ends.size() - 1);
    }

    boolean isComplete() {
        return complete;
    }

    List<Note> notes() {
        return notes;
    }

    /** How much longer the notes that differ are as they are written, below 0 if shorter; null if none differs. */
    Duration gain() {
        return gain;
    }

    /**
     * Whether rounding explains it: at the end of every note the two are less than one division apart for each unit of
     * the tuplet that has passed. The unit is the note the number counts, or the shortest one where that is shorter.
     */
    boolean isRoundedNoteByNote() {
        Duration unit = end(writtenEnds).dividedBy(ratio.actual());
        unit = shortest.isShorterThan(unit) ? shortest : unit;
        for (int i = 0; i < notes.size(); i++) {
            Duration passed = writtenEnds.get(i);
            long units = passed.floorOver(unit) + (passed.isMultipleOf(unit) ? 0 : 1);
            if (!passed.minus(soundingEnds.get(i)).abs().isShorterThan(division.times(units))) {
                return false;
            }
        }
        return true;
    }

    /** Whether the durations add up to what is written, to within one division. */
    boolean addsUp() {
        return end(writtenEnds).minus(end(soundingEnds)).abs().isShorterThan(division);
    }
}

package countstave.score;

import countstave.time.Duration;
import countstave.time.Offset;
import java.util.List;

/**
 * A note, chord or rest of one voice. Chord members are the {@link #heads} of one event.
 *
 * @param start exact position from the bar's start
 * @param length exact length; zero for grace notes
 * @param nature note or rest, and of what sort
 * @param heads noteheads in file order; a placed rest carries one head for its position, any other rest none
 * @param notation what the file says of its length
 * @param staff staff of the part, 1 the uppermost
 * @param look drawing facts
 * @param source where it stands in the file; of a chord, its first note
 * @param repeats further positions at which a single-note tremolo that is read as measured repeats is struck again, in
 *     order, all inside the note; empty unless the reader was asked to open tremolos
 */
public record Event(Offset start, Duration length, Nature nature, List<Head> heads, Notation notation, int staff, Look look,
        SourceSpot source, List<Offset> repeats) {

    public enum Kind { NOTE, REST }

    public enum Grace { NONE, PLAIN, SLASHED }

    public Offset end() {
        return start.plus(length);
    }

    public boolean isNote() {
        return nature.kind() == Kind.NOTE;
    }

    public boolean isRest() {
        return nature.kind() == Kind.REST;
    }

    public boolean isGrace() {
        return nature.grace() != Grace.NONE;
    }

    /** As {@link Nature#cue}. */
    public boolean cue() {
        return nature.cue();
    }

    /** As {@link Nature#barRest}. */
    public boolean barRest() {
        return nature.barRest();
    }

    /** As {@link Nature#printed}. */
    public boolean printed() {
        return nature.printed();
    }

    /** As {@link Notation#written}. */
    public Written written() {
        return notation.written();
    }

    /** As {@link Notation#tupletMarks}. */
    public List<TupletMark> tupletMarks() {
        return notation.tupletMarks();
    }

    /** As {@link Look#isSharedTremolo}. */
    public boolean isSharedTremolo() {
        return look.isSharedTremolo();
    }

    /**
     * Whether something begins to sound here that the player plays: not a rest, a grace or cue note, nor a chord all
     * of whose heads are continued by ties or silent.
     */
    public boolean isAttack() {
        if (isNote() && !isGrace() && !nature.cue()) {
            for (Head head : heads) {
                if (!head.tieStop() && !head.silent()) {
                    return true;
                }
            }
        }
        return false;
    }

    /** The same event, of another length. */
    public Event withLength(Duration other) {
        return new Event(start, other, nature, heads, notation, staff, look, source, repeats);
    }

    /** The same event, drawn otherwise. */
    public Event withLook(Look other) {
        return new Event(start, length, nature, heads, notation, staff, other, source, repeats);
    }
}

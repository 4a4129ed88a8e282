package countstave.score;

import countstave.time.Duration;
import countstave.time.Offset;
import countstave.time.Proportion;
import java.util.List;

/**
 * A note, chord or rest of one voice. Chord members are the {@link #heads} of one event.
 *
 * @param start exact position from the bar's start
 * @param length exact length; zero for grace notes
 * @param kind note or rest; a note that is not printed and left out is a rest that is not printed
 * @param heads noteheads in file order; a placed rest carries one head for its position, any other rest none
 * @param written the length as notation says it, or null where the file has no {@code type}
 * @param sounding the length as the file's {@code duration} over {@code divisions} says it, exact, or null
 *     where absent (grace notes)
 * @param divisions divisions of a quarter in force
 * @param grace whether a grace note stands here, and of what kind
 * @param cue whether it is a cue: it takes its time but is not counted
 * @param barRest whether it is a rest of the whole bar ({@code measure="yes"})
 * @param printed false for {@code print-object="no"}
 * @param staff staff of the part, 1 the uppermost
 * @param look drawing facts
 * @param tupletMarks tuplet starts and stops on this event
 * @param source where it stands in the file; of a chord, its first note
 * @param repeats further positions at which a single-note tremolo that is read as measured repeats is struck again, in
 *     order, all inside the note; empty unless the reader was asked to open tremolos
 */
public record Event(Offset start, Duration length, Kind kind, List<Head> heads, Written written, Duration sounding,
        Proportion divisions, Grace grace, boolean cue, boolean barRest, boolean printed, int staff, Look look,
        List<TupletMark> tupletMarks, SourceSpot source, List<Offset> repeats) {

    /** An event without opened tremolo. */
    public Event(Offset start, Duration length, Kind kind, List<Head> heads, Written written, Duration sounding,
            Proportion divisions, Grace grace, boolean cue, boolean barRest, boolean printed, int staff, Look look,
            List<TupletMark> tupletMarks, SourceSpot source) {
        this(start, length, kind, heads, written, sounding, divisions, grace, cue, barRest, printed, staff, look,
                tupletMarks, source, List.of());
    }

    public enum Kind { NOTE, REST }

    public enum Grace { NONE, PLAIN, SLASHED }

    public Offset end() {
        return start.plus(length);
    }

    public boolean isNote() {
        return kind == Kind.NOTE;
    }

    public boolean isRest() {
        return kind == Kind.REST;
    }

    public boolean isGrace() {
        return grace != Grace.NONE;
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
        if (isNote() && !isGrace() && !cue) {
            for (Head head : heads) {
                if (!head.tieStop() && !head.silent()) {
                    return true;
                }
            }
        }
        return false;
    }
}

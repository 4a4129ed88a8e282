package countstave.score;

import countstave.time.Offset;
import java.util.List;

/**
 * Something printed above or below the staff.
 *
 * @param at exact position from the bar's start
 * @param staff staff of the part, 1 the uppermost
 * @param kind what it is
 * @param text its words, dynamics ("mf"), rehearsal letter or chord name; of a metronome mark, its text ("♩ = 96")
 * @param mark the parts of a metronome mark, or null
 * @param placement above or below, or null where not given
 * @param line what begins or ends here of a sign drawn along time, or null
 * @param pieces of words, the pieces of {@code text} in their faces; else none
 * @param diagram how a chord is held down, or null
 */
public record Direction(Offset at, int staff, Kind kind, String text, MetronomeMark mark, Placement placement,
        LineMark line, List<StyledText> pieces, FretDiagram diagram) {

    /** Ends a figure of a bass that has a stroke through it: the combining solidus of Unicode. */
    public static final String STROKE = "\u0338";

    /** A direction that is no chord. */
    public Direction(Offset at, int staff, Kind kind, String text, MetronomeMark mark, Placement placement, LineMark line,
            List<StyledText> pieces) {
        this(at, staff, kind, text, mark, placement, line, pieces, null);
    }

    /** A chord: its name, which may be empty where there is a diagram. */
    public static Direction chord(Offset at, int staff, String name, Placement placement, FretDiagram diagram) {
        return new Direction(at, staff, Kind.HARMONY, name, null, placement, null, List.of(), diagram);
    }

    /** A direction whose words, if any, have no face of their own. */
    public Direction(Offset at, int staff, Kind kind, String text, MetronomeMark mark, Placement placement, LineMark line) {
        this(at, staff, kind, text, mark, placement, line, List.of());
    }

    /** A direction that stands at one moment. */
    public Direction(Offset at, int staff, Kind kind, String text, MetronomeMark mark, Placement placement) {
        this(at, staff, kind, text, mark, placement, null);
    }

    /**
     * HARMONY is a chord name; FIGURES are those of a bass, from the top down, one a line; LINE is an end of a sign along time, with its MusicXML name as text (wedge, octave-shift,
     * pedal); BARLINE is one in the middle of a bar, for all staves, with its MusicXML {@code bar-style} as text; OTHER carries the MusicXML name of a kind that is not drawn (dashes, scordatura ...).
     */
    public enum Kind { WORDS, DYNAMICS, REHEARSAL, METRONOME, SEGNO, CODA, HARMONY, FIGURES, LINE, BARLINE, OTHER }

    /**
     * A printed metronome mark: {@code value} with {@code dots} = {@code perMinute} (the printed text), or a
     * modulation: = {@code otherValue} with {@code otherDots}. {@code parentheses}: whether it stands in them.
     */
    public record MetronomeMark(NoteValue value, int dots, String perMinute, NoteValue otherValue, int otherDots,
            boolean parentheses) {
    }

    /** Whether it is for everybody, though it stands in the uppermost part only. */
    public boolean isForAll() {
        return kind == Kind.METRONOME || kind == Kind.REHEARSAL || kind == Kind.SEGNO || kind == Kind.CODA;
    }
}

package countstave.score;

/** One MusicXML {@code beam} of a note: {@code level} 1 is the eighth beam. */
public record BeamMark(int level, Kind kind) {

    public enum Kind { BEGIN, CONTINUE, END, FORWARD_HOOK, BACKWARD_HOOK }
}

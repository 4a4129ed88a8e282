package countstave.score;

import java.util.List;

/**
 * How an event is drawn, as far as the file says; nothing here changes what is counted.
 *
 * @param stem stem direction, or null where not given
 * @param beams beam elements of the file, empty where none
 * @param articulations MusicXML names of articulations ("accent", "staccato", "tenuto", "strong-accent" ...)
 * @param fermata whether a fermata stands on it
 * @param tremolo tremolo sign, or null
 * @param slurs number of slurs that start
 * @param other names of further notations present (ornaments, technical ...), for the list of what is not drawn
 * @param lyrics the file's own lyrics
 * @param slurMarks slurs that begin or end here
 * @param spaced false for {@code print-spacing="no"}: no room is kept for it
 */
public record Look(Stem stem, List<BeamMark> beams, List<String> articulations, boolean fermata, Tremolo tremolo,
        int slurs, List<String> other, List<Lyric> lyrics, List<SlurMark> slurMarks, boolean spaced) {

    /** A look with room of its own. */
    public Look(Stem stem, List<BeamMark> beams, List<String> articulations, boolean fermata, Tremolo tremolo, int slurs,
            List<String> other, List<Lyric> lyrics, List<SlurMark> slurMarks) {
        this(stem, beams, articulations, fermata, tremolo, slurs, other, lyrics, slurMarks, true);
    }

    /** A look without slurs that end here. */
    public Look(Stem stem, List<BeamMark> beams, List<String> articulations, boolean fermata, Tremolo tremolo, int slurs,
            List<String> other, List<Lyric> lyrics) {
        this(stem, beams, articulations, fermata, tremolo, slurs, other, lyrics, List.of());
    }

    public enum Stem { UP, DOWN, NONE, DOUBLE }

    public static final Look PLAIN = new Look(null, List.of(), List.of(), false, null, 0, List.of(), List.of());

    /** Whether it is one of the two notes of a double-note tremolo, each of which is written with the length of both. */
    public boolean isSharedTremolo() {
        return tremolo != null && (tremolo.kind() == Tremolo.Kind.START || tremolo.kind() == Tremolo.Kind.STOP);
    }

    /** Whether nothing is said: the same as {@link #PLAIN}. */
    public boolean isPlain() {
        return stem == null && beams.isEmpty() && articulations.isEmpty() && !fermata && tremolo == null && slurs == 0
                && other.isEmpty() && lyrics.isEmpty() && slurMarks.isEmpty() && spaced;
    }
}

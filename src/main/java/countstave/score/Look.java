package countstave.score;

import java.util.ArrayList;
import java.util.List;

/**
 * How an event is drawn, as far as the file says; nothing here changes what is counted.
 *
 * @param stem stem direction, or null where not given
 * @param beams beam elements of the file, empty where none
 * @param articulations MusicXML names of articulations ("accent", "staccato", "tenuto", "strong-accent" ...)
 * @param fermata whether a fermata stands on it
 * @param tremolo tremolo sign, or null
 * @param other names of further notations present (ornaments, technical ...), for the list of what is not drawn
 * @param lyrics the file's own lyrics
 * @param slurMarks slurs that begin or end here
 * @param spaced false for {@code print-spacing="no"}: no room is kept for it
 */
public record Look(Stem stem, List<BeamMark> beams, List<String> articulations, boolean fermata, Tremolo tremolo,
        List<String> other, List<Lyric> lyrics, List<NoteSpan> slurMarks, boolean spaced) {

    public enum Stem { UP, DOWN, NONE, DOUBLE }

    public static final Look PLAIN = new Look(null, List.of(), List.of(), false, null, List.of(), List.of(), List.of(),
            true);

    /** The same with these beams. */
    public Look withBeams(List<BeamMark> marks) {
        return new Look(stem, marks, articulations, fermata, tremolo, other, lyrics, slurMarks, spaced);
    }

    /** The same with these articulations. */
    public Look withArticulations(List<String> names) {
        return new Look(stem, beams, names, fermata, tremolo, other, lyrics, slurMarks, spaced);
    }

    /** What is left where the note itself is not there: its beam goes on in others, words under it are still sung. */
    public Look withoutNote() {
        return new Look(null, beams, List.of(), false, tremolo, List.of(), lyrics, List.of(), false);
    }

    /** The look of a chord of which this is the look of one note, and {@code more} that of another. */
    public Look and(Look more) {
        return more.isPlain() ? this : new Look(stem == null ? more.stem : stem, beams.isEmpty() ? more.beams : beams,
                union(articulations, more.articulations), fermata || more.fermata, tremolo == null ? more.tremolo : tremolo,
                union(other, more.other), union(lyrics, more.lyrics), union(slurMarks, more.slurMarks),
                spaced || more.spaced);
    }

    /** The one, and what only the other has. */
    public static <T> List<T> union(List<T> one, List<T> two) {
        if (two.isEmpty()) {
            return one;
        }
        List<T> all = new ArrayList<>(one);
        two.stream().filter(t -> !all.contains(t)).forEach(all::add);
        return List.copyOf(all);
    }

    /** Whether it is one of the two notes of a double-note tremolo, each of which is written with the length of both. */
    public boolean isSharedTremolo() {
        return tremolo != null && (tremolo.kind() == Tremolo.Kind.START || tremolo.kind() == Tremolo.Kind.STOP);
    }

    /** Whether nothing is said: the same as {@link #PLAIN}. */
    public boolean isPlain() {
        return stem == null && beams.isEmpty() && articulations.isEmpty() && !fermata && tremolo == null
                && other.isEmpty() && lyrics.isEmpty() && slurMarks.isEmpty() && spaced;
    }
}

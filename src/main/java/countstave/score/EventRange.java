package countstave.score;

/**
 * Events of a voice that stand one after the other in a bar.
 *
 * @param voice name of the voice
 * @param staff staff of the first of them
 * @param first index in the voice of the first
 * @param last index in the voice of the last
 */
public record EventRange(String voice, int staff, int first, int last) {

    /** Whether the event with this index in the voice is among them. */
    public boolean holds(int index) {
        return first <= index && index <= last;
    }

    /** Whether all of {@code other}, a range of the same voice, are among them. */
    public boolean holds(EventRange other) {
        return holds(other.first) && holds(other.last);
    }

    // Written out because derived ones slow the start (DEVELOPERS.md, "A short run").
    @Override
    public boolean equals(Object other) {
        return other instanceof EventRange that && voice.equals(that.voice) && staff == that.staff
                && first == that.first && last == that.last;
    }

    @Override
    public int hashCode() {
        return 31 * first + last;
    }
}

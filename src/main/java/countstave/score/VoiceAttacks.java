package countstave.score;

import countstave.time.Offset;
import java.util.List;

/**
 * The attacks of one counted voice of a bar.
 *
 * @param staff the staff it stands on, 1 the uppermost
 * @param voice MusicXML voice name
 * @param attacks distinct moments at which a note of it begins to sound, in order
 */
public record VoiceAttacks(int staff, String voice, List<Offset> attacks) {

    // Written out because derived ones slow the start (DEVELOPERS.md, "A short run").
    @Override
    public boolean equals(Object other) {
        return other instanceof VoiceAttacks that && staff == that.staff && voice.equals(that.voice)
                && attacks.equals(that.attacks);
    }

    @Override
    public int hashCode() {
        return 31 * attacks.hashCode() + staff;
    }
}

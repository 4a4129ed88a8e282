package countstave.sound;

import countstave.time.Exact;
import countstave.voice.Speaker;

/**
 * How a WAV file sounds.
 *
 * @param peakDecibels highest level below full scale, see {@link GuideOptions}
 * @param speaker who says the counts, or null for nobody
 * @param lead seconds of silence before the track begins, so that a first word can begin before its beat
 */
public record WavSound(double peakDecibels, Speaker speaker, Exact lead) {

    /** Clicks only. */
    public static WavSound clicks(double peakDecibels) {
        return new WavSound(peakDecibels, null, Exact.ZERO);
    }
}

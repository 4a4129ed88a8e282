package countstave.sound;

import countstave.time.Exact;
import countstave.voice.Speaker;

/**
 * How a WAV file sounds.
 *
 * @param peakDecibels highest level below full scale, see {@link GuideOptions}
 * @param speaker who says the counts, or null for nobody
 */
public record WavSound(double peakDecibels, Speaker speaker) {

    /**
     * Silence before a track that is spoken, so that its first word can begin before its beat: longer than the latest
     * centre of the bank, and a whole number of samples.
     */
    static final Exact LEAD = Exact.of(1, 5);

    /** Clicks only. */
    public static WavSound clicks(double peakDecibels) {
        return new WavSound(peakDecibels, null);
    }

    /** Seconds from the file's first sample to the track's beginning, for every layer alike: none where nobody speaks. */
    Exact lead() {
        return speaker == null ? Exact.ZERO : LEAD;
    }
}

package countstave.take;

import countstave.score.ScoreException;
import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;

/**
 * The clicks of a guide track that was heard while a take was made.
 *
 * @param name of its file
 * @param rate its samples a second
 * @param seconds of the clicks, from its start
 * @param sounds of each click {@link #LENGTH} seconds from {@link #AHEAD} before it on
 */
record GuideClicks(String name, double rate, List<Double> seconds, List<float[]> sounds) {

    static final double AHEAD = 0.002;
    static final double LENGTH = 0.05;
    /** A click is not weaker than this against the loudest, decibels. */
    private static final double WEAKEST = 30;
    private static final int FEWEST = 4;

    /**
     * @param most what comes later than this, in seconds, is left out
     * @throws ScoreException in one line if it is no WAV file, or has no clicks
     */
    static GuideClicks read(Path file, double most) throws IOException {
        String name = "click track " + file.getFileName();
        if (!TakeReader.format(file, name).equals("WAV")) {
            throw new ScoreException(name + " is no WAV file; name the guide track that was heard, as WAV");
        }
        Samples.Source source = () -> SoundStream.open(file, name);
        List<Double> seconds = new ArrayList<>();
        List<Onset> onsets = OnsetFinder.find(source, Levels.of(source, name));
        double loudest = onsets.stream().mapToDouble(Onset::level).max().orElse(0);
        for (Onset onset : onsets) {
            // where a click is cut off something begins too, but not a click
            if (onset.second() < most && onset.level() > loudest - WEAKEST) {
                seconds.add(onset.second());
            }
        }
        if (seconds.size() < FEWEST) {
            throw new ScoreException(name + " has no clicks that could be heard in the take; name the guide track that was"
                    + " heard");
        }
        try (Samples samples = source.open()) {
            return new GuideClicks(name, samples.rate(), List.copyOf(seconds), sounds(samples, seconds));
        }
    }

    private static List<float[]> sounds(Samples samples, List<Double> seconds) throws IOException {
        int length = (int) Math.ceil(LENGTH * samples.rate());
        SampleRing ring = new SampleRing(length + Samples.BLOCK);
        List<float[]> sounds = new ArrayList<>();
        float[] block = new float[Samples.BLOCK];
        int n = samples.read(block);
        while (sounds.size() < seconds.size()) {
            // after the end there is silence
            for (int i = 0; i < Math.max(1, n); i++) {
                ring.add(i < n ? block[i] : 0);
            }
            while (sounds.size() < seconds.size() && ring.end() >= from(seconds, sounds.size(), samples) + length) {
                float[] sound = new float[length];
                for (int i = 0; i < length; i++) {
                    sound[i] = ring.at(from(seconds, sounds.size(), samples) + i);
                }
                sounds.add(sound);
            }
            n = n == 0 ? 0 : samples.read(block);
        }
        return sounds;
    }

    private static long from(List<Double> seconds, int click, Samples samples) {
        return Math.round((seconds.get(click) - AHEAD) * samples.rate());
    }

    /** Its sample at {@code second} as it is heard between two of its samples: a windowed sinc. */
    float at(int click, double second) {
        float[] sound = sounds.get(click);
        double place = second * rate - Math.round((seconds.get(click) - AHEAD) * rate);
        int middle = (int) Math.floor(place);
        double sum = 0;
        for (int i = Math.max(0, middle - 7); i <= Math.min(sound.length - 1, middle + 8); i++) {
            double x = Math.PI * (place - i);
            double window = 0.5 + 0.5 * Math.cos(x / 9);
            sum += sound[i] * (Math.abs(x) < 1e-9 ? 1 : Math.sin(x) / x) * window;
        }
        return (float) sum;
    }
}

package countstave.take;

import countstave.score.ScoreException;
import java.io.IOException;
import java.util.List;
import java.util.Locale;

/**
 * What a take says once the guide track that is heard in it is known.
 *
 * @param strokes what was played
 * @param clicks seconds at which the guide's clicks are heard
 * @param remarks what is to be told of it
 */
record GuideBleed(List<Onset> strokes, List<Double> clicks, List<String> remarks) {

    /** Words may be so much louder than the strokes, decibels; up to here {@code WordBleedTest} has measured. */
    private static final double MOST_LOUDER = 12;

    /**
     * @param name of the take
     * @throws ScoreException in one line if the track cannot be read, or hides the strokes
     */
    static GuideBleed find(GuideFile file, String name, Levels levels, Samples.Source take) throws IOException {
        GuideClicks guide = GuideClicks.read(file.path(), levels.seconds());
        Samples.Source track = () -> SoundStream.open(file.path(), guide.name());
        boolean speaks = WordBleed.speaks(guide, track, levels.seconds());
        GuideBleed heard = speaks ? words(file, guide, track, name, levels, take) : clicks(guide, levels, take);
        return heard != null ? heard : new GuideBleed(OnsetFinder.find(take, levels), List.of(), List.of("the click of "
                + guide.name() + " is not heard in " + name + ": the start is found from the strokes"));
    }

    private static GuideBleed clicks(GuideClicks guide, Levels levels, Samples.Source take) throws IOException {
        List<Onset> onsets = OnsetFinder.find(take, levels);
        ClickBleed bleed = ClickBleed.find(guide, onsets, take);
        if (bleed == null) {
            return null;
        }
        Samples.Source without = bleed.removedFrom(take);
        return new GuideBleed(bleed.strokes(onsets, OnsetFinder.find(without, levels)), bleed.seconds(), List.of());
    }

    private static GuideBleed words(GuideFile file, GuideClicks guide, Samples.Source track, String name, Levels floor,
            Samples.Source take) throws IOException {
        List<Double> clicks = ClickSearch.find(track, file, floor.seconds());
        WordBleed bleed = WordBleed.find(track, clicks, take);
        if (bleed == null) {
            return null;
        }
        List<Onset> left = OnsetFinder.find(bleed.removedFrom(take), floor);
        List<Onset> strokes = bleed.strokes(left);
        double[] levels = strokes.stream().mapToDouble(Onset::level).sorted().toArray();
        double louder = bleed.loudness() - (levels.length == 0 ? Double.NEGATIVE_INFINITY : levels[levels.length / 2]);
        if (louder > MOST_LOUDER) {
            throw new ScoreException(String.format(Locale.ROOT, "the words of %s are loud in %s%s: strokes are lost among them; make the"
                    + " track with --voice none, or listen to it with headphones", guide.name(), name,
                    levels.length == 0 ? "" : String.format(Locale.ROOT, ", %.0f dB louder than the strokes", louder)));
        }
        return new GuideBleed(strokes, bleed.clicks(), clicks.isEmpty() ? List.of(guide.name() + " says words alone, without clicks:"
                + " early and late are measured against the player's own beat") : List.of());
    }
}

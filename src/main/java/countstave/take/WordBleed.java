package countstave.take;

import java.io.IOException;
import java.util.ArrayList;
import java.util.List;

/**
 * A guide track that speaks, heard in a take: all that sounds in it is known, words and clicks, and is taken out of the take
 * at once, by {@link RoomFilter}.
 */
final class WordBleed {

    /** A track speaks when so much of its energy lies beyond what a click is. */
    private static final double SPEAKS = 0.2;
    /** An onset has to be so much stronger than what is left of the guide at that moment, decibels. */
    private static final double OVER_LEFT = 6;
    /** Nothing so much weaker than the loud strokes is one, decibels: ghost notes are 30 to 40 below accents. */
    private static final double WEAKEST = 40;
    /** Seconds around an onset in which the guide's sound is looked at. */
    private static final double BEFORE = 0.010;
    private static final double AFTER = 0.015;

    private final WithoutGuide filter;
    private final GuideClock clock;
    private final List<Double> clicks;

    private WordBleed(WithoutGuide filter, GuideClock clock, List<Double> clicks) {
        this.filter = filter;
        this.clock = clock;
        this.clicks = clicks;
    }

    /** Whether in a guide track more is heard than clicks. */
    static boolean speaks(GuideClicks guide, Samples.Source source, double most) throws IOException {
        double all = 0;
        double inClicks = 0;
        int click = 0;
        long at = 0;
        try (Samples samples = source.open()) {
            float[] block = new float[Samples.BLOCK];
            for (int n = samples.read(block); n > 0 && at < most * samples.rate(); n = samples.read(block)) {
                for (int i = 0; i < n; i++) {
                    double second = at++ / samples.rate();
                    while (click + 1 < guide.seconds().size() && guide.seconds().get(click + 1) - GuideClicks.AHEAD <= second) {
                        click++;
                    }
                    double after = second - guide.seconds().get(click);
                    all += block[i] * block[i];
                    inClicks += after >= -GuideClicks.AHEAD && after < GuideClicks.LENGTH ? block[i] * block[i] : 0;
                }
            }
        }
        return all - inClicks > SPEAKS * all;
    }

    /** Null where it is not heard. */
    static WordBleed find(Samples.Source guide, List<Double> clicks, Samples.Source take) throws IOException {
        List<Double> lags = ClickLag.likely(guide, take);
        if (lags.isEmpty()) {
            return null;
        }
        GuideClock clock = GuideClock.of(guide, take, lags);
        if (clock == null) {
            return null;
        }
        RoomFilter room = RoomFilter.of(guide, take, clock);
        return new WordBleed(new WithoutGuide(room), room.clock(), clicks);
    }

    /** When its clicks are heard. */
    List<Double> clicks() {
        return clicks.stream().map(clock::heard).toList();
    }

    /** The take without it. */
    Samples.Source removedFrom(Samples.Source take) {
        return () -> filter.over(take.open());
    }

    /**
     * The strokes among what is heard.
     *
     * @param left onsets of the take without the guide, after all of it has been read
     */
    List<Onset> strokes(List<Onset> left) {
        double[] levels = left.stream().mapToDouble(Onset::level).sorted().toArray();
        double loud = levels.length == 0 ? 0 : levels[(int) (0.9 * (levels.length - 1))];
        double mayBeLeft = filter.left();
        List<Onset> strokes = new ArrayList<>();
        for (Onset onset : left) {
            double guide = filter.loudest(onset.second() - BEFORE, onset.second() + AFTER);
            if (onset.level() > guide + mayBeLeft + OVER_LEFT && onset.level() > loud - WEAKEST) {
                strokes.add(onset);
            }
        }
        return List.copyOf(strokes);
    }

    /** How strong the loudest words are heard in the take, decibels below full scale. */
    double loudness() {
        return filter.loudness();
    }
}

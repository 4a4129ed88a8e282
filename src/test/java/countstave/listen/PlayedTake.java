package countstave.listen;

import countstave.CountedScore;
import countstave.CountingOptions;
import countstave.count.PartCounts;
import countstave.musicxml.ScoreFile;
import countstave.take.Onset;
import countstave.take.Take;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Random;

/** A take as a player of known habits would make it, as onsets: each with the planned stroke it was meant for. */
final class PlayedTake {

    /**
     * How somebody plays.
     *
     * @param spread standard deviation of a stroke around its place, seconds
     * @param missed share of strokes that are left out
     * @param extra share of strokes after which one more is heard
     * @param speed seconds of the take for a second of the plan
     * @param drift by which share the tempo changes from start to end
     */
    record Habits(double spread, double missed, double extra, double speed, double drift) {
    }

    /** An onset and the number of the planned stroke, all repeats run through, that it was meant for; −1 for none. */
    record Meant(double second, int stroke) {
    }

    final List<Meant> all = new ArrayList<>();
    /** By how much each planned stroke was displaced, or NaN. */
    final double[] displaced;

    PlayedTake(PlannedPass pass, int repeats, Habits habits, long seed) {
        Random random = new Random(seed);
        int n = pass.strokes().size();
        double period = pass.period().toDouble();
        double length = repeats * period;
        double start = 1 + 4 * random.nextDouble();
        displaced = new double[n * repeats];
        double before = -1;
        for (int i = 0; i < displaced.length; i++) {
            double plan = i / n * period + pass.strokes().get(i % n).second().toDouble();
            double on = start + habits.speed * (plan - habits.drift * plan * plan / (2 * length));
            displaced[i] = Double.NaN;
            if (random.nextDouble() >= habits.missed) {
                // a distribution with no tails: strokes three deviations off are not drawn
                double off = Math.max(-3, Math.min(3, random.nextGaussian())) * habits.spread;
                displaced[i] = off;
                all.add(new Meant(on + off, i));
            }
            double gap = i + 1 < displaced.length ? (i + 1) / n * period + pass.strokes().get((i + 1) % n).second().toDouble() - plan : 0;
            // a stick on a rim, a cough: not nearer to a stroke than ears and this method tell apart
            if (gap > 0.2 && random.nextDouble() < habits.extra) {
                all.add(new Meant(on + gap * 0.5, -1));
            }
            before = on;
        }
        // something at the start and after the end: a word, the stool
        all.add(new Meant(start * 0.3, -1));
        all.add(new Meant(before + 1.5, -1));
        all.sort(Comparator.comparingDouble(Meant::second));
    }

    Take take() {
        return take(all.stream().map(meant -> new Onset(meant.second, -12)).toList());
    }

    /** A take in which these onsets are heard, the last a second before its end. */
    static Take take(List<Onset> onsets) {
        return new Take("made.wav", Take.Kind.SOUND, onsets.get(onsets.size() - 1).second() + 1, onsets, List.of(), List.of(),
                List.of());
    }

    static PartCounts counts(String xml) {
        return CountedScore.of(ScoreFile.of("made.musicxml", xml.getBytes(StandardCharsets.UTF_8)), CountingOptions.defaults())
                .parts().get(0);
    }

    static PartCounts counts(Path score) {
        return CountedScore.of(ScoreFile.load(score), CountingOptions.defaults()).parts().get(0);
    }

    static PlannedPass pass(PartCounts counts) {
        return PlannedPass.of(countstave.practice.Stretch.of(counts), List.of());
    }
}

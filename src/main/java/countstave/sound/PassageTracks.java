package countstave.sound;

import countstave.count.NoteNames;
import countstave.practice.Passage;
import countstave.practice.Stage;
import countstave.practice.StepCount;
import countstave.practice.TempoLadder;
import java.util.ArrayList;
import java.util.List;

/**
 * The guide tracks of a passage: one climbs through the tempo steps, each with its count, one goes through the stages of
 * thinning at the slowest step.
 *
 * @param steps the tempo steps
 * @param stages the stages of thinning
 * @param slowest the tempo of the stages, in note symbols
 */
public record PassageTracks(GuideTrack steps, GuideTrack stages, String slowest) {

    /**
     * @param repeats how many times the passage sounds at each tempo and stage, 1 to {@link Leg#MOST_REPEATS}
     * @throws countstave.score.ScoreException if the number of repeats is out of range
     */
    public static PassageTracks of(Passage passage, int repeats, GuideOptions options) {
        return new PassageTracks(GuideTrack.of(steps(passage, repeats), options),
                GuideTrack.of(stages(passage, repeats), options), tempo(slowest(passage)));
    }

    private static List<Leg> steps(Passage passage, int repeats) {
        List<Leg> legs = new ArrayList<>();
        for (StepCount count : passage.counts()) {
            for (TempoLadder.Rung rung : count.steps()) {
                String label = tempo(rung) + (passage.counts().size() > 1 ? ", count " + count.number() : "");
                legs.add(new Leg(count.stretch(), passage.speed(rung), Stage.ALL, repeats, label));
            }
        }
        return legs;
    }

    private static List<Leg> stages(Passage passage, int repeats) {
        StepCount first = passage.counts().get(0);
        List<Leg> legs = new ArrayList<>();
        for (Stage stage : Stage.values()) {
            legs.add(new Leg(first.stretch(), passage.speed(slowest(passage)), stage, repeats, stage.title()));
        }
        return legs;
    }

    private static TempoLadder.Rung slowest(Passage passage) {
        return passage.counts().get(0).steps().get(0);
    }

    private static String tempo(TempoLadder.Rung rung) {
        return NoteNames.SYMBOLS.tempo(rung.tempo());
    }
}

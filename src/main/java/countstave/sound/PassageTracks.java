package countstave.sound;

import countstave.count.NoteNames;
import countstave.practice.Passage;
import countstave.practice.Seam;
import countstave.practice.Stage;
import countstave.practice.StepCount;
import countstave.practice.TempoLadder;
import countstave.score.Tempo;
import countstave.time.Exact;
import java.util.ArrayList;
import java.util.List;

/**
 * The guide tracks of a passage: every seam in its growing pieces, every tempo step as a loop of its own, and the stages
 * of thinning at the slowest step or the tempi that were asked for. What the voice limit forbids is in none of them.
 */
public final class PassageTracks {

    /** How often each piece of a seam sounds, where nothing else is asked. Common practice, no source. */
    private static final int SEAM_REPEATS = 4;

    private final Passage passage;
    private final int repeats;
    private final GuideOptions options;
    private final NoteNames names;
    private final List<Track> tracks = new ArrayList<>();

    /** What a track is for. */
    public enum Kind { SEAM, STEP, STAGES }

    /**
     * A track.
     *
     * @param seam the seam it is for, or null
     * @param name what its files are called, letters, digits and hyphens
     * @param label what it is, for the player
     */
    public record Track(Kind kind, Seam seam, String name, String label, GuideTrack track) {
    }

    private PassageTracks(Passage passage, int repeats, GuideOptions options, NoteNames names) {
        this.passage = passage;
        this.names = names;
        this.repeats = repeats;
        this.options = options;
    }

    /**
     * @param repeats how many times everything sounds, 1 to {@link Leg#MOST_REPEATS}; 0 for the clean repeats that a step
     *     asks for
     * @param names the language of the labels
     * @throws countstave.score.ScoreException if the number of repeats is out of range
     */
    public static List<Track> of(Passage passage, int repeats, GuideOptions options, NoteNames names) {
        PassageTracks tracks = new PassageTracks(passage, repeats, options, names);
        passage.seams().forEach(tracks::seam);
        passage.counts().forEach(tracks::steps);
        if (passage.asked().isEmpty()) {
            tracks.stages(passage.counts().get(0));
        }
        passage.asked().forEach(tracks::stages);
        return List.copyOf(tracks.tracks);
    }

    /** The growing pieces one after the other, at the slowest step at which the change is made. */
    private void seam(Seam seam) {
        TempoLadder.Rung rung = seam.count().steps().get(0);
        List<Leg> legs = new ArrayList<>();
        for (Seam.Loop loop : seam.loops()) {
            legs.add(new Leg(seam.around(), loop.from(), loop.to(), speed(rung), seam.count().sayableStageAround(rung),
                    repeats == 0 ? SEAM_REPEATS : repeats, loop.size().title(names.phrases())));
        }
        String label = names.phrase("track.seam", seam.name(), tempo(rung));
        if (!options.endless()) {
            add(Kind.SEAM, seam, "seam-" + seam.name(), label, legs);
            return;
        }
        for (int i = 0; i < legs.size(); i++) {
            Seam.Size size = seam.loops().get(i).size();
            add(Kind.SEAM, seam, "seam-" + seam.name() + "-" + size.id(), label + ", " + size.title(names.phrases()),
                    List.of(legs.get(i)));
        }
    }

    private void steps(StepCount count) {
        for (TempoLadder.Rung rung : count.steps()) {
            Stage stage = count.sayableStage(rung);
            String label = tempo(rung) + (passage.counts().size() > 1 ? ", " + names.phrase("turn.count", String.valueOf(count.number())) : "")
                    + (stage == Stage.ALL ? "" : ", " + stage.title(names.phrases()));
            add(Kind.STEP, null, "step-" + number(rung), label, List.of(new Leg(count.stretch(), speed(rung), stage,
                    repeats == 0 ? rung.clean() : repeats, label)));
        }
    }

    private void stages(StepCount count) {
        TempoLadder.Rung rung = count.steps().get(0);
        List<Leg> legs = new ArrayList<>();
        List<Stage> stages = count.stages().stream().filter(stage -> count.isSayable(rung, stage)).toList();
        for (Stage stage : stages) {
            legs.add(new Leg(count.stretch(), speed(rung), stage, repeats == 0 ? TempoLadder.CLEAN : repeats, stage.title(names.phrases())));
        }
        if (!options.endless()) {
            add(Kind.STAGES, null, "stages-" + number(rung), names.phrase("track.stages", tempo(rung)), legs);
            return;
        }
        for (int i = 0; i < legs.size(); i++) {
            add(Kind.STAGES, null, "stages-" + number(rung) + "-" + stages.get(i).id(),
                    tempo(rung) + ", " + stages.get(i).title(names.phrases()), List.of(legs.get(i)));
        }
    }

    private void add(Kind kind, Seam seam, String name, String label, List<Leg> legs) {
        tracks.add(new Track(kind, seam, name, label, GuideTrack.of(legs, options)));
    }

    private Exact speed(TempoLadder.Rung rung) {
        return passage.speed(rung);
    }

    /** {@code 31}, {@code 112-5}. */
    private static String number(TempoLadder.Rung rung) {
        return rung.tempo().perMinute().stripTrailingZeros().toPlainString().replace('.', '-');
    }

    private String tempo(TempoLadder.Rung rung) {
        Tempo tempo = rung.tempo();
        return names.tempo(tempo);
    }
}

package countstave.practice;

import countstave.score.Tempo;
import countstave.time.Exact;
import java.util.List;

/**
 * A passage to practise, with everything that is proposed for it.
 *
 * @param rank 1 for the hardest of the part
 * @param stretch its bars
 * @param figures what it was ranked by
 * @param bars the figures of each of its bars alone
 * @param ladder tempo steps, in the unit of the tempo at its start
 * @param breaths breath marks for the slowest rung, hence for every other
 */
public record Passage(int rank, Stretch stretch, Figures figures, List<Figures> bars, List<TempoLadder.Rung> ladder,
        List<Breath.Mark> breaths) {

    /** The written tempo at its start. */
    public Tempo written() {
        return stretch.timeline(0).tempo();
    }

    /** How many times as fast as written a rung is. */
    public Exact speed(TempoLadder.Rung rung) {
        return Exact.of(rung.tempo().perMinute()).over(Exact.of(written().perMinute()));
    }

    /**
     * The first stage that can be said at a rung within the voice limit: {@link Stage#ALL} on the lower rungs, thinner
     * ones where the tempo outruns the voice.
     */
    public Stage sayableStage(TempoLadder.Rung rung) {
        Clock clock = Clock.of(stretch).faster(speed(rung));
        for (Stage stage : Stage.values()) {
            SpeechRate rate = stage == Stage.ALL ? SpeechRate.of(stretch, clock)
                    : SpeechRate.of(saidAt(stage), stretch.end(), clock);
            if (!rate.peak().isMoreThan(Exact.of(figures.voiceLimit()))) {
                return stage;
            }
        }
        return Stage.NONE;
    }

    private List<countstave.time.Offset> saidAt(Stage stage) {
        return Thinning.of(stretch, stage).stream().filter(Thinning.Thinned::said)
                .map(t -> stretch.position(t.bar(), t.count().at())).toList();
    }
}

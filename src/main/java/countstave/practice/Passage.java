package countstave.practice;

import countstave.grid.Segment;
import countstave.score.BarTimeline;
import countstave.score.Tempo;
import countstave.time.Exact;
import countstave.time.Offset;
import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;

/**
 * A passage to practise, with everything that is proposed for it.
 *
 * @param rank 1 for the hardest of the part
 * @param sameAs rank of the first passage that is counted and played alike, or 0 if there is none
 * @param stretch its bars
 * @param figures what it was ranked by
 * @param bars the figures of each of its bars alone
 * @param sayable for each stage the highest whole tempo within the voice limit, in the unit of the written tempo
 * @param ladder tempo steps, in the unit of the written tempo
 * @param breaths breath marks for the slowest rung, hence for every other
 */
public record Passage(int rank, int sameAs, Stretch stretch, Figures figures, List<Figures> bars,
        Map<Stage, Integer> sayable, List<TempoLadder.Rung> ladder, List<Breath.Mark> breaths) {

    /** All that is proposed for a stretch, without a rank. */
    static Passage of(Stretch stretch, PracticeOptions options) {
        Clock clock = Clock.of(stretch);
        Figures figures = Figures.of(stretch, options.voiceLimit());
        List<Figures> bars = new ArrayList<>();
        for (int bar = 0; bar < stretch.size(); bar++) {
            bars.add(Figures.of(stretch.bar(bar), options.voiceLimit()));
        }
        Tempo written = stretch.tempo();
        Map<Stage, Integer> sayable = new EnumMap<>(Stage.class);
        sayable.put(Stage.ALL, figures.sayable());
        for (Stage stage : List.of(Stage.BEATS_AND_PLAYED, Stage.BEATS, Stage.STRONG_BEATS, Stage.NONE)) {
            List<Offset> said = Thinning.of(stretch, stage).stream().filter(Thinning.Thinned::said)
                    .map(t -> stretch.position(t.bar(), t.count().at())).toList();
            sayable.put(stage, SpeechRate.of(said, stretch.end(), clock).highestTempo(written, options.voiceLimit()));
        }
        List<TempoLadder.Rung> ladder = TempoLadder.of(written, figures.sayable());
        Exact slowest = Exact.of(ladder.get(0).tempo().perMinute()).over(Exact.of(written.perMinute()));
        return new Passage(0, 0, stretch, figures, bars, sayable, ladder,
                Breath.marks(stretch, clock.faster(slowest), options.breath(), options.voiceLimit()));
    }

    Passage ranked(int newRank, int newSameAs) {
        return new Passage(newRank, newSameAs, stretch, figures, bars, sayable, ladder, breaths);
    }

    /** The written tempo at its start, see {@link Stretch#tempo}. */
    public Tempo written() {
        return stretch.tempo();
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
        for (Stage stage : Stage.values()) {
            if (rung.tempo().perMinute().compareTo(BigDecimal.valueOf(sayable.get(stage))) <= 0) {
                return stage;
            }
        }
        return Stage.NONE;
    }

    /** What is counted and played, bar by bar: equal for passages that are practised alike. */
    List<Object> content() {
        List<Object> content = new ArrayList<>();
        content.add(Thinning.beginsNewFamily(stretch));
        for (int bar = 0; bar < stretch.size(); bar++) {
            BarTimeline timeline = stretch.timeline(bar);
            content.add(timeline.bar().length());
            content.add(timeline.attacks());
            content.add(timeline.beats());
            content.add(timeline.tempi());
            for (Segment segment : stretch.bars().get(bar).plan().segments()) {
                content.add(List.of(segment.start(), segment.unit(), segment.kind()));
            }
        }
        return content;
    }
}

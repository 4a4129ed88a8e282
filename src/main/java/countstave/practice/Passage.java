package countstave.practice;

import countstave.score.BarTimeline;
import countstave.score.Tempo;
import countstave.time.Exact;
import java.util.ArrayList;
import java.util.List;

/**
 * A passage to practise, with everything that is proposed for it.
 *
 * @param rank 1 for the hardest of the part
 * @param sameAs rank of the first passage that is counted and played alike, or 0 if there is none
 * @param stretch its bars, counted as at the written tempo
 * @param figures what it was ranked by
 * @param bars the figures of each of its bars alone
 * @param counts how it is counted from the slowest tempo step to the written tempo, and on which steps: at each of them
 *     as in the plan of that tempo
 * @param asked how it is counted at each tempo that was asked for, see {@link PracticeOptions#at}
 * @param seams where the count changes, here or in a passage alike to it, the hardest first; none that is practised in a
 *     passage of lower rank
 * @param seamMarks where seams stand in its bars, also those of other passages
 */
public record Passage(int rank, int sameAs, Stretch stretch, Figures figures, List<Figures> bars,
        List<StepCount> counts, List<StepCount> asked, List<Seam> seams,
        List<Seam.Mark> seamMarks) {

    /** Below this share of the voice limit a passage without a change is read at sight. A judgement. */
    private static final Exact AT_SIGHT = Exact.of(3, 5);

    /** All that is proposed for a stretch, without a rank. */
    static Passage of(Stretch stretch, PracticeOptions options, StepCounts steps) {
        Figures figures = Figures.of(stretch, options.voiceLimit());
        List<Figures> bars = new ArrayList<>();
        for (int bar = 0; bar < stretch.size(); bar++) {
            bars.add(Figures.of(stretch.bar(bar), options.voiceLimit()));
        }
        return new Passage(0, 0, stretch, figures, bars, steps.of(stretch), steps.asked(stretch), List.of(), List.of());
    }

    Passage ranked(int newRank, int newSameAs) {
        return new Passage(newRank, newSameAs, stretch, figures, bars, counts, asked, seams, seamMarks);
    }

    Passage withSeams(List<Seam> found, List<Seam.Mark> marks) {
        return new Passage(rank, sameAs, stretch, figures, bars, counts, asked, List.copyOf(found), List.copyOf(marks));
    }

    /**
     * Whether a player of the piece reads it at sight: nothing changes in it, nor with its first bar, and it asks for
     * less than six tenths of the voice limit.
     */
    public boolean isAtSight() {
        return figures.changes() == 0 && Seams.of(atWritten()).isEmpty()
                && figures.peak().isLessThan(Exact.of(figures.voiceLimit()).times(AT_SIGHT));
    }

    /** The written tempo at its start, see {@link Stretch#tempo}. */
    public Tempo written() {
        return stretch.tempo();
    }

    /** Tempo steps, in the unit of the written tempo. */
    public List<TempoLadder.Rung> ladder() {
        return counts.stream().flatMap(count -> count.steps().stream()).toList();
    }

    /** The count of the written tempo. */
    public StepCount atWritten() {
        return counts.get(counts.size() - 1);
    }

    /** How many times as fast as written a rung is. */
    public Exact speed(TempoLadder.Rung rung) {
        return Exact.of(rung.tempo().perMinute()).over(Exact.of(written().perMinute()));
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
        }
        for (StepCount count : counts) {
            content.add(count.from());
            content.add(count.stretch().counting());
        }
        return content;
    }
}

package countstave.practice;

import countstave.count.PartCounts;
import countstave.score.ScoreException;
import countstave.score.Tempo;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;

/**
 * What to practise in a part, in order of difficulty.
 *
 * @param counts the part with its words
 * @param options what was set
 * @param whole the figures of the whole part
 * @param passages the hardest first
 */
public record PracticePlan(PartCounts counts, PracticeOptions options, Figures whole, List<Passage> passages) {

    /**
     * The whole way: passages → figures → order → tempo steps → breath.
     *
     * @throws ScoreException if there are no bars, nothing is played in them, or a tempo cannot be practised
     */
    public static PracticePlan of(PartCounts counts, PracticeOptions options) {
        String name = counts.plan().timeline().part().name();
        if (counts.bars().isEmpty()) {
            throw new ScoreException("part " + name + ": no bars are selected; choose others with --bars");
        }
        Stretch whole = Stretch.of(counts);
        if (!whole.hasAttacks()) {
            throw new ScoreException("part " + name + ": bars " + whole.numbers()
                    + " hold no attack, so there is nothing to practise; choose others with --bars");
        }
        Clock.of(whole);
        List<Stretch> stretches = Passages.of(counts, options.voiceLimit());
        List<Passage> ranked = new ArrayList<>();
        for (Stretch stretch : stretches) {
            ranked.add(passage(stretch, options));
        }
        // the sort is stable: equally hard passages keep the order of the score
        ranked.sort(Comparator.comparingDouble((Passage p) -> p.figures().difficulty()).reversed());
        List<Passage> passages = new ArrayList<>();
        for (Passage p : ranked) {
            passages.add(new Passage(passages.size() + 1, p.stretch(), p.figures(), p.bars(), p.ladder(),
                    p.breaths()));
        }
        return new PracticePlan(counts, options, Figures.of(whole, options.voiceLimit()), List.copyOf(passages));
    }

    private static Passage passage(Stretch stretch, PracticeOptions options) {
        Figures figures = Figures.of(stretch, options.voiceLimit());
        List<Figures> bars = new ArrayList<>();
        for (int bar = 0; bar < stretch.size(); bar++) {
            bars.add(Figures.of(stretch.bar(bar), options.voiceLimit()));
        }
        Tempo written = stretch.timeline(0).tempo();
        List<TempoLadder.Rung> ladder = TempoLadder.of(written, figures.sayable());
        Passage bare = new Passage(0, stretch, figures, bars, ladder, List.of());
        Clock slowest = Clock.of(stretch).faster(bare.speed(ladder.get(0)));
        return new Passage(0, stretch, figures, bars, ladder,
                Breath.marks(stretch, slowest, options.breath(), options.voiceLimit()));
    }
}

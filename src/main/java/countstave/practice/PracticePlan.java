package countstave.practice;

import countstave.count.PartCounts;
import countstave.score.ScoreException;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;

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
     * The whole way: passages → figures → tempo steps, each with its count → breath → order.
     *
     * @throws ScoreException if there are no bars, nothing is played in them, or a tempo cannot be practised
     */
    public static PracticePlan of(PartCounts counts, PracticeOptions options) {
        return of(counts, options, CountsAtTempo.of(counts));
    }

    static PracticePlan of(PartCounts counts, PracticeOptions options, CountsAtTempo atTempo) {
        String name = counts.part().name();
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
        StepCounts steps = new StepCounts(atTempo, options);
        List<Passage> ranked = new ArrayList<>();
        for (Stretch stretch : stretches) {
            ranked.add(Passage.of(stretch, options, steps));
        }
        // the sort is stable: equally hard passages keep the order of the score
        ranked.sort(Comparator.comparingDouble((Passage p) -> p.figures().difficulty()).reversed());
        List<Passage> passages = new ArrayList<>();
        Map<List<Object>, Integer> known = new HashMap<>();
        for (Passage passage : ranked) {
            int rank = passages.size() + 1;
            Integer before = known.putIfAbsent(passage.content(), rank);
            passages.add(passage.ranked(rank, before == null ? 0 : before));
        }
        return new PracticePlan(counts, options, Figures.of(whole, options.voiceLimit()), Seams.in(passages));
    }

    /** The passages that are worth practising one by one: not like one before them, and not read at sight. */
    public List<Passage> different() {
        return passages.stream().filter(p -> p.sameAs() == 0 && !isLeft(p)).toList();
    }

    /** The passages that a player of the piece reads at sight, in the order of the score; none where no other is left. */
    public List<Passage> atSight() {
        return passages.stream().filter(this::isLeft).sorted(Comparator.comparingInt(p -> p.stretch().first())).toList();
    }

    /** The other passages that are counted and played like one, in order of rank. */
    public List<Passage> alike(Passage passage) {
        return passages.stream().filter(p -> p.sameAs() == passage.rank()).toList();
    }

    /** Whether a passage is read at sight, and so are all that are alike to it: what is changed in one is practised. */
    private boolean isLeft(Passage passage) {
        int first = passage.sameAs() > 0 ? passage.sameAs() : passage.rank();
        return passages.stream().filter(p -> p.rank() == first || p.sameAs() == first).allMatch(Passage::isAtSight)
                && !passages.stream().allMatch(Passage::isAtSight);
    }
}

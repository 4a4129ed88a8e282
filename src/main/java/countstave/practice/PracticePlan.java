package countstave.practice;

import countstave.count.PartCounts;
import countstave.score.ScoreException;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;

/**
 * What to practise in a part, in order of difficulty.
 *
 * @param counts the part with its words
 * @param options what was set
 * @param whole the figures of the whole part
 * @param passages the hardest first
 * @param sightRead ranks of those that a player of the piece reads at sight; none where no other is left
 */
public record PracticePlan(PartCounts counts, PracticeOptions options, Figures whole, List<Passage> passages,
        Set<Integer> sightRead) {

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
        return new PracticePlan(counts, options, Figures.of(whole, options.voiceLimit()), Seams.in(passages),
                sightRead(passages));
    }

    /** Ranks of the passages that are left to be read at sight: so are all that are alike to them, and not all passages. */
    private static Set<Integer> sightRead(List<Passage> passages) {
        Set<Integer> practised = new HashSet<>();
        Set<Integer> sightRead = new HashSet<>();
        for (Passage passage : passages) {
            if (!passage.isAtSight()) {
                practised.add(first(passage));
            }
        }
        for (Passage passage : passages) {
            if (!practised.isEmpty() && !practised.contains(first(passage))) {
                sightRead.add(passage.rank());
            }
        }
        return Set.copyOf(sightRead);
    }

    private static int first(Passage passage) {
        return passage.sameAs() > 0 ? passage.sameAs() : passage.rank();
    }

    /** The passages that are worth practising one by one: not like one before them, and not read at sight. */
    public List<Passage> different() {
        return passages.stream().filter(p -> p.sameAs() == 0 && !isLeft(p)).toList();
    }

    /** Those of them that are worked on, the hardest first, {@code top} at most. */
    public List<Passage> worked(int top) {
        return different().stream().limit(top).toList();
    }

    /** The passages that a player of the piece reads at sight, in the order of the score; none where no other is left. */
    public List<Passage> atSight() {
        return passages.stream().filter(this::isLeft).sorted(Comparator.comparingInt(p -> p.stretch().first())).toList();
    }

    /** Whether a passage is read at sight. */
    public boolean isLeft(Passage passage) {
        return sightRead.contains(passage.rank());
    }

    /** The other passages that are counted and played like one, in order of rank. */
    public List<Passage> alike(Passage passage) {
        return passages.stream().filter(p -> p.sameAs() == passage.rank()).toList();
    }
}

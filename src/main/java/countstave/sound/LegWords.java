package countstave.sound;

import countstave.practice.Clock;
import countstave.practice.SpeechRate;
import countstave.practice.Stretch;
import countstave.practice.Thinning;
import countstave.score.BarTimeline;
import countstave.time.Exact;
import countstave.time.Offset;
import java.util.ArrayList;
import java.util.List;
import java.util.function.Predicate;

/**
 * What the voice says in a leg, once through: the counts that are said at the leg's stage, felt notes never.
 *
 * <p>The plan says little more than the voice limit allows. Where a person forces more, so that the fastest second is a
 * quarter beyond the limit, words that come closer than that are left out: those without a note, first off the beat, then
 * on it. Closer than {@link #CLOSEST} even played words off the beat are.
 *
 * @param words in the order of time
 * @param leavesOut whether a word is left out
 */
record LegWords(List<Word> words, boolean leavesOut) {

    /** Seconds between the centres of two words that can just be told apart: twelve a second. An assumption. */
    private static final Exact CLOSEST = Exact.of(1, 12);

    /** The plan itself goes a fifth beyond the limit before it looks for another count. */
    private static final Exact BEYOND = Exact.of(5, 4);

    /** How firmly a word is said. */
    enum Strength {
        FIRST(1), PLAYED(0.8), UNPLAYED(0.5);

        private final double gain;

        Strength(double gain) {
            this.gain = gain;
        }

        double gain() {
            return gain;
        }
    }

    /**
     * A word. {@code at}: from the leg's start; {@code bar}: which of the leg's bars it belongs to, from 0.
     */
    record Word(Offset at, String say, Strength strength, boolean onBeat, int bar) {

        private boolean isFree() {
            return strength == Strength.UNPLAYED;
        }
    }

    static LegWords of(Leg leg, GuideOptions options) {
        if (!options.isSpoken()) {
            return new LegWords(List.of(), false);
        }
        List<Word> words = new ArrayList<>();
        Stretch stretch = leg.stretch();
        for (Thinning.Thinned count : Thinning.of(stretch, leg.stage())) {
            Offset position = stretch.position(count.bar(), count.count().at());
            if (count.said() && position.isWithin(leg.from(), leg.to())) {
                BarTimeline bar = stretch.timeline(count.bar());
                boolean first = count.count().at().equals(Offset.ZERO) && bar.bar().phase().isZero();
                Strength strength = first ? Strength.FIRST : count.count().played() ? Strength.PLAYED : Strength.UNPLAYED;
                boolean onBeat = bar.beatAt(count.count().at()).start().equals(count.count().at());
                words.add(new Word(Offset.at(position.minus(leg.from())), count.count().say(), strength, onBeat,
                        count.bar() - leg.firstBar()));
            }
        }
        return thinned(words, leg, Exact.of(options.voiceLimit()).times(BEYOND));
    }

    /** What is said before a leg. */
    static List<Word> of(CountIn countIn) {
        List<Word> words = new ArrayList<>();
        for (int i = 0; i < countIn.beats().size(); i++) {
            Offset at = countIn.beats().get(i);
            words.add(new Word(at, countIn.words().get(i),
                    countIn.barStarts().contains(at) ? Strength.FIRST : Strength.PLAYED, true, 0));
        }
        return words;
    }

    private static LegWords thinned(List<Word> all, Leg leg, Exact limit) {
        Clock clock = leg.clock();
        List<Word> words = all;
        if (isBeyond(words, leg, clock, limit)) {
            words = without(words, leg, clock, Exact.ONE.over(limit), word -> word.isFree() && !word.onBeat());
        }
        if (isBeyond(words, leg, clock, limit)) {
            words = without(words, leg, clock, Exact.ONE.over(limit), Word::isFree);
        }
        words = without(words, leg, clock, CLOSEST, word -> word.isFree() && !word.onBeat());
        words = without(words, leg, clock, CLOSEST, word -> !word.onBeat());
        return new LegWords(List.copyOf(words), words.size() < all.size());
    }

    private static boolean isBeyond(List<Word> words, Leg leg, Clock clock, Exact limit) {
        return SpeechRate.of(words.stream().map(Word::at).toList(), Offset.at(leg.length()), clock).peak().isMoreThan(limit);
    }

    /** Leaves out each word that may go and is closer than {@code least} to the one before or after it that stays. */
    private static List<Word> without(List<Word> words, Leg leg, Clock clock, Exact least, Predicate<Word> mayGo) {
        List<Word> left = new ArrayList<>();
        for (int i = 0; i < words.size(); i++) {
            Word word = words.get(i);
            Offset next = i + 1 < words.size() ? words.get(i + 1).at() : Offset.at(leg.length());
            boolean crowded = clock.between(word.at(), next).isLessThan(least)
                    || !left.isEmpty() && clock.between(left.get(left.size() - 1).at(), word.at()).isLessThan(least);
            if (!crowded || !mayGo.test(word)) {
                left.add(word);
            }
        }
        return left;
    }
}

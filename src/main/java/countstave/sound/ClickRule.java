package countstave.sound;

import countstave.practice.PracticePlan;
import countstave.score.BarTimeline;
import countstave.score.Beat;
import countstave.score.ScoreException;
import java.util.Collection;
import java.util.Comparator;
import java.util.Set;
import java.util.TreeSet;

/**
 * When the click is heard.
 *
 * @param beats numbers of the beats on which it sounds; empty: all
 * @param silent of every {@code of} bars so many at the end are silent, the played notes too; 0 for none
 * @param of how many bars make a round
 */
public record ClickRule(Set<Integer> beats, int silent, int of) {

    private static final int MOST_BARS = 64;

    /** On all beats of all bars. */
    public static final ClickRule ALWAYS = new ClickRule(Set.of(), 0, 1);

    public ClickRule {
        beats = Set.copyOf(beats);
    }

    /**
     * Reads {@code 2,4} and {@code 1/4}; null for either where it was not given.
     *
     * @throws ScoreException if a text is no list of beats, or no part of a number of bars
     */
    public static ClickRule parse(String click, String silent) {
        Set<Integer> beats = new TreeSet<>();
        try {
            for (String beat : click == null ? new String[0] : click.split(",", -1)) {
                beats.add(positive(beat));
            }
        } catch (NumberFormatException e) {
            throw new ScoreException("--click '" + click + "' is no list of beats; write 2,4 for a click on beats 2 and 4", e);
        }
        if (silent == null) {
            return new ClickRule(beats, 0, 1);
        }
        try {
            String[] terms = silent.split("/", -1);
            int bars = positive(terms[0]);
            int round = terms.length == 2 ? positive(terms[1]) : 0;
            if (bars >= round || round > MOST_BARS) {
                throw new NumberFormatException();
            }
            return new ClickRule(beats, bars, round);
        } catch (NumberFormatException e) {
            throw new ScoreException("--silent '" + silent + "' is no part of a number of bars up to " + MOST_BARS
                    + "; write 1/4 for one silent bar of every four", e);
        }
    }

    private static int positive(String number) {
        int value = Integer.parseInt(number.strip());
        if (value < 1) {
            throw new NumberFormatException();
        }
        return value;
    }

    /**
     * Refuses a beat that no bar has.
     *
     * @throws ScoreException naming the part and what it has
     */
    public void check(Collection<PracticePlan> plans) {
        for (PracticePlan plan : plans) {
            BarTimeline longest = plan.counts().bars().stream().map(bar -> bar.plan().timeline())
                    .max(Comparator.comparingInt(ClickRule::last)).orElseThrow();
            for (int beat : new TreeSet<>(beats)) {
                if (beat > last(longest)) {
                    throw new ScoreException("part " + plan.counts().timeline().part().name() + ", bar "
                            + longest.bar().called() + ": --click " + beat + " is beyond its last beat, " + last(longest)
                            + " of " + longest.bar().meter() + ", and no bar has more; name beats from 1 to " + last(longest));
                }
            }
        }
    }

    private static int last(BarTimeline bar) {
        return bar.beats().stream().mapToInt(Beat::number).max().orElse(0);
    }

    boolean sounds(int beat) {
        return beats.isEmpty() || beats.contains(beat);
    }

    /** Whether the bar that comes as the {@code count}th, from 0, is silent. */
    boolean isSilent(long count) {
        return count % of >= of - silent;
    }
}

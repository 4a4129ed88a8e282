package countstave.practice;

import countstave.count.SpokenUnit;
import countstave.plain.Phrases;
import countstave.time.Offset;
import countstave.time.Proportion;
import java.util.List;

/**
 * The smallest unit of work: a place where the count changes, looped in growing pieces.
 *
 * @param name what it is called on every page: the rank of its passage and a letter, {@code 1a} the hardest of the first
 * @param count the count in which the change is made, with its tempo steps
 * @param around the bars the loops are taken from: those of the passage and, where there are any, one on either side
 * @param bar the bar in which the new count begins, from the first bar of {@code around}
 * @param at where it begins, from that bar's start
 * @param change what it leads from and to
 * @param loops the pieces, the smallest first
 * @param figures by what it was put in its place among the others
 * @param also printed numbers of the other bars in which the same change is made
 */
public record Seam(String name, StepCount count, Stretch around, int bar, Offset at, Change change, List<Loop> loops,
        Difficulty figures, List<String> also) {

    /**
     * From one count to another.
     *
     * @param before what is counted before
     * @param after what is counted from here on
     * @param speed how many times as fast as before the words come from here on
     */
    public record Change(SpokenUnit before, SpokenUnit after, Proportion speed) {
    }

    /**
     * Where a seam stands in the music, its own place or one that is looped alike.
     *
     * @param bar index of the bar in the score
     * @param at from its start
     * @param count number of the count in which the change is made
     * @param name of the seam, without the number of its passage in that passage itself
     */
    public record Mark(int bar, Offset at, int count, String name) {
    }

    /** How large a piece is looped. */
    public enum Size {
        TWO_BEATS("two-beats"),
        BEAT_MORE("beat-more"),
        BAR("bar"),
        NEIGHBOURS("neighbours");

        private final String id;

        Size(String id) {
            this.id = id;
        }

        /** Its name in files. */
        public String id() {
            return id;
        }

        /** One line for the player. */
        public String title(Phrases phrases) {
            return phrases.text("seam.size." + id);
        }
    }

    /**
     * A piece.
     *
     * @param from where it begins, in positions of {@code around}
     * @param to where it ends and begins again
     */
    public record Loop(Size size, Offset from, Offset to) {
    }

    /**
     * How hard a change is. A <b>heuristic</b>: nothing was measured to get the weights of its sum.
     *
     * @param jump doublings of speed from one count to the other, either way, not negative
     * @param leavesFamily whether neither unit divides the other
     * @param place where the new count begins
     * @param rarity of the rarer of the two divisions, 0 to 4, see {@link Rarity}
     */
    public record Difficulty(double jump, boolean leavesFamily, Place place, int rarity) {

        /** jump + 2 for another family + 1 inside a beat, a half on a beat + half the rarity; higher is harder. */
        public double sum() {
            return jump + (leavesFamily ? 2 : 0) + place.weight + rarity / 2.0;
        }
    }

    /** Where in the bar a new count begins; in irregular meters the groups are the beats. */
    public enum Place {
        BARLINE(0), BEAT(0.5), INSIDE_BEAT(1);

        private final double weight;

        Place(double weight) {
            this.weight = weight;
        }
    }

    /** As {@link Change#before}. */
    public SpokenUnit before() {
        return change.before();
    }

    /** As {@link Change#after}. */
    public SpokenUnit after() {
        return change.after();
    }

    /** As {@link Change#speed}. */
    public Proportion speed() {
        return change.speed();
    }

    Seam named(String newName) {
        return new Seam(newName, count, around, bar, at, change, loops, figures, also);
    }

    Seam alsoIn(List<String> bars) {
        return new Seam(name, count, around, bar, at, change, loops, figures, List.copyOf(bars));
    }

    Mark mark(String markName) {
        return new Mark(around.timeline(bar).bar().index(), at, count.number(), markName);
    }

    /** The rarity of the new count alone. */
    int rarityAfter() {
        return around.slices().stream().filter(s -> s.bar() == bar && s.segment().start().equals(at)).findFirst()
                .map(slice -> Rarity.of(around, slice)).orElse(0);
    }

    /** Printed number of its bar. */
    public String barNumber() {
        return around.timeline(bar).bar().number();
    }

    /** What its bar is called among all others. */
    public String barCalled() {
        return around.timeline(bar).bar().called();
    }
}

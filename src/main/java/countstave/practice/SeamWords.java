package countstave.practice;

import countstave.count.NoteNames;
import countstave.score.BarTimeline;
import countstave.score.Beat;
import countstave.time.Proportion;

/** What makes a seam hard, in a sentence: {@code Bar 3, beat 3: quintuplets right after 8th triplets, ×5/3 faster.} */
public final class SeamWords {

    /** From here on a division is called rare, see {@link Rarity}. */
    private static final int RARE = 3;
    /** A ratio of larger terms says less than "faster". */
    private static final long LARGEST_TERM = 8;

    private SeamWords() {
    }

    public static String of(Seam seam, NoteNames names) {
        return where(seam) + ": " + change(seam, names) + ".";
    }

    /** {@code Bar 3, beat 3}; {@code Bar 3, inside beat 3}. */
    public static String where(Seam seam) {
        BarTimeline bar = seam.around().timeline(seam.bar());
        Beat beat = bar.beatAt(seam.at());
        String inside = beat.start().equals(seam.at()) ? "" : "inside ";
        return "Bar " + seam.barCalled() + ", " + inside + "beat " + beat.number();
    }

    private static String change(Seam seam, NoteNames names) {
        boolean rare = seam.rarityAfter() >= RARE && seam.rarityAfter() == seam.figures().rarity();
        return "the " + (rare ? "rare " : "") + seam.after().name(names) + (seam.after().isSpan() ? " comes" : " come")
                + " right after the " + seam.before().name(names) + ", " + speed(seam.speed(), names);
    }

    private static String speed(Proportion speed, NoteNames names) {
        if (speed.equals(Proportion.ONE)) {
            return "at the same speed";
        }
        boolean faster = speed.compareTo(Proportion.ONE) > 0;
        if (speed.numerator() > LARGEST_TERM || speed.denominator() > LARGEST_TERM) {
            return faster ? "faster" : "slower";
        }
        return names.factor(speed).replace('\u2044', '/') + (faster ? " faster" : ", slower");
    }
}

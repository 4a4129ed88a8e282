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

    /** Of a later count it says so, since in another the change may be another one. */
    public static String of(Seam seam, NoteNames names) {
        int count = seam.count().number();
        return where(seam, names) + ": " + change(seam, names)
                + (count == 1 ? "" : " (" + names.phrase("turn.count", String.valueOf(count)) + ")") + ".";
    }

    /** {@code Bar 3, beat 3}; {@code Bar 3, inside beat 3}. */
    public static String where(Seam seam, NoteNames names) {
        BarTimeline bar = seam.around().timeline(seam.bar());
        Beat beat = bar.beatAt(seam.at());
        return names.phrase(beat.start().equals(seam.at()) ? "seam.at-beat" : "seam.inside-beat", seam.barCalled(),
                String.valueOf(beat.number()));
    }

    private static String change(Seam seam, NoteNames names) {
        boolean rare = seam.rarityAfter() >= RARE && seam.rarityAfter() == seam.figures().rarity();
        return names.phrase("seam.change", rare ? 1 : 0, seam.after().name(names), seam.after().isSpan() ? 1 : 2,
                seam.before().name(names), speed(seam.speed(), names));
    }

    private static String speed(Proportion speed, NoteNames names) {
        if (speed.equals(Proportion.ONE)) {
            return names.phrase("seam.speed.same");
        }
        boolean faster = speed.compareTo(Proportion.ONE) > 0;
        if (speed.numerator() > LARGEST_TERM || speed.denominator() > LARGEST_TERM) {
            return names.phrase(faster ? "speed.faster" : "speed.slower");
        }
        return names.phrase(faster ? "seam.speed.faster" : "seam.speed.slower", names.factor(speed).replace('\u2044', '/'));
    }
}

package countstave.score;

import countstave.time.Duration;
import countstave.time.Offset;
import countstave.time.Proportion;
import java.util.List;

/**
 * Something in the file that contradicts itself or had to be read with care: what it is, where, and its exact values. The
 * reader reports it without a word; {@code spelling.FactWords} makes the sentences, for warnings and for {@code check}.
 */
public sealed interface Fact {

    Place place();

    /**
     * Where it is.
     *
     * @param partId part it stands in
     * @param barIndex index of the bar
     * @param barNumber printed number of the bar
     * @param voice name of the voice, or null where it concerns all
     * @param at position from the bar's start, or null where it concerns the whole bar
     */
    record Place(String partId, int barIndex, String barNumber, String voice, Offset at) {
    }

    /** The bar lasts longer than its meter has room for. {@code holds}: its length. */
    record Overfull(Place place, Duration holds, Meter meter) implements Fact {
    }

    /**
     * A voice lasts longer than the bar has room for.
     *
     * @param holds where its last event ends
     * @param room the meter's length, less what of it lies before the bar
     */
    record VoiceOverfull(Place place, Duration holds, Duration room, Meter meter) implements Fact {
    }

    /**
     * The bar ends before its meter is filled, and is no pickup, no part of a split bar and no end that leaves room for a
     * pickup. {@code holds}: its length.
     */
    record Short(Place place, Duration holds, Meter meter) implements Fact {
    }

    /** A voice is written in one meter and lasts in another; reported once a bar. */
    record LocalMeter(Place place) implements Fact {
    }

    /** A backup goes beyond the bar's start. */
    record BackupTooFar(Place place) implements Fact {
    }

    /**
     * A duration that cannot be used.
     *
     * @param written whether the written value says the length in its stead
     * @param divisions what was taken for the divisions of a quarter if the file has none; else null
     */
    record BadDuration(Place place, Fault fault, boolean written, Proportion divisions) implements Fact {

        /** BACKUP and FORWARD: one of these has no duration above 0. */
        public enum Fault { NEGATIVE, MISSING, ZERO, BACKUP, FORWARD, NO_DIVISIONS }

        public BadDuration(Place place, Fault fault, boolean written) {
            this(place, fault, written, null);
        }
    }

    /**
     * A time signature that cannot be followed.
     *
     * @param unreadable the signature as it stands in the file, where its numbers cannot be read; null where it is the
     *     staves that have different ones
     * @param counted the meter the bar is counted in
     */
    record BadMeter(Place place, String unreadable, Meter counted) implements Fact {
    }

    /** Printed notes and rests of a voice in a bar that are written as one value and last another: one or more. */
    record ValueDiffers(Place place, List<Event> events) implements Fact {
    }

    /** Durations of a bar that the file's divisions are too coarse for. {@code notes}: how many. */
    record Rounded(Place place, Event first, int notes) implements Fact {
    }

    /**
     * A voice goes back over itself.
     *
     * @param note the first note that sounds at once with another; null where only rests lie over each other, or the
     *     voice comes back to a gap that it left
     */
    record Overlap(Place place, Event note) implements Fact {
    }

    /**
     * Notes of a bar that are not printed ({@code print-object="no"}, or a notehead {@code none}).
     *
     * @param leftOut how many are neither attacks nor given space, since something printed stands for their time
     * @param headless how many are no attacks, since they have no notehead; nothing else stands for their time
     * @param counted how many are read as notes
     */
    record Hidden(Place place, int leftOut, int headless, int counted) implements Fact {
    }
}

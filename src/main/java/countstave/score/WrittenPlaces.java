package countstave.score;

import countstave.time.Duration;
import countstave.time.Offset;
import java.util.Collections;
import java.util.List;

/**
 * The way back in a swung bar: where on paper a sounding position is. Counts lie at sounding positions, notes and their
 * columns at written ones.
 */
final class WrittenPlaces {

    private final BarTimeline bar;
    private final List<Offset> written;
    private final Swing swing;

    WrittenPlaces(BarTimeline bar) {
        this.bar = bar;
        this.written = bar.swung().written();
        this.swing = bar.swung().swing();
    }

    /** As {@link BarTimeline#writtenAt}. */
    Offset of(Offset sounding) {
        Beat beat = bar.beatAt(sounding);
        if (!swing.fits(beat) || !sounding.isBefore(beat.end()) || has(sounding) && bar.isAttack(sounding)) {
            return sounding;
        }
        Offset start = swing.pairStart(beat, sounding);
        Duration into = sounding.minus(start);
        Duration shortNote = shortNote(start);
        if (shortNote == null) {
            // an empty pair: what can be written without a tuplet is a place of its own, and so is one between notes
            boolean plain = Long.bitCount(into.over(swing.pair()).denominator()) == 1;
            if (!into.equals(swing.second()) && (plain || isAsWritten(start))) {
                return sounding;
            }
            shortNote = swing.unit();
        }
        Duration second = swing.second();
        if (!into.isLongerThan(second)) {
            return start.plus(stretched(into, second, shortNote));
        }
        Duration rest = stretched(into.minus(second), swing.pair().minus(second), swing.pair().minus(shortNote));
        return start.plus(shortNote).plus(rest);
    }

    /** {@code length} of {@code from} as the same share of {@code to}. */
    private static Duration stretched(Duration length, Duration from, Duration to) {
        return length.times(to.over(from));
    }

    /** How far into the pair the note is written that sounds at its swung place; null where there is none. */
    private Duration shortNote(Offset start) {
        if (!bar.isAttack(start.plus(swing.second()))) {
            return null;
        }
        for (Duration into : List.of(swing.unit(), swing.unit().times(3, 2))) {
            if (has(start.plus(into)) && !bar.isAttack(start.plus(into))) {
                return into;
            }
        }
        return null;
    }

    /** Whether notes stand inside the pair and sound where they are written. */
    private boolean isAsWritten(Offset start) {
        return !BarTimeline.between(written, start, start.plus(swing.pair())).isEmpty();
    }

    private boolean has(Offset at) {
        return Collections.binarySearch(written, at) >= 0;
    }
}

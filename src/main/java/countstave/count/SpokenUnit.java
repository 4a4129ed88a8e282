package countstave.count;

import countstave.grid.Segment;
import countstave.score.BarTimeline;
import countstave.time.Duration;

/**
 * What a segment is counted in, as a player names it: {@code 16ths}, {@code quintuplets}, {@code 8ths swung 2:1},
 * {@code 7 over 4 ♩}. Headings and marks take the name from here, so that one page has one name for one thing.
 *
 * @param unit length of one syllable, of swung pairs as written
 * @param beat length of the beat at the segment's start
 * @param span in how many syllables a tuplet is counted through, beats and all; 0 where every beat is spoken
 * @param over how long that tuplet is, {@link NoteAmount#NONE} where no note value says it or there is no span
 * @param swing {@code 2:1} where the units are said long–short in pairs, else empty
 */
public record SpokenUnit(Duration unit, Duration beat, int span, NoteAmount over, String swing) {

    /** What this segment of the bar is counted in. */
    public static SpokenUnit of(BarTimeline bar, Segment segment) {
        Duration beat = bar.beatAt(segment.start()).length();
        if (segment.isSpan()) {
            NoteAmount over = NoteAmount.of(segment.end().minus(segment.start()), beat);
            return new SpokenUnit(segment.unit(), beat, segment.positions(), over, "");
        }
        return new SpokenUnit(segment.unit(), beat, 0, NoteAmount.NONE, segment.isSwung() ? segment.swung().ratio() : "");
    }

    public boolean isSpan() {
        return span > 0;
    }

    /** Into how many syllables the beat is cut, rounded down. */
    public long parts() {
        return beat.floorOver(unit);
    }

    /** The name, in the plural. */
    public String name(NoteNames names) {
        if (isSpan()) {
            return over.isNamed() ? names.phrase("unit.over", String.valueOf(span), names.amount(over))
                    : names.phrase("unit.over.tuplet", String.valueOf(span));
        }
        String name = UnitName.of(unit, beat, names);
        return swing.isEmpty() ? name : names.phrase("unit.swung", name, swing);
    }
}

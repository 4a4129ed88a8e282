package countstave.count;

import countstave.score.NoteValue;
import countstave.time.Duration;
import countstave.time.Proportion;

/**
 * What a spoken unit is called: 16ths, 8th triplets, quintuplets, 11 to the ♩. A tuplet's name without a note value means
 * that it fills one quarter.
 */
public final class UnitName {

    private UnitName() {
    }

    /**
     * The name of a unit in the plural.
     *
     * @param unit length of one syllable
     * @param beat length of the beat it divides
     */
    public static String of(Duration unit, Duration beat, NoteNames names) {
        long odd = unit.denominator() / Long.lowestOneBit(unit.denominator());
        if (odd == 1) {
            NoteAmount note = NoteAmount.one(unit);
            if (note.isNamed()) {
                return names.dotted(note.dots(), names.plural(note.value()));
            }
        } else if (odd == 3 || odd == 5 || odd == 7 || odd == 9) {
            NoteValue value = NoteValue.ofLength(unit.times(odd, Long.highestOneBit(odd)));
            if (value != null) {
                int name = unit.times(6).equals(beat) ? 6 : (int) odd;
                boolean fillsQuarter = name > 3 && beat.equals(Duration.QUARTER) && unit.times(name).equals(beat);
                return fillsQuarter ? names.phrase("tuplet." + name + ".many")
                        : names.phrase("unit.tuplets", names.singular(value), names.phrase("tuplet." + name + ".behind"));
            }
        }
        return toTheBeat(unit, beat, names);
    }

    /** {@code 11 to the ♩}: for a unit that no note value names. */
    private static String toTheBeat(Duration unit, Duration beat, NoteNames names) {
        NoteAmount note = NoteAmount.one(beat);
        Proportion parts = beat.over(unit);
        return note.isNamed() ? names.phrase("unit.to", parts.toString(), names.one(note.value(), note.dots()))
                : names.phrase("unit.to.beat", parts.toString());
    }
}

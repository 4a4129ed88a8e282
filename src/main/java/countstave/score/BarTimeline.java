package countstave.score;

import countstave.time.Offset;
import java.util.List;

/**
 * What happens in time in one bar of a part, for the voices that are counted.
 *
 * @param bar the written bar
 * @param beats in order; they cover the whole bar, the first may have begun before it
 * @param irregular whether the beats are counted in groups of written units (5/8, 7/8, 3+2+3/8 ...)
 * @param attacks distinct moments at which a note begins to sound, in order; in a bar of repeat signs, those of the
 *     bar that is repeated
 * @param lines the same attacks voice by voice, only voices that have any
 * @param tuplets tuplets of the counted voices
 * @param tempi tempo changes, the first always at the bar's start
 * @param swung how the bar is swung, or null where it is played straight
 */
public record BarTimeline(Bar bar, List<Beat> beats, boolean irregular, List<Offset> attacks, List<VoiceAttacks> lines,
        List<Tuplet> tuplets, List<TempoChange> tempi, Swung swung) {

    /** The same time with the bar as it is to be drawn. */
    public BarTimeline withBar(Bar drawn) {
        return new BarTimeline(drawn, beats, irregular, attacks, lines, tuplets, tempi, swung);
    }

    /** The same bar at other tempi, the first at the bar's start. */
    public BarTimeline withTempi(List<TempoChange> tempi) {
        return new BarTimeline(bar, beats, irregular, attacks, lines, tuplets, tempi, swung);
    }

    /** Whether a beat opens what is felt as one: itself, in irregular meters its group. */
    public boolean opens(Beat beat) {
        return !irregular || beat.isGroupStart();
    }

    /** Whether a note begins at {@code at}. */
    public boolean isAttack(Offset at) {
        return java.util.Collections.binarySearch(attacks, at) >= 0;
    }

    /**
     * Where on paper a sounding position stands: the same everywhere but in a swung bar. There the sounding place of a
     * pair's second note is where that note is written, as the second of two equal ones or as the short one of a dotted
     * pair; what lies between, as a triplet counted where none is written, moves along in proportion. Pairs that sound
     * as they are written stay, and so do places in an empty pair that need no tuplet; its second word stands where a
     * second note would be written.
     *
     * @param sounding of a count, an attack or a felt note, from the bar's start
     */
    public Offset writtenAt(Offset sounding) {
        return swung == null || beats.isEmpty() ? sounding : new WrittenPlaces(this).of(sounding);
    }

    /** The tempo at the bar's start. */
    public Tempo tempo() {
        return tempi.get(0).tempo();
    }

    /** The tempo in force at {@code at}. */
    public Tempo tempoAt(Offset at) {
        Tempo tempo = tempo();
        for (TempoChange change : tempi) {
            if (change.at().isAfter(at)) {
                break;
            }
            tempo = change.tempo();
        }
        return tempo;
    }

    /** The beat that holds {@code at}; the first one for a position before it, the last one for the bar's end. */
    public Beat beatAt(Offset at) {
        int low = 0;
        int high = beats.size() - 1;
        while (low < high) {
            int middle = (low + high + 1) >>> 1;
            if (beats.get(middle).start().isAfter(at)) {
                high = middle - 1;
            } else {
                low = middle;
            }
        }
        return beats.get(low);
    }

    /** Those of {@code places}, in order, that lie after {@code start} and before {@code end}. */
    static List<Offset> between(List<Offset> places, Offset start, Offset end) {
        int from = firstFrom(places, start, false);
        return places.subList(from, Math.max(from, firstFrom(places, end, true)));
    }

    /** Index of the first place after {@code at}, or, where it counts itself, at or after it. */
    private static int firstFrom(List<Offset> places, Offset at, boolean itself) {
        int found = java.util.Collections.binarySearch(places, at);
        return found < 0 ? -found - 1 : itself ? found : found + 1;
    }
}

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

    /**
     * Where what sounds at {@code at} stands in the notation: in a swung bar the second note of a pair is written before
     * it sounds; anywhere else the two are the same.
     */
    public Offset writtenPlace(Offset at) {
        return swung == null ? at : swung.writtenPlace(at, beatAt(at).start());
    }

    /** Whether a note begins at {@code at}. */
    public boolean isAttack(Offset at) {
        return java.util.Collections.binarySearch(attacks, at) >= 0;
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

    /** The beat that holds {@code at}; the last one for a position at the bar's end. */
    public Beat beatAt(Offset at) {
        Beat found = beats.get(0);
        for (Beat beat : beats) {
            if (beat.start().isAfter(at)) {
                break;
            }
            found = beat;
        }
        return found;
    }
}

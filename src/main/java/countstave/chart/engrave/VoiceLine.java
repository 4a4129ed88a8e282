package countstave.chart.engrave;

import countstave.score.Tuplet;
import countstave.score.Voice;
import java.util.ArrayList;
import java.util.List;

/** One voice on one staff of one bar. */
final class VoiceLine {

    /** Which side the voice keeps to: upper voices have stems up. */
    enum Side { ONLY, UPPER, LOWER }

    final Voice voice;
    final Side side;
    final List<Tuplet> tuplets;
    final List<BeamGroup> beams;
    /** One entry an event of the voice; null where nothing of it is drawn on this staff. */
    final List<Chord> chords = new ArrayList<>();

    VoiceLine(Voice voice, Side side, List<Tuplet> tuplets, List<BeamGroup> beams) {
        this.voice = voice;
        this.side = side;
        this.tuplets = tuplets;
        this.beams = beams;
    }

    Chord chord(int index) {
        return chords.get(index);
    }
}

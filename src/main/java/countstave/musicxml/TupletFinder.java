package countstave.musicxml;

import countstave.score.Tuplet;
import countstave.score.Voice;
import java.util.List;

/** Finds the tuplets of a bar. */
final class TupletFinder {

    private TupletFinder() {
    }

    static List<Tuplet> find(List<Voice> voices) {
        return List.of();
    }
}

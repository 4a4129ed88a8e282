package countstave.chart.engrave;

import countstave.score.Bar;
import countstave.score.Event;
import countstave.score.Look;
import countstave.score.Voice;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;

/**
 * Which voices of a bar are drawn on a staff, and on which side each of them keeps.
 *
 * <p>With two voices or more, stems are opposed through the whole bar: first voice up, second down, and so on by turns
 * (common practice), unless the file's own stems say that the two are the other way round.
 */
final class Voices {

    private Voices() {
    }

    /** A voice and its side, before anything is laid out. */
    record Sided(Voice voice, VoiceLine.Side side) {
    }

    static List<Sided> on(Bar bar, int staff) {
        List<Voice> voices = new ArrayList<>();
        for (Voice voice : bar.voices()) {
            if (voice.events().stream().anyMatch(e -> isDrawn(e, staff))) {
                voices.add(voice);
            }
        }
        voices.sort(Comparator.comparingInt(Voices::number));
        if (voices.size() == 1) {
            return List.of(new Sided(voices.get(0), VoiceLine.Side.ONLY));
        }
        boolean swapped = voices.size() == 2 && stems(voices.get(0), staff) < 0 && stems(voices.get(1), staff) > 0;
        List<Sided> sided = new ArrayList<>();
        for (int i = 0; i < voices.size(); i++) {
            boolean upper = i % 2 == (swapped ? 1 : 0);
            sided.add(new Sided(voices.get(i), upper ? VoiceLine.Side.UPPER : VoiceLine.Side.LOWER));
        }
        return sided;
    }

    static boolean isDrawn(Event event, int staff) {
        return event.staff() == staff && event.printed()
                && (event.isRest() || event.heads().stream().anyMatch(h -> h.printed()));
    }

    private static int number(Voice voice) {
        try {
            return Integer.parseInt(voice.name().trim());
        } catch (NumberFormatException e) {
            return Integer.MAX_VALUE;
        }
    }

    /** Stems up minus stems down, as the file has them. */
    private static int stems(Voice voice, int staff) {
        int sum = 0;
        for (Event event : voice.events()) {
            if (isDrawn(event, staff)) {
                sum += event.look().stem() == Look.Stem.UP ? 1 : event.look().stem() == Look.Stem.DOWN ? -1 : 0;
            }
        }
        return sum;
    }
}

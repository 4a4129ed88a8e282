package countstave.musicxml;

import countstave.score.NoteValue;
import countstave.time.Duration;
import java.util.ArrayList;
import java.util.List;

/**
 * The note values of one {@code metronome} in the order in which they went by. The binding has room for one
 * {@code beat-unit} only, where "value = value" has two.
 */
final class MetronomeTrail {

    /** One side of the mark: its first value, and the lengths of all notes there, in fractions of a whole note. */
    record Side(NoteValue value, int dots, List<Duration> notes) {

        /** The length of all of it. */
        Duration length() {
            Duration sum = Duration.ZERO;
            for (Duration note : notes) {
                sum = sum.plus(note);
            }
            return sum;
        }
    }

    private final List<Side> sides = new ArrayList<>();
    private boolean tied;
    private boolean openSide = true;
    private NoteValue value;
    private int dots;
    private int actual;
    private int normal;
    private String element = "";

    void start(String name) {
        element = name;
        switch (name) {
            case "beat-unit" -> {
                close();
                openSide = !tied;
            }
            case "beat-unit-tied" -> {
                close();
                tied = true;
            }
            case "metronome-note" -> close();
            case "metronome-relation" -> {
                close();
                openSide = true;
            }
            case "beat-unit-dot", "metronome-dot" -> dots = Math.min(dots + 1, NoteConverter.MOST_DOTS);
            default -> {
                // nothing that has a length
            }
        }
    }

    void text(String text) {
        switch (element) {
            case "beat-unit", "metronome-type" -> value = NoteConverter.value(text);
            case "actual-notes" -> actual = number(text);
            case "normal-notes" -> normal = number(text);
            default -> {
                // nothing that has a length
            }
        }
    }

    void end(String name) {
        element = "";
        if (name.equals("beat-unit-tied")) {
            close();
            tied = false;
            openSide = true;
        } else if (name.equals("metronome")) {
            close();
        }
    }

    List<Side> sides() {
        return sides;
    }

    /** Takes the value that was read to the side that is open, or opens the next one with it. */
    private void close() {
        if (value != null) {
            Duration length = value.dotted(dots);
            if (actual > 0 && normal > 0) {
                length = length.times(normal, actual);
            }
            boolean note = !openSide || tied;
            if (note && !sides.isEmpty()) {
                sides.get(sides.size() - 1).notes().add(length);
            } else {
                sides.add(new Side(value, dots, new ArrayList<>(List.of(length))));
            }
            openSide = false;
        }
        value = null;
        dots = 0;
        actual = 0;
        normal = 0;
    }

    private static int number(String text) {
        String digits = text.strip();
        return digits.matches("\\d{1,3}") ? Integer.parseInt(digits) : 0;
    }
}

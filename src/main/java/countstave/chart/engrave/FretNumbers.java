package countstave.chart.engrave;

import countstave.chart.font.TextFont;
import countstave.chart.shape.Role;
import countstave.chart.shape.Text;
import countstave.score.Head;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;

/**
 * The numbers of frets on the lines of a tablature: each stands on the line of its string, which leaves room for it. A ghost
 * note has its number in parentheses, a dead note an X in place of it (common practice, no source). A chord that holds a string
 * down in two places cannot be played: so that it can be read, its numbers stand beside each other, the lower left (house choice).
 */
final class FretNumbers {

    /** From the middle of a number to where a stem begins: house choice. */
    static final double ROOM = 0.8;
    /** A number is about as tall as the space between two lines: house choice. */
    private static final double SIZE = 1.3;
    private static final Text.Style STYLE = Text.Style.BOLD;
    /** Between two numbers on one line: house choice. */
    private static final double BETWEEN = 0.35;
    /** Noteheads of notes without a pitch. */
    private static final Set<String> DEAD = Set.of("x", "cross");

    private FretNumbers() {
    }

    /** Whether this head is a number on this staff. */
    static boolean isOn(Head head, StaffState state) {
        return head.fret() != null && head.fret().string() <= state.lines() && state.clef().sign().equals("TAB");
    }

    static double width(Head head, double scale, TextFont font) {
        return font.width(words(head), SIZE * scale, STYLE);
    }

    /** Centres the numbers of each string; a number that stands there already is not drawn again. */
    static void place(List<Chord.Spot> spots, double centre, double scale) {
        Map<Integer, List<Chord.Spot>> strings = new TreeMap<>();
        for (Chord.Spot spot : spots) {
            if (spot.fret) {
                strings.computeIfAbsent(spot.step, s -> new ArrayList<>()).add(spot);
            } else {
                spot.left = centre - spot.width / 2;
            }
        }
        for (List<Chord.Spot> string : strings.values()) {
            string.sort(Comparator.comparingInt(spot -> spot.head.fret().number()));
            double width = -BETWEEN * scale;
            Chord.Spot before = null;
            for (Chord.Spot spot : string) {
                spot.shared = before != null && words(before.head).equals(words(spot.head));
                width += spot.shared ? 0 : spot.width + BETWEEN * scale;
                before = spot;
            }
            double x = centre - width / 2;
            double left = x;
            for (Chord.Spot spot : string) {
                if (!spot.shared) {
                    left = x;
                    x += spot.width + BETWEEN * scale;
                }
                spot.left = left;
            }
        }
    }

    static void draw(Chord chord, Chord.Spot spot, Canvas canvas) {
        double size = SIZE * chord.scale;
        canvas.add(new Text(words(spot.head), chord.x + spot.left + spot.width / 2, spot.y() - canvas.text.capHeight(size, STYLE) / 2,
                size, STYLE, Text.Anchor.MIDDLE, chord.event.isGrace() ? Role.GRACE : Role.NOTE, chord.event.start()));
    }

    private static String words(Head head) {
        String words = DEAD.contains(head.shape()) ? "X" : Integer.toString(head.fret().number());
        return head.parentheses() ? "(" + words + ")" : words;
    }
}

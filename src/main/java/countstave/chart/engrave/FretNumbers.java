package countstave.chart.engrave;

import countstave.chart.font.TextFont;
import countstave.chart.shape.Role;
import countstave.chart.shape.Text;
import countstave.score.Head;

/**
 * The numbers of frets on the lines of a tablature: each stands on the line of its string, which leaves room for it (common
 * practice, no source).
 */
final class FretNumbers {

    /** From the middle of a number to where a stem begins: house choice. */
    static final double ROOM = 0.8;
    /** A number is about as tall as the space between two lines: house choice. */
    private static final double SIZE = 1.3;
    private static final Text.Style STYLE = Text.Style.BOLD;

    private FretNumbers() {
    }

    /** Whether this head is a number on this staff. */
    static boolean isOn(Head head, StaffState state) {
        return head.fret() != null && head.fret().string() <= state.lines() && state.clef().sign().equals("TAB");
    }

    static double width(Head head, double scale, TextFont font) {
        return font.width(words(head), SIZE * scale, STYLE);
    }

    static void draw(Chord chord, Chord.Spot spot, Canvas canvas) {
        double size = SIZE * chord.scale;
        canvas.add(new Text(words(spot.head), chord.x + spot.left + spot.width / 2, spot.y() - canvas.text.capHeight(size, STYLE) / 2,
                size, STYLE, Text.Anchor.MIDDLE, chord.event.isGrace() ? Role.GRACE : Role.NOTE, chord.event.start()));
    }

    private static String words(Head head) {
        return Integer.toString(head.fret().number());
    }
}

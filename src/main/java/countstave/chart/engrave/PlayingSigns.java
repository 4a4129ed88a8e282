package countstave.chart.engrave;

import countstave.chart.font.TextFont;
import countstave.chart.shape.Box;
import countstave.chart.shape.Glyph;
import countstave.chart.shape.Role;
import countstave.chart.shape.Text;
import countstave.score.Event;
import java.util.Map;

/**
 * How a note is fingered, and ornaments that stand beside it or have an accidental: signs that are named together with what
 * is written at them, {@code fingering 3}. All of them stand above the note, from the inside out, those of a lower voice below it
 * (common practice, no source).
 */
final class PlayingSigns {

    private static final double GAP = 0.3;
    private static final double NUMBER = 1.5;
    private static final double SMALL = 0.6;
    /** How far letters reach below the line. */
    private static final double DESCENT = 0.35;
    private static final Text.Style STYLE = Text.Style.REGULAR;
    private static final Map<String, String> DELAYED = Map.of("delayed-turn", "ornamentTurn", "delayed-inverted-turn", "ornamentTurnInverted");

    private final Canvas canvas;
    private final double staffTop;

    PlayingSigns(Canvas canvas, double staffTop) {
        this.canvas = canvas;
        this.staffTop = staffTop;
    }

    static boolean isDrawn(String name) {
        int blank = name.indexOf(' ');
        String written = blank < 0 ? "" : name.substring(blank + 1);
        return switch (blank < 0 ? name : name.substring(0, blank)) {
            case "fingering" -> !written.isEmpty();
            case "string" -> written.matches("[1-9]");
            case "accidental-mark" -> Signs.accidental(written) != null;
            case "bend" -> Bends.isDrawn(name);
            case "delayed-turn", "delayed-inverted-turn", "wavy-line", "let-ring" -> true;
            default -> false;
        };
    }

    /** @param above on which side */
    void draw(Chord chord, String name, boolean above) {
        if (!isDrawn(name)) {
            return;
        }
        String written = name.substring(Math.min(name.length(), name.indexOf(' ') + 1));
        if (name.startsWith("fingering")) {
            number(chord, written, above);
        } else if (name.startsWith("string") && !chord.event.look().other().contains("fret")) {
            outside(chord, "guitarString" + written, 1, chord.centre(), above, Role.TECHNICAL);
        } else if (name.startsWith("accidental-mark")) {
            outside(chord, Signs.accidental(written), SMALL, chord.centre(), above, Role.ARTICULATION);
        } else if (DELAYED.containsKey(name)) {
            outside(chord, DELAYED.get(name), 1, behind(chord), above, Role.ARTICULATION);
        } else if (name.equals("wavy-line")) {
            wave(chord);
        }
    }

    /** Between this note and the next of its voice. */
    private static double behind(Chord chord) {
        for (Chord next : chord.voice.chords) {
            if (next != null && next.index > chord.index && !next.event.isGrace()) {
                return (chord.x + next.x) / 2;
            }
        }
        return chord.x + 2;
    }

    /** Half of what words in place of a finger's number need beside each other, and beside a clef; numbers need no more than their note. */
    static double halfWidth(Event event, TextFont font) {
        double half = 0;
        for (String name : event.look().other()) {
            String words = name.startsWith("fingering ") ? name.substring("fingering ".length()) : "";
            if (words.length() > 2) {
                half = Math.max(half, font.width(words, NUMBER, STYLE) / 2);
            }
        }
        return half;
    }

    private void number(Chord chord, String words, boolean above) {
        double half = canvas.text.width(words, NUMBER, STYLE) / 2;
        double x = chord.centre();
        double height = canvas.text.capHeight(NUMBER, STYLE);
        double reach = canvas.reach(x - half, x + half, above ? 1 : -1, above ? staffTop : 0);
        double descent = words.chars().anyMatch(Character::isLetter) ? DESCENT : 0;
        canvas.add(new Text(words, x, above ? reach + GAP + descent : -reach - GAP - height, NUMBER, STYLE, Text.Anchor.MIDDLE, Role.TECHNICAL,
                chord.event.start()));
    }

    private void outside(Chord chord, String sign, double scale, double x, boolean above, Role role) {
        Box box = canvas.font.box(sign).scaled(scale);
        double reach = canvas.reach(x - box.width() / 2, x + box.width() / 2, above ? 1 : -1, above ? staffTop : 0);
        double y = above ? reach + GAP - box.bottom() : -reach - GAP - box.top();
        canvas.add(new Glyph(sign, x - (box.left() + box.right()) / 2, y, scale, role, chord.event.start()));
    }

    /** The line of a trill that ends with its note. */
    private void wave(Chord chord) {
        Box box = canvas.font.box("wiggleTrill");
        double advance = canvas.font.advance("wiggleTrill");
        double from = chord.centre() + canvas.font.width("ornamentTrill") / 2 + GAP;
        double to = Math.max(from + advance, 2 * behind(chord) - chord.x - 1);
        int count = (int) Math.max(1, (to - from) / advance);
        // at the height of the middle of the sign, which stands on the note or the staff
        double below = Math.max(staffTop, Math.max(chord.body().top(), chord.hasStem() ? chord.stemEnd : 0));
        double reach = Math.max(canvas.reach(from, from + count * advance, 1, staffTop),
                below + (canvas.font.box("ornamentTrill").height() - box.height()) / 2);
        for (int i = 0; i < count; i++) {
            canvas.add(new Glyph("wiggleTrill", from + i * advance, reach + GAP - box.bottom(), Role.TRILL_LINE, chord.event.start()));
        }
    }
}

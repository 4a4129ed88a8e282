package countstave.chart.engrave;

import countstave.chart.shape.Box;
import countstave.chart.shape.Glyph;
import countstave.chart.shape.Polygon;
import countstave.chart.shape.Role;
import countstave.score.BeamMark;
import countstave.score.NoteValue;
import countstave.score.Tremolo;
import java.util.ArrayList;
import java.util.List;

/**
 * Tremolo strokes: across the stem of a single note (above or below a stemless one), or between two notes, like beams.
 * Thickness and spacing of the latter are those of beams.
 */
final class TremoloDrawer {

    private static final int MOST_STROKES = 5;
    private static final double GAP = 0.4;

    private final Canvas canvas;

    TremoloDrawer(Canvas canvas) {
        this.canvas = canvas;
    }

    /** How far a flag covers the stem from its end inwards. */
    static final double FLAG_TOP = 1.4;

    private static String sign(Chord chord) {
        Tremolo tremolo = chord.event.look().tremolo();
        if (tremolo == null) {
            return null;
        }
        if (tremolo.kind() == Tremolo.Kind.UNMEASURED) {
            return "buzzRoll";
        }
        return tremolo.kind() == Tremolo.Kind.SINGLE && tremolo.slashes() > 0
                ? "tremolo" + Math.min(MOST_STROKES, tremolo.slashes()) : null;
    }

    /** Height of the strokes across a note's stem, 0 where there are none. */
    static double height(Chord chord) {
        String sign = sign(chord);
        return sign == null ? 0 : chord.font.box(sign).height() * chord.scale;
    }

    void single(Chord chord) {
        String sign = sign(chord);
        if (sign == null || !chord.isNote()) {
            return;
        }
        Box box = canvas.font.box(sign);
        int way = chord.up ? 1 : -1;
        double height = box.height() * chord.scale;
        double y;
        double x;
        if (chord.hasStem()) {
            x = chord.x + chord.stemX();
            double inner = way * chord.tip().y() + 0.5;
            double outer = way * chord.stemEnd - (chord.hasFlag() ? FLAG_TOP : beams(chord));
            y = way * Math.max(inner + height / 2 + 0.1, (inner + outer) / 2);
        } else {
            x = chord.x + chord.root().left + chord.root().width / 2;
            y = way * (way * chord.tip().y() + 0.5 + GAP + height / 2);
        }
        y -= (box.top() + box.bottom()) / 2 * chord.scale;
        canvas.add(new Glyph(sign, x - (box.left() + box.right()) / 2 * chord.scale, y, chord.scale, Role.TREMOLO,
                chord.event.start()));
    }

    private double beams(Chord chord) {
        return chord.beam == null ? 0 : canvas.font.engraving("beamThickness") + (chord.flags() - 1) * step();
    }

    private double step() {
        return canvas.font.engraving("beamThickness") + canvas.font.engraving("beamSpacing");
    }

    void pairs(VoiceLine line) {
        for (BeamGroup pair : pairsOf(line)) {
            Chord start = line.chord(pair.first());
            strokes(start, line.chord(pair.last()));
        }
    }

    /** The two-note tremolos of a voice; their stems are settled like those under a beam. */
    static List<BeamGroup> pairsOf(VoiceLine line) {
        List<BeamGroup> pairs = new ArrayList<>();
        Chord start = null;
        for (Chord chord : line.chords) {
            if (chord == null || !chord.isNote() || !chord.isTwoNoteTremolo()) {
                continue;
            }
            if (chord.event.look().tremolo().kind() == Tremolo.Kind.START) {
                start = chord;
            } else if (start != null) {
                pairs.add(new BeamGroup(List.of(start.index, chord.index), List.of()));
                start = null;
            }
        }
        return pairs;
    }

    /** Beams of the pair, which are not among its strokes (MusicXML 4.0, tremolo-marks). */
    private static int beamsOf(Chord chord) {
        return Math.max(chord.flags(), (int) chord.event.look().beams().stream().mapToInt(BeamMark::level).distinct().count());
    }

    /** How many lines there are between the stems of a two-note tremolo. */
    static int lines(Chord chord) {
        return Math.min(MOST_STROKES, beamsOf(chord) + Math.max(1, chord.event.look().tremolo().slashes()));
    }

    /** The two notes of a tremolo as one figure: its beams join their stems, its strokes stand between them. */
    private void strokes(Chord first, Chord second) {
        int count = lines(first);
        int way = first.up ? 1 : -1;
        double thickness = canvas.font.engraving("beamThickness");
        boolean stems = first.hasStem() && second.hasStem();
        double left = first.x + (stems ? first.stemX() : first.headsRight());
        double right = second.x + (stems ? second.stemX() : second.headsLeft());
        // of halves the outermost stroke joins the stems like a beam (common practice)
        int joined = !stems ? 0 : Math.max(beamsOf(first), first.value() == NoteValue.HALF ? 1 : 0);
        double y1 = stems ? first.stemEnd : first.root().y() + way * 0.5 * count * step();
        double y2 = stems ? second.stemEnd : second.root().y() + way * 0.5 * count * step();
        double slope = (y2 - y1) / Math.max(0.1, right - left);
        for (int i = 0; i < count; i++) {
            double inset = i < joined ? 0 : GAP;
            double in = i * step() + (way > 0 ? thickness : 0);
            double from = left + inset;
            double to = right - inset;
            canvas.add(Polygon.beam(from, y1 + slope * (from - left) - way * in, to, y1 + slope * (to - left) - way * in,
                    thickness, Role.TREMOLO, first.event.start()));
        }
    }
}

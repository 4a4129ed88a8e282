package countstave.chart.engrave;

import countstave.chart.font.MusicFont;
import countstave.chart.shape.Box;
import countstave.chart.shape.Glyph;
import countstave.chart.shape.Line;
import countstave.chart.shape.Point;
import countstave.chart.shape.Role;
import countstave.chart.shape.Shape;
import countstave.score.Event;
import countstave.score.NoteValue;
import countstave.time.Offset;

/** Heads, ledger lines, stems, flags and rests of one chord. */
final class ChordDrawer {

    private final Canvas canvas;
    private final MusicFont font;
    private final int lines;

    ChordDrawer(Canvas canvas, int lines) {
        this.canvas = canvas;
        this.font = canvas.font;
        this.lines = lines;
    }

    void put(String sign, double x, double y, double scale, Role role, Offset at) {
        canvas.add(new Glyph(sign, x, y, scale, role, at));
    }

    void ledgerLines(Chord chord) {
        if (!chord.isNote()) {
            return;
        }
        double top = StaffMap.topLine(lines);
        double bottom = StaffMap.bottomLine(lines);
        for (int y = (int) top + 1; y <= chord.high().y(); y++) {
            ledger(chord, y, 1);
        }
        for (int y = (int) bottom - 1; y >= chord.low().y(); y--) {
            ledger(chord, y, -1);
        }
    }

    /** As wide as the heads at or beyond it, and {@code legerLineExtension} on both sides. */
    private void ledger(Chord chord, int y, int way) {
        double extension = font.engraving("legerLineExtension") * chord.scale;
        double left = Double.MAX_VALUE;
        double right = -Double.MAX_VALUE;
        for (Chord.Spot spot : chord.spots) {
            if (way * (spot.y() - y) >= 0) {
                left = Math.min(left, spot.left);
                right = Math.max(right, spot.right());
            }
        }
        canvas.add(new Line(chord.x + left - extension, y, chord.x + right + extension, y,
                font.engraving("legerLineThickness"), Role.LEDGER, chord.event.start()));
    }

    void heads(Chord chord) {
        for (Chord.Spot spot : chord.spots) {
            if (spot.shared) {
                continue;
            }
            if (spot.fret) {
                FretNumbers.draw(chord, spot, canvas);
                continue;
            }
            Role role = chord.event.isGrace() ? Role.GRACE : spot.head.shape().equals("slash") ? Role.SLASH : Role.NOTE;
            put(spot.sign, chord.x + spot.left - font.box(spot.sign).left() * chord.scale, spot.y(), chord.scale, role,
                    chord.event.start());
        }
        Parentheses.draw(chord, canvas);
    }

    /** Accidentals, dots and clef changes. */
    void signs(Moment moment, double x) {
        for (Moment.Sign sign : moment.signs) {
            put(sign.name(), x + sign.dx(), sign.y(), sign.scale(), sign.role(), moment.at);
        }
        for (Shape shape : moment.rows) {
            canvas.add(shape.moved(x, 0));
        }
    }

    void stem(Chord chord) {
        if (!chord.hasStem() || chord.far) {
            return;
        }
        double x = chord.x + chord.stemX();
        canvas.add(new Line(x, chord.stemStart(), x, chord.stemEnd, chord.stemThickness(), Role.STEM,
                chord.event.start()));
        if (chord.event.nature().grace() == Event.Grace.SLASHED) {
            slash(chord, x);
        }
    }

    void flag(Chord chord) {
        if (!chord.hasFlag()) {
            return;
        }
        String sign = Signs.flag(chord.value(), chord.up);
        Point anchor = font.anchor(sign, chord.up ? "stemUpNW" : "stemDownSW");
        double left = chord.x + chord.stemX() - chord.stemThickness() / 2;
        double ax = anchor == null ? 0 : anchor.x() * chord.scale;
        double ay = anchor == null ? 0 : anchor.y() * chord.scale;
        put(sign, left - ax, chord.stemEnd - ay, chord.scale, Role.FLAG, chord.event.start());
    }

    /** The stroke through a grace note's stem, by the flag's anchors {@code graceNoteSlash..}; once for a beam. */
    private void slash(Chord chord, double stemX) {
        if (chord.beam != null && chord.beam.first() != chord.index) {
            return;
        }
        String sign = Signs.flag(NoteValue.EIGHTH, chord.up);
        Point from = font.anchor(sign, chord.up ? "graceNoteSlashSW" : "graceNoteSlashNW");
        Point to = font.anchor(sign, chord.up ? "graceNoteSlashNE" : "graceNoteSlashSE");
        if (from == null || to == null) {
            return;
        }
        double s = chord.scale;
        canvas.add(new Line(stemX + from.x() * s, chord.stemEnd + from.y() * s, stemX + to.x() * s,
                chord.stemEnd + to.y() * s, chord.stemThickness(), Role.GRACE, chord.event.start()));
    }

    void rest(Chord chord) {
        if (!chord.isRest()) {
            return;
        }
        Box box = chord.restBox();
        String sign = chord.restSign;
        double left = chord.x + box.left() - font.box(sign).left() * chord.scale;
        boolean outside = chord.restY > StaffMap.topLine(lines) || chord.restY < StaffMap.bottomLine(lines);
        if (outside && (sign.equals("restWhole") || sign.equals("restHalf"))) {
            String leger = sign + "LegerLine";
            left = chord.x + box.left() - (font.width(leger) - font.width(sign)) / 2 - font.box(leger).left();
            sign = leger;
        }
        put(sign, left, chord.restY, chord.scale, Role.REST, chord.event.start());
    }
}

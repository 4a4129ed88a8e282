package countstave.chart.layout;

import countstave.chart.engrave.Stance;
import countstave.chart.font.Measures;
import countstave.chart.shape.Box;
import countstave.chart.shape.Curve;
import countstave.chart.shape.Glyph;
import countstave.chart.shape.Line;
import countstave.chart.shape.Role;
import countstave.chart.shape.Shape;
import countstave.chart.shape.Text;
import countstave.score.NoteSpan;
import countstave.time.Offset;
import java.util.ArrayList;
import java.util.EnumSet;
import java.util.List;
import java.util.Set;

/**
 * Lines from note to note: a slide is straight and a glissando wavy, both between the heads; behind a trill goes a wave; a letter
 * stands above the bow of a hammered or pulled note (common practice, no source).
 */
final class NoteLines {

    private static final double GAP = 0.25;
    private static final double SHORTEST = 0.8;
    private static final double THICKNESS = 0.16;
    /** Half a wave of a glissando. */
    private static final double WAVE = 0.45;
    private static final double WAVE_HEIGHT = 0.22;
    private static final double WORDS = 1.4;
    private static final Set<Role> STAFF = EnumSet.of(Role.STAFF_LINE, Role.BARLINE, Role.CLEF, Role.KEY, Role.METER, Role.BRACE);

    private final Measures measures;

    NoteLines(Measures measures) {
        this.measures = measures;
    }

    void draw(List<PlacedBar> placed, LineBreaker.Range range, int staff, Spans spans, List<Shape> notation) {
        for (Spans.Slur span : spans.lines(range, placed.get(0).bar().staves().get(staff).number())) {
            Stance first = span.from.bar() >= range.from() ? SlurDrawer.stance(span.from, placed, range, staff) : null;
            Stance last = span.to.bar() < range.to() ? SlurDrawer.stance(span.to, placed, range, staff) : null;
            if (first == null && span.from.bar() >= range.from() || last == null && span.to.bar() < range.to()) {
                continue;
            }
            Box from = first == null ? null : first.heads().moved(SlurDrawer.left(span.from, placed, range), 0);
            Box to = last == null ? null : last.heads().moved(SlurDrawer.left(span.to, placed, range), 0);
            Offset at = first == null ? null : SlurDrawer.slurStart(span, placed, range);
            double start = placed.get(0).left() + placed.get(0).bar().prefix(true);
            double end = placed.get(placed.size() - 1).right() - GAP;
            List<Shape> added = new ArrayList<>();
            switch (span.sign.kind()) {
                case GLISSANDO, SLIDE -> slide(span.sign, from, to, start, end, notation, at, added);
                case TRILL -> trill(from, to == null ? end : to.right(), start, notation, at, added);
                default -> letter(span.sign, from, to, notation, at, added);
            }
            notation.addAll(added);
        }
    }

    private void slide(NoteSpan sign, Box from, Box to, double start, double end, List<Shape> notation, Offset at, List<Shape> added) {
        double x1 = from == null ? start : free(from, notation, 1);
        double x2 = to == null ? end : free(to, notation, -1);
        double y1 = middle(from == null ? to : from);
        double y2 = middle(to == null ? from : to);
        if (x2 - x1 < SHORTEST) {
            x1 = Math.min(x1, x2 - SHORTEST / 2);
            x2 = Math.max(x2, x1 + SHORTEST / 2);
        }
        if (sign.kind() == NoteSpan.Kind.SLIDE) {
            added.add(new Line(x1, y1, x2, y2, THICKNESS, Role.GLISSANDO, at));
        } else {
            int waves = Math.max(2, (int) Math.round((x2 - x1) / WAVE));
            for (int i = 0; i < waves; i++) {
                double a = (double) i / waves;
                double b = (double) (i + 1) / waves;
                added.add(new Curve(x1 + (x2 - x1) * a, y1 + (y2 - y1) * a, x1 + (x2 - x1) * b, y1 + (y2 - y1) * b,
                        i % 2 == 0 ? WAVE_HEIGHT : -WAVE_HEIGHT, THICKNESS, THICKNESS, Role.GLISSANDO, at));
            }
        }
        double width = measures.text().width(sign.text(), WORDS, Text.Style.ITALIC);
        double length = Math.hypot(x2 - x1, y2 - y1);
        if (!sign.text().isEmpty() && width + 2 * GAP < length) {
            // over the middle of the line, and along it
            double over = 2.5 * GAP + (sign.kind() == NoteSpan.Kind.SLIDE ? 0 : WAVE_HEIGHT);
            added.add(new Text(sign.text(), (x1 + x2) / 2 - over * (y2 - y1) / length, (y1 + y2) / 2 + over * (x2 - x1) / length, WORDS,
                    Text.Style.ITALIC, Text.Anchor.MIDDLE, Role.GLISSANDO, at, (y2 - y1) / (x2 - x1)));
        }
    }

    private static double middle(Box heads) {
        return (heads.bottom() + heads.top()) / 2;
    }

    /** Beside the heads, and beside their dots or accidentals; {@code way} 1: to the right. */
    private double free(Box heads, List<Shape> notation, int way) {
        double x = way > 0 ? heads.right() : heads.left();
        Role beside = way > 0 ? Role.DOT : Role.ACCIDENTAL;
        for (Shape shape : notation) {
            Box box = measures.box(shape);
            boolean near = way > 0 ? box.left() >= heads.right() - 0.1 && box.left() < heads.right() + 2
                    : box.right() <= heads.left() + 0.1 && box.right() > heads.left() - 2;
            if (shape.role() == beside && near && box.bottom() < heads.top() + 0.5 && box.top() > heads.bottom() - 0.5) {
                x = way > 0 ? Math.max(x, box.right()) : Math.min(x, box.left());
            }
        }
        return x + way * GAP;
    }

    /** The wave goes on at the height of the sign, and over what stands on its way. */
    private void trill(Box from, double to, double start, List<Shape> notation, Offset at, List<Shape> added) {
        Box wave = measures.music().box("wiggleTrill");
        double advance = measures.music().advance("wiggleTrill");
        double x1 = start;
        double y = Double.NaN;
        if (from != null) {
            x1 = from.right() + GAP;
            for (Shape shape : notation) {
                if (shape instanceof Glyph sign && sign.name().equals("ornamentTrill") && measures.box(sign).left() < from.right()
                        && measures.box(sign).right() > from.left()) {
                    x1 = measures.box(sign).right() + GAP;
                    y = middle(measures.box(sign));
                }
            }
        }
        int count = (int) Math.max(1, (to - x1) / advance);
        double x2 = x1 + count * advance;
        Skyline obstacles = obstacles(notation, x2);
        double least = Math.max(obstacles.top(x1, x2), 4) + GAP + wave.height() / 2;
        y = Double.isNaN(y) ? least : Math.max(y, least);
        for (int i = 0; i < count; i++) {
            added.add(new Glyph("wiggleTrill", x1 + i * advance, y - (wave.bottom() + wave.top()) / 2, Role.TRILL_LINE, at));
        }
    }

    private void letter(NoteSpan sign, Box from, Box to, List<Shape> notation, Offset at, List<Shape> added) {
        if (from == null || to == null) {
            return;
        }
        double x = (from.left() + to.right()) / 2;
        double half = measures.text().width(sign.text(), WORDS, Text.Style.REGULAR) / 2;
        double y = Math.max(4, obstacles(notation, x + half + 1).top(x - half, x + half)) + GAP;
        added.add(new Text(sign.text(), x, y, WORDS, Text.Style.REGULAR, Text.Anchor.MIDDLE, Role.TECHNICAL, at));
    }

    private Skyline obstacles(List<Shape> notation, double end) {
        return Skyline.of(notation.stream().filter(s -> !STAFF.contains(s.role()) && measures.box(s).left() < end), end, measures);
    }
}

package countstave.chart.layout;

import countstave.chart.font.Measures;
import countstave.chart.font.MusicFont;
import countstave.chart.shape.Glyph;
import countstave.chart.shape.Role;
import countstave.chart.shape.Shape;
import countstave.chart.shape.Text;
import countstave.time.Offset;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;

/**
 * A line of words in which signs of music (♩, ♪, ♭ …) are drawn from the music font, since text fonts lack them.
 *
 * @param shapes from x = 0, baseline at y = 0
 * @param width its advance width
 */
record Inline(List<Shape> shapes, double width) {

    private static final Map<Integer, String> NOTES = Map.ofEntries(Map.entry(0x1D15C, "metNoteDoubleWhole"),
            Map.entry(0x1D15D, "metNoteWhole"), Map.entry(0x1D15E, "metNoteHalfUp"), Map.entry(0x2669, "metNoteQuarterUp"),
            Map.entry(0x1D15F, "metNoteQuarterUp"), Map.entry(0x266A, "metNote8thUp"), Map.entry(0x1D160, "metNote8thUp"),
            Map.entry(0x1D161, "metNote16thUp"), Map.entry(0x1D162, "metNote32ndUp"), Map.entry(0x1D163, "metNote64thUp"),
            Map.entry(0x1D164, "metNote128thUp"), Map.entry(0x1D16D, "metAugmentationDot"),
            Map.entry(0x266D, "accidentalFlat"), Map.entry(0x266E, "accidentalNatural"),
            Map.entry(0x266F, "accidentalSharp"), Map.entry(0x1D12A, "accidentalDoubleSharp"),
            Map.entry(0x1D12B, "accidentalDoubleFlat"), Map.entry(0x25B3, "csymMajorSeventh"),
            Map.entry(0x1D10B, "segno"), Map.entry(0x1D10C, "coda"));

    static final Inline EMPTY = new Inline(List.of(), 0);

    /** A notehead about as tall as a small letter. */
    private static final double NOTE_SCALE = 0.3;

    /** How far the lowest ink of a sign is raised to the baseline at most; an accidental is as tall as the letter before it. */
    private static final double MOST_RAISED = 0.5;
    private static final double ACCIDENTAL_RAISED = 1.1;

    static Inline of(String words, double size, Text.Style style, Role role, Offset at, Measures measures) {
        List<Shape> shapes = new ArrayList<>();
        StringBuilder run = new StringBuilder();
        double x = 0;
        for (int c : words.codePoints().toArray()) {
            String note = measures.music().nameAt(c) != null ? measures.music().nameAt(c) : NOTES.get(c);
            if (note == null) {
                run.appendCodePoint(Character.isWhitespace(c) ? ' ' : c);
                continue;
            }
            x = flush(run, x, size, style, role, at, measures, shapes);
            double scale = size * NOTE_SCALE;
            MusicFont music = measures.music();
            // raised, so that it stands on the baseline
            double most = note.startsWith("accidental") ? ACCIDENTAL_RAISED : MOST_RAISED;
            shapes.add(new Glyph(note, x, scale * Math.min(most, -music.box(note).bottom()), scale, role, at));
            x += music.box(note).right() * scale + size * 0.06;
        }
        x = flush(run, x, size, style, role, at, measures, shapes);
        return new Inline(List.copyOf(shapes), x);
    }

    private static double flush(StringBuilder run, double x, double size, Text.Style style, Role role, Offset at,
            Measures measures, List<Shape> shapes) {
        if (run.isEmpty()) {
            return x;
        }
        String text = run.toString();
        run.setLength(0);
        if (!text.isBlank()) {
            shapes.add(new Text(text, x, 0, size, style, Text.Anchor.START, role, at));
        }
        return x + measures.text().width(text, size, style);
    }

    /** This, and behind it another after a gap as wide as these blanks. */
    Inline then(Inline next, String gap, double size, Measures measures) {
        double from = width + measures.text().width(gap, size, Text.Style.REGULAR);
        List<Shape> all = new ArrayList<>(shapes);
        all.addAll(next.movedTo(from, 0));
        return new Inline(List.copyOf(all), from + next.width());
    }

    /** Where to begin so as to stand at {@code x}, but on the line, which ends at {@code end}. */
    double left(double x, double end) {
        return Math.max(0, Math.min(x, end - width));
    }

    List<Shape> movedTo(double x, double y) {
        return shapes.stream().map(s -> s.moved(x, y)).toList();
    }
}

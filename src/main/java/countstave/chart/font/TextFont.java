package countstave.chart.font;

import countstave.chart.shape.Box;
import countstave.chart.shape.Point;
import countstave.chart.shape.Text;
import java.io.IOException;
import java.util.Arrays;
import java.util.EnumMap;
import java.util.Map;
import org.apache.fontbox.ttf.CmapLookup;
import org.apache.fontbox.ttf.HorizontalMetricsTable;
import org.apache.fontbox.ttf.TTFParser;
import org.apache.fontbox.ttf.TrueTypeFont;
import org.apache.pdfbox.io.RandomAccessReadBuffer;

/** The text font in four styles: its measures, for layout. Lengths are in ems unless a size is given. */
public final class TextFont {

    /** Stands where the font has no sign for a character. */
    public static final int REPLACEMENT = 0xFFFD;

    private static final class Holder {
        static final TextFont SANS = new TextFont();
    }

    private static final class Face {
        final TrueTypeFont font;
        final CmapLookup glyphIds;
        final HorizontalMetricsTable widths;
        final double unitsPerEm;
        final double ascent;
        final double capHeight;
        final double descent;

        /** Advance widths of the first code points, which are asked for again and again; -1 where not yet looked up. */
        final int[] advances = new int[0x180];

        Face(TrueTypeFont font) throws IOException {
            Arrays.fill(advances, -1);
            this.font = font;
            glyphIds = font.getUnicodeCmapLookup();
            widths = font.getHorizontalMetrics();
            unitsPerEm = font.getUnitsPerEm();
            capHeight = font.getOS2Windows().getCapHeight() / unitsPerEm;
            ascent = 0.78;
            descent = 0.22;
        }

        int advance(int codePoint) {
            if (codePoint >= advances.length) {
                return lookUp(codePoint);
            }
            if (advances[codePoint] < 0) {
                advances[codePoint] = lookUp(codePoint);
            }
            return advances[codePoint];
        }

        private int lookUp(int codePoint) {
            int glyph = glyphIds.getGlyphId(codePoint);
            return widths.getAdvanceWidth(glyph != 0 ? glyph : glyphIds.getGlyphId(REPLACEMENT));
        }
    }

    private final Map<Text.Style, Face> faces = new EnumMap<>(Text.Style.class);

    private TextFont() {
    }

    /** The font of the chart. */
    public static TextFont sans() {
        return Holder.SANS;
    }

    private synchronized Face face(Text.Style style) {
        return faces.computeIfAbsent(style, s -> {
            String file = file(s);
            try {
                return new Face(new TTFParser().parse(new RandomAccessReadBuffer(FontFiles.bytes(file))));
            } catch (IOException e) {
                throw FontFiles.missing(file, e);
            }
        });
    }

    private static String file(Text.Style style) {
        return "noto-sans/" + switch (style) {
            case REGULAR -> "NotoSans_400Regular.ttf";
            case BOLD -> "NotoSans_700Bold.ttf";
            case ITALIC -> "NotoSans_400Regular_Italic.ttf";
            case BOLD_ITALIC -> "NotoSans_700Bold_Italic.ttf";
        };
    }

    /** The font program, for embedding. */
    public TrueTypeFont program(Text.Style style) {
        return face(style).font;
    }

    public boolean has(int codePoint, Text.Style style) {
        return face(style).glyphIds.getGlyphId(codePoint) != 0;
    }

    /** The text with every character that the font lacks replaced, so that its lack is seen. */
    public String printable(String text, Text.Style style) {
        StringBuilder out = new StringBuilder(text.length());
        for (int i = 0; i < text.length();) {
            int c = text.codePointAt(i);
            out.appendCodePoint(has(c, style) ? c : REPLACEMENT);
            i += Character.charCount(c);
        }
        return out.toString();
    }

    /** Width of a text of the given size, in the unit of the size. */
    public double width(String text, double size, Text.Style style) {
        Face face = face(style);
        long units = 0;
        for (int i = 0; i < text.length();) {
            int c = text.codePointAt(i);
            units += face.advance(c);
            i += Character.charCount(c);
        }
        return units / face.unitsPerEm * size;
    }

    public double capHeight(double size, Text.Style style) {
        return face(style).capHeight * size;
    }

    /** How far letters reach below the baseline, as a positive number. */
    public double descent(double size, Text.Style style) {
        return face(style).descent * size;
    }

    /** How far tall letters reach above the baseline. */
    public double ascent(double size, Text.Style style) {
        return face(style).ascent * size;
    }

    /** The box of a text: advance width, tall letters, descenders; of one that slants, the upright box around that. */
    public Box box(Text text) {
        double width = width(text.string(), text.size(), text.style());
        double left = text.x() - before(text, width);
        Box level = new Box(left, text.y() - descent(text.size(), text.style()), left + width,
                text.y() + ascent(text.size(), text.style()));
        if (text.slope() == 0) {
            return level;
        }
        return turned(text, level.left(), level.bottom()).with(turned(text, level.right(), level.bottom()))
                .with(turned(text, level.left(), level.top())).with(turned(text, level.right(), level.top()));
    }

    /** Where the baseline begins. */
    public Point start(Text text) {
        double left = text.x() - before(text, width(text.string(), text.size(), text.style()));
        if (text.slope() == 0) {
            return new Point(left, text.y());
        }
        Box start = turned(text, left, text.y());
        return new Point(start.left(), start.bottom());
    }

    private static double before(Text text, double width) {
        return switch (text.anchor()) {
            case START -> 0;
            case MIDDLE -> width / 2;
            case END -> width;
        };
    }

    /** A point of a level text, turned with it around its anchor. */
    private static Box turned(Text text, double x, double y) {
        double cos = Math.cos(text.angle());
        double sin = Math.sin(text.angle());
        double dx = x - text.x();
        double dy = y - text.y();
        double toX = text.x() + dx * cos - dy * sin;
        double toY = text.y() + dx * sin + dy * cos;
        return new Box(toX, toY, toX, toY);
    }
}

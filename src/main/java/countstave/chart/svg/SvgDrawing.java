package countstave.chart.svg;

import countstave.chart.font.Measures;
import countstave.chart.layout.BarPlace;
import countstave.chart.layout.Chart;
import countstave.chart.shape.Curve;
import countstave.chart.shape.Glyph;
import countstave.chart.shape.Line;
import countstave.chart.shape.Polygon;
import countstave.chart.shape.Role;
import countstave.chart.shape.Shape;
import countstave.chart.shape.Text;
import countstave.plain.Phrases;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;

/**
 * Draws a chart as SVG 1.1 (W3C Recommendation, second edition), one drawing a page. The same chart gives the same text.
 *
 * <p>What a page of the web can find in it: each bar is a {@code rect} of class {@code bar} without ink, which takes
 * clicks, with {@code data-part} (MusicXML id), {@code data-bar} (index of the written bar, from 0), {@code data-number}
 * (as printed) and {@code data-bars} (how many, in a run of rests). Counts ({@code count}, with {@code played},
 * {@code unplayed} or {@code felt}), their parentheses ({@code parenthesis}), the ticks above them ({@code tick}), marks
 * where the count changes ({@code mark}) and noteheads ({@code note}) have {@code data-part}, {@code data-bar} and {@code data-at}: the moment at which they sound,
 * from the bar's start, the same fraction that the JSON of {@code count} has there. Unit: a tenth of a staff space.
 */
public final class SvgDrawing {

    private static final double UNITS = SvgPath.UNITS;
    private static final String MARK = "mark";
    private static final Map<Role, String> CLASSES = Map.ofEntries(Map.entry(Role.SYLLABLE_PLAYED, "count played"),
            Map.entry(Role.SYLLABLE_UNPLAYED, "count unplayed"), Map.entry(Role.FELT, "count felt"),
            Map.entry(Role.PARENTHESIS, "parenthesis"), Map.entry(Role.TICK, "tick"), Map.entry(Role.TICK_BEAT, "tick beat"),
            Map.entry(Role.NOTE, "note"), Map.entry(Role.CHANGE_MARK, MARK), Map.entry(Role.WORDS_MARK, MARK),
            Map.entry(Role.CHANGE_WORDS, MARK));

    /** A click goes through lines and signs to the bar behind them; words can be selected. */
    private static final String CLICKS = ".countstave-page path:not(.tick),.countstave-page use:not(.note){pointer-events:none}\n";

    private final Chart chart;
    private final Measures measures = Measures.standard();
    private final double height;
    /** The bar of the mark that was drawn last. */
    private BarPlace marked;

    private SvgDrawing(Chart chart) {
        this.chart = chart;
        this.height = chart.paper().height() / chart.paper().space();
    }

    /** Each page as a document of its own, with all that it needs inside: the content of a file, in UTF-8. */
    public static List<String> pages(Chart chart) {
        return new SvgDrawing(chart).pages();
    }

    /** The pages for one page of the web, which share their fonts and signs. */
    public static SvgInline inline(Chart chart) {
        return inline(List.of(chart), "");
    }

    /**
     * The pages of several charts for one page of the web, one chart after the other; all of them share their fonts and signs.
     *
     * @param letters that a script is going to put in place of words: in the fonts of the counts they are there too
     */
    public static SvgInline inline(List<Chart> charts, String letters) {
        List<Chart.Page> all = charts.stream().flatMap(chart -> chart.pages().stream()).toList();
        SvgFonts fonts = SvgFonts.of(all, letters, Measures.standard());
        List<String> pages = new ArrayList<>();
        for (Chart chart : charts) {
            SvgDrawing drawing = new SvgDrawing(chart);
            for (int i = 0; i < chart.pages().size(); i++) {
                pages.add(drawing.page(i, fonts.family(), ""));
            }
        }
        return new SvgInline(style(fonts) + "<svg " + SvgInline.NAMESPACES
                + " width=\"0\" height=\"0\" style=\"position:absolute\"><defs>\n" + fonts.signs() + "</defs></svg>\n",
                List.copyOf(pages));
    }

    private List<String> pages() {
        List<String> pages = new ArrayList<>();
        for (int i = 0; i < chart.pages().size(); i++) {
            SvgFonts fonts = SvgFonts.of(chart.pages().subList(i, i + 1), "", measures);
            pages.add("<?xml version=\"1.0\" encoding=\"UTF-8\"?>\n"
                    + page(i, fonts.family(), style(fonts) + "<defs>\n" + fonts.signs() + "</defs>\n"));
        }
        return List.copyOf(pages);
    }

    private static String style(SvgFonts fonts) {
        return "<style>" + CLICKS + fonts.faces() + "</style>\n";
    }

    private String page(int index, String family, String head) {
        Chart.Paper paper = chart.paper();
        StringBuilder out = new StringBuilder(1 << 16);
        out.append("<svg ").append(SvgInline.NAMESPACES).append(" width=\"").append(SvgPath.number(paper.width()))
                .append("mm\" height=\"").append(SvgPath.number(paper.height())).append("mm\" viewBox=\"0 0 ")
                .append(SvgPath.number(paper.width() / paper.space() * UNITS)).append(' ')
                .append(SvgPath.number(height * UNITS)).append("\" xml:lang=\"").append(SvgPath.escape(chart.about().language()))
                .append("\" class=\"countstave-page\" data-page=\"").append(index + 1).append("\">\n<title>")
                .append(SvgPath.escape(title(index))).append("</title>\n").append(head)
                .append("<rect class=\"paper\" width=\"100%\" height=\"100%\" fill=\"#fff\"/>\n<g font-family=\"")
                .append(family).append(", sans-serif\" text-rendering=\"geometricPrecision\">\n");
        Chart.Page page = chart.pages().get(index);
        page.bars().forEach(bar -> bar(bar, out));
        List<Shape> shapes = page.shapes();
        for (int i = 0; i < shapes.size(); i++) {
            String attributes = attributes(shapes.get(i), page.bars());
            if (attributes.isEmpty() && shapes.get(i) instanceof Line line) {
                i = lines(shapes, i, line.thickness(), out);
            } else {
                draw(shapes.get(i), attributes, out);
            }
        }
        return out.append("</g>\n</svg>\n").toString();
    }

    private String title(int index) {
        Chart.About about = chart.about();
        return Phrases.in(about.language()).text("chart.page", about.title(), about.subject(), String.valueOf(index + 1),
                String.valueOf(chart.pages().size()));
    }

    private void bar(BarPlace bar, StringBuilder out) {
        out.append("<rect class=\"bar\"").append(place(bar)).append(" data-number=\"").append(SvgPath.escape(bar.number()))
                .append('"');
        if (bar.bars() > 1) {
            out.append(" data-bars=\"").append(bar.bars()).append('"');
        }
        out.append(" x=\"").append(SvgPath.number(bar.box().left() * UNITS)).append("\" y=\"")
                .append(SvgPath.number((height - bar.box().top()) * UNITS)).append("\" width=\"")
                .append(SvgPath.number(bar.box().width() * UNITS)).append("\" height=\"")
                .append(SvgPath.number(bar.box().height() * UNITS)).append("\" fill=\"none\" pointer-events=\"all\"/>\n");
    }

    private static String place(BarPlace bar) {
        return " data-part=\"" + SvgPath.escape(bar.part()) + "\" data-bar=\"" + bar.bar() + "\"";
    }

    /** What it is, and where in time; empty for what nobody asks for. */
    private String attributes(Shape shape, List<BarPlace> bars) {
        String kind = CLASSES.get(shape.role());
        if (kind == null) {
            return "";
        }
        String attributes = " class=\"" + kind + "\"";
        if (shape.at() == null) {
            return attributes;
        }
        // words of a mark may reach beyond the bar in which its line stands
        BarPlace in = shape.role() == Role.CHANGE_WORDS ? marked : null;
        for (int i = 0; in == null && i < bars.size(); i++) {
            in = bars.get(i).holds(measures.box(shape)) ? bars.get(i) : null;
        }
        if (kind.equals(MARK)) {
            marked = in;
        }
        return in == null ? attributes : attributes + place(in) + " data-at=\"" + in.soundingAt(shape.at()) + "\"";
    }

    /** Lines of one thickness that follow each other, and that nobody asks for, are one path: most of a page are such. */
    private int lines(List<Shape> shapes, int first, double thickness, StringBuilder out) {
        SvgPath path = new SvgPath(height);
        int next = first;
        while (next < shapes.size() && shapes.get(next) instanceof Line line && line.thickness() == thickness
                && !CLASSES.containsKey(line.role())) {
            path.line(line.x1(), line.y1(), line.x2(), line.y2());
            next++;
        }
        stroke("", thickness, path, out);
        return next - 1;
    }

    private static void stroke(String attributes, double thickness, SvgPath path, StringBuilder out) {
        out.append("<path").append(attributes).append(" stroke=\"#000\" stroke-width=\"").append(SvgPath.number(thickness * UNITS))
                .append("\" d=\"").append(path).append("\"/>\n");
    }

    private void draw(Shape shape, String attributes, StringBuilder out) {
        SvgPath path = new SvgPath(height);
        if (shape instanceof Glyph glyph) {
            out.append("<use").append(attributes).append(" xlink:href=\"#").append(SvgFonts.id(glyph.name())).append('"');
            if (glyph.scale() == 1) {
                out.append(" x=\"").append(path.x(glyph.x())).append("\" y=\"").append(path.y(glyph.y()));
            } else {
                out.append(" transform=\"translate(").append(path.x(glyph.x())).append(' ').append(path.y(glyph.y()))
                        .append(") scale(").append(SvgPath.number(glyph.scale())).append(')');
            }
            out.append("\"/>\n");
        } else if (shape instanceof Text text) {
            draw(text, attributes, path, out);
        } else if (shape instanceof Line line) {
            path.line(line.x1(), line.y1(), line.x2(), line.y2());
            stroke(attributes, line.thickness(), path, out);
        } else {
            if (shape instanceof Polygon polygon) {
                path.polygon(polygon.points());
            } else if (shape instanceof Curve curve) {
                path.bow(curve.outline());
            }
            out.append("<path").append(attributes).append(" d=\"").append(path).append("\"/>\n");
        }
    }

    private static void draw(Text text, String attributes, SvgPath path, StringBuilder out) {
        out.append("<text").append(attributes).append(" x=\"").append(path.x(text.x())).append("\" y=\"").append(path.y(text.y()))
                .append("\" font-size=\"").append(SvgPath.number(text.size() * UNITS)).append('"');
        if (text.anchor() != Text.Anchor.START) {
            out.append(" text-anchor=\"").append(text.anchor().name().toLowerCase(Locale.ROOT)).append('"');
        }
        if (text.slope() != 0) {
            out.append(" transform=\"rotate(").append(SvgPath.number(-Math.toDegrees(text.angle()))).append(' ').append(path.x(text.x()))
                    .append(' ').append(path.y(text.y())).append(")\"");
        }
        out.append(text.style().isBold() ? " font-weight=\"bold\"" : "")
                .append(text.style().isItalic() ? " font-style=\"italic\"" : "");
        if (text.isLight()) {
            int gray = (int) Math.round(255 * Shape.LIGHT);
            out.append(" fill=\"").append(String.format(Locale.ROOT, "#%02x%02x%02x", gray, gray, gray)).append('"');
        }
        // blanks at the ends are part of what was measured
        if (!text.string().equals(text.string().strip()) || text.string().contains("  ")) {
            out.append(" xml:space=\"preserve\"");
        }
        out.append('>').append(SvgPath.escape(text.string())).append("</text>\n");
    }
}

package countstave.chart.layout;

import countstave.chart.ChartOptions;
import countstave.chart.font.Measures;
import countstave.chart.shape.Glyph;
import countstave.chart.shape.Role;
import countstave.chart.shape.Shape;
import countstave.chart.shape.Text;
import countstave.chart.shape.Text.Anchor;
import countstave.chart.shape.Text.Style;
import java.util.ArrayList;
import java.util.List;

/** The page around the music: margins, head and foot. Lengths in staff spaces, from the lower left corner. */
final class PageFrame {

    private final Measures measures;
    private final String title;
    private final String composer;
    private final String partName;
    private final List<String> keyLines;
    final double left;
    final double right;
    final double top;
    final double bottom;

    PageFrame(ChartOptions options, Measures measures, String title, String composer, String partName, String key) {
        this.measures = measures;
        this.title = title;
        this.composer = composer;
        this.partName = partName;
        double margin = options.marginMm() / options.spaceMm();
        left = margin;
        right = options.pageWidthMm() / options.spaceMm() - margin;
        top = options.pageHeightMm() / options.spaceMm() - margin;
        bottom = margin;
        keyLines = wrap(key, width(), Sizes.FOOT);
    }

    double width() {
        return right - left;
    }

    /** Where the music may begin on a page. */
    double musicTop(boolean first) {
        return first ? top - headHeight() : top - Sizes.FOOT * 2.9;
    }

    /** Where it must end. */
    double musicBottom() {
        return bottom + Sizes.FOOT * (1.3 * keyLines.size() + 2.6);
    }

    private double headHeight() {
        return Sizes.TITLE * 1.2 * titleLines().size() + Sizes.SUBTITLE * 2.0 + 1.5;
    }

    private List<String> titleLines() {
        return wrap(title, width(), Sizes.TITLE);
    }

    List<Shape> furniture(boolean first, int page, int pages) {
        List<Shape> shapes = new ArrayList<>();
        if (first) {
            double y = top;
            for (String line : titleLines()) {
                y -= Sizes.TITLE;
                shapes.addAll(text(line, (left + right) / 2, y, Sizes.TITLE, Style.BOLD, Anchor.MIDDLE, Role.TITLE));
                y -= Sizes.TITLE * 0.2;
            }
            y -= Sizes.SUBTITLE * 1.3;
            double half = width() * (composer.isBlank() ? 1 : 0.5) - 1;
            shapes.addAll(text(cut(partName, half, Sizes.SUBTITLE, Style.REGULAR), left, y, Sizes.SUBTITLE, Style.REGULAR,
                    Anchor.START, Role.PART_NAME));
            if (!composer.isBlank()) {
                shapes.addAll(text(cut(composer, half, Sizes.SUBTITLE, Style.ITALIC), right, y, Sizes.SUBTITLE,
                        Style.ITALIC, Anchor.END, Role.COMPOSER));
            }
        } else {
            shapes.addAll(text(cut(title, width(), Sizes.FOOT, Style.REGULAR), (left + right) / 2, top - Sizes.FOOT,
                    Sizes.FOOT, Style.REGULAR, Anchor.MIDDLE, Role.TITLE));
        }
        foot(page, pages, shapes);
        return shapes;
    }

    private void foot(int page, int pages, List<Shape> shapes) {
        double y = bottom + Sizes.FOOT * 0.3;
        String number = page + " / " + pages;
        shapes.addAll(text(number, right, y, Sizes.FOOT, Style.REGULAR, Anchor.END, Role.PAGE_NUMBER));
        double room = width() - measures.text().width(number, Sizes.FOOT, Style.REGULAR) - 2;
        shapes.addAll(text(cut(partName, room, Sizes.FOOT, Style.BOLD), left, y, Sizes.FOOT, Style.BOLD, Anchor.START,
                Role.PART_NAME));
        for (int i = keyLines.size() - 1; i >= 0; i--) {
            y += Sizes.FOOT * 1.3;
            Inline line = Inline.of(keyLines.get(i), Sizes.FOOT, Style.REGULAR, Role.KEY_LINE, null, measures);
            shapes.addAll(line.movedTo(left, y));
        }
    }

    /** A plain text is one shape; in one with signs of music, such as B♭, these are drawn from the music font. */
    private List<Shape> text(String words, double x, double y, double size, Style style, Anchor anchor, Role role) {
        Inline line = Inline.of(words, size, style, role, null, measures);
        if (line.shapes().stream().noneMatch(Glyph.class::isInstance)) {
            return List.of(new Text(words, x, y, size, style, anchor, role, null));
        }
        double before = switch (anchor) {
            case START -> 0;
            case MIDDLE -> line.width() / 2;
            case END -> line.width();
        };
        return line.movedTo(x - before, y);
    }

    private double width(String words, double size, Style style) {
        return Inline.of(words, size, style, Role.TITLE, null, measures).width();
    }

    /** A text that fits the width, cut with an ellipsis if it must be. */
    private String cut(String words, double width, double size, Style style) {
        if (width(words, size, style) <= width) {
            return words;
        }
        int[] points = words.codePoints().toArray();
        int n = points.length;
        while (n > 0 && width(new String(points, 0, n) + "…", size, style) > width) {
            n--;
        }
        return new String(points, 0, n) + "…";
    }

    /** Lines that fit the width; a single word that does not is cut. */
    private List<String> wrap(String words, double width, double size) {
        List<String> lines = new ArrayList<>();
        String line = "";
        for (String word : words.strip().split("\\s+")) {
            String longer = line.isEmpty() ? word : line + " " + word;
            if (width(longer, size, Style.BOLD) > width && !line.isEmpty()) {
                lines.add(line);
                longer = word;
            }
            line = cut(longer, width, size, Style.BOLD);
        }
        if (!line.isEmpty()) {
            lines.add(line);
        }
        return lines;
    }
}

package countstave.chart.shape;

import countstave.time.Offset;

/**
 * A sign of the music font.
 *
 * @param name canonical SMuFL name, such as {@code noteheadBlack}
 * @param x of the glyph's origin
 * @param y of the glyph's origin
 * @param scale 1 for full size; grace notes and cues are smaller
 * @param role what it means
 * @param at its position in time, or null
 */
public record Glyph(String name, double x, double y, double scale, Role role, Offset at) implements Shape {

    public Glyph(String name, double x, double y, Role role, Offset at) {
        this(name, x, y, 1, role, at);
    }

    @Override
    public Glyph moved(double dx, double dy) {
        return new Glyph(name, x + dx, y + dy, scale, role, at);
    }

    @Override
    public Glyph scaled(double factor) {
        return new Glyph(name, x * factor, y * factor, scale * factor, role, at);
    }
}

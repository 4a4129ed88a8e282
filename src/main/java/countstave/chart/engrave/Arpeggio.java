package countstave.chart.engrave;

import countstave.chart.shape.Point;
import countstave.chart.shape.Polygon;
import countstave.chart.shape.Role;
import java.util.ArrayList;
import java.util.List;

/**
 * The upright wave before a chord whose notes follow each other, as long as the chord is tall (common practice). The music
 * font has the wave lying down only, so it is drawn here.
 */
final class Arpeggio {

    /** Room of the wave, its swing to each side, its thickness and the length of one wave: house choice. */
    private static final double ROOM = 1.2;
    private static final double SWING = 0.22;
    private static final double THICKNESS = 0.16;
    private static final double WAVE = 1.0;
    private static final int SAMPLES = 10;
    private static final double BEYOND = 0.4;

    private Arpeggio() {
    }

    static boolean isOn(Chord chord) {
        return chord.isNote() && chord.event.look().other().contains("arpeggiate");
    }

    /** Sets the wave of a moment left of all that stands there. */
    static void place(Moment moment) {
        List<Chord> broken = moment.chords.stream().filter(Arpeggio::isOn).toList();
        if (broken.isEmpty()) {
            return;
        }
        double low = broken.stream().mapToDouble(c -> c.low().y()).min().orElseThrow() - BEYOND;
        double high = broken.stream().mapToDouble(c -> c.high().y()).max().orElseThrow() + BEYOND;
        double centre = -moment.left - ROOM / 2;
        int steps = (int) Math.ceil((high - low) / WAVE * SAMPLES);
        List<Point> outline = new ArrayList<>();
        for (int i = 0; i <= steps; i++) {
            outline.add(point(centre - THICKNESS / 2, low, high, i, steps));
        }
        for (int i = steps; i >= 0; i--) {
            outline.add(point(centre + THICKNESS / 2, low, high, i, steps));
        }
        moment.rows.add(new Polygon(outline, Role.ARPEGGIO, moment.at));
        moment.reach(-moment.left - ROOM, 0);
    }

    private static Point point(double x, double low, double high, int i, int steps) {
        double y = low + (high - low) * i / steps;
        return new Point(x + SWING * Math.sin(2 * Math.PI * (y - low) / WAVE), y);
    }
}

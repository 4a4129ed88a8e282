package countstave.chart.engrave;

import countstave.chart.shape.Curve;
import countstave.chart.shape.Role;
import java.util.List;

/**
 * Short slides into a note from no pitch of their own, and out of it: a scoop comes from below, a plop from above, a doit goes up, a
 * fall down (common practice, no source). They stand beside all that belongs to the moment; sizes: house choices.
 */
final class Inflections {

    private static final double WIDTH = 1.4;
    private static final double RISE = 1.5;
    private static final double BULGE = 0.4;
    private static final double GAP = 0.2;
    private static final double END = 0.14;
    private static final double MIDDLE = 0.22;

    private Inflections() {
    }

    /** Whether an articulation of this MusicXML name is one of them. */
    static boolean isOne(String name) {
        return List.of("scoop", "plop", "doit", "falloff").contains(name);
    }

    static void place(Moment moment) {
        for (Chord chord : moment.chords) {
            if (!chord.isNote()) {
                continue;
            }
            for (String name : chord.event.look().articulations()) {
                switch (name) {
                    case "scoop" -> into(moment, chord.low().y(), -1);
                    case "plop" -> into(moment, chord.high().y(), 1);
                    case "doit" -> outOf(moment, chord.high().y(), 1);
                    case "falloff" -> outOf(moment, chord.low().y(), -1);
                    default -> {
                        // stands above or below the note: Marks draws it
                    }
                }
            }
        }
    }

    /** @param way 1: from above */
    private static void into(Moment moment, double y, int way) {
        double x = -moment.left - GAP;
        moment.rows.add(new Curve(x - WIDTH, y + way * RISE, x, y, way * BULGE, END, MIDDLE, Role.GLISSANDO, moment.at));
        moment.reach(x - WIDTH, 0);
    }

    /** @param way 1: upwards */
    private static void outOf(Moment moment, double y, int way) {
        double x = moment.right + GAP;
        moment.rows.add(new Curve(x, y, x + WIDTH, y + way * RISE, -way * BULGE, END, MIDDLE, Role.GLISSANDO, moment.at));
        moment.reach(0, x + WIDTH);
    }
}

package countstave.chart.engrave;

import countstave.chart.font.MusicFont;
import countstave.chart.shape.Box;
import countstave.chart.shape.Glyph;
import countstave.chart.shape.Role;
import java.util.ArrayList;
import java.util.List;

/**
 * Parentheses round noteheads, as those of ghost notes. Heads of a chord whose own ones would run into each other share a taller
 * pair; a pair stands outside of all heads that it passes (common practice, no source).
 */
final class Parentheses {

    /** Between a head and its parentheses: house choice; they must not touch an x. */
    static final double GAP = 0.1;
    /** Farther apart, in steps, each head has its own: the sign is a bit less than three steps high. */
    private static final int NEAR = 2;
    /** Enlarged further, its stroke would be as thick as a beam: house choice. */
    private static final double LARGEST = 3;
    private static final String LEFT = "noteheadParenthesisLeft";
    private static final String RIGHT = "noteheadParenthesisRight";

    private Parentheses() {
    }

    /** A pair in place, relative to the moment's x. */
    record Pair(Box left, Box right, double y, double scale) {
    }

    static List<Pair> of(Chord chord) {
        List<Pair> pairs = new ArrayList<>();
        List<Chord.Spot> spots = chord.spots;
        for (int i = 0; i < spots.size(); i++) {
            if (!stands(spots.get(i))) {
                continue;
            }
            int last = i;
            while (last + 1 < spots.size() && stands(spots.get(last + 1)) && spots.get(last + 1).step - spots.get(last).step <= NEAR) {
                last++;
            }
            pairs.add(around(chord, spots.get(i), spots.get(last)));
            i = last;
        }
        return pairs;
    }

    /** A number of a fret has its own, in its text; a head that stands for two has those of the first. */
    private static boolean stands(Chord.Spot spot) {
        return spot.head.parentheses() && !spot.fret && !spot.shared;
    }

    static boolean anyAt(Chord chord) {
        return chord.spots.stream().anyMatch(Parentheses::stands);
    }

    private static Pair around(Chord chord, Chord.Spot low, Chord.Spot high) {
        MusicFont font = chord.font;
        double height = font.box(LEFT).height() * chord.scale;
        double scale = chord.scale * Math.min(LARGEST, 1 + (high.y() - low.y()) / height);
        double y = (low.y() + high.y()) / 2;
        Box sign = font.box(LEFT).scaled(scale);
        double left = Double.MAX_VALUE;
        double right = -Double.MAX_VALUE;
        for (Chord.Spot spot : chord.spots) {
            Box head = chord.box(spot);
            if (head.bottom() < y + sign.top() && head.top() > y + sign.bottom()) {
                left = Math.min(left, head.left());
                right = Math.max(right, head.right());
            }
        }
        double gap = GAP * chord.scale;
        return new Pair(new Box(left - gap - sign.width(), y + sign.bottom(), left - gap, y + sign.top()),
                new Box(right + gap, y + sign.bottom(), right + gap + sign.width(), y + sign.top()), y, scale);
    }

    static void draw(Chord chord, Canvas canvas) {
        for (Pair pair : of(chord)) {
            put(LEFT, pair.left(), pair, chord, canvas);
            put(RIGHT, pair.right(), pair, chord, canvas);
        }
    }

    private static void put(String sign, Box box, Pair pair, Chord chord, Canvas canvas) {
        canvas.add(new Glyph(sign, chord.x + box.left() - canvas.font.box(sign).left() * pair.scale(), pair.y(), pair.scale(), Role.PARENTHESIS,
                chord.event.start()));
    }
}

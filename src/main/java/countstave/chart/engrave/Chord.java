package countstave.chart.engrave;

import countstave.chart.font.MusicFont;
import countstave.chart.shape.Box;
import countstave.chart.shape.Point;
import countstave.score.Event;
import countstave.score.Head;
import countstave.score.Look;
import countstave.score.NoteValue;
import countstave.score.Written;
import countstave.time.Duration;
import countstave.time.Ratio;
import java.util.ArrayList;
import java.util.List;

/**
 * A note, chord or rest on its way to the page. Horizontal places are relative to the moment's x (the centre of a
 * notehead); everything here is known before the bar's width is.
 */
final class Chord {

    /** Size of grace and cue notes: common practice, about two thirds. */
    static final double SMALL = 0.66;

    /** A notehead in place: {@code left} edge relative to the moment's x. */
    static final class Spot {
        final Head head;
        final String sign;
        final int step;
        final double width;
        double left;
        boolean displaced;
        boolean shared;
        /** Whether the number of a fret stands in place of the head. */
        final boolean fret;

        Spot(Head head, String sign, int step, double width) {
            this(head, sign, step, width, false);
        }

        Spot(Head head, String sign, int step, double width, boolean fret) {
            this.fret = fret;
            this.head = head;
            this.sign = sign;
            this.step = step;
            this.width = width;
        }

        double y() {
            return step / 2.0;
        }

        double right() {
            return left + width;
        }
    }

    final Event event;
    /** Index of the event in its voice. */
    final int index;
    final VoiceLine voice;
    final double scale;
    final MusicFont font;
    /** As written in the file, or, where it does not say, the value that fits the length. */
    final Written written;
    /** From low to high; a rest has none. */
    final List<Spot> spots = new ArrayList<>();
    boolean up = true;
    BeamGroup beam;
    /** Where the whole chord stands beside the moment's x: zero unless voices collide or it is a grace note. */
    double shift;

    /** Whether its beam reaches beyond the staff or the bar, so that the page draws its stem. */
    boolean far;
    /** Whether it stands on a tablature, and the file does not say where it is held down. */
    boolean lacksFret;

    // rests
    String restSign;
    double restY;
    /** Height the file gives to the rest, in steps, or null. */
    Integer placedStep;
    /** Stands for an alike rest of another voice too. */
    boolean sharedRest;
    /** An alike rest of another voice stands for this one too. */
    boolean hidden;

    // filled in once x is known
    double x;
    double stemEnd = Double.NaN;

    Chord(Event event, int index, VoiceLine voice, MusicFont font) {
        this.event = event;
        this.index = index;
        this.voice = voice;
        this.font = font;
        this.written = event.written() != null ? event.written() : fitting(event.length());
        this.scale = event.isGrace() || event.cue() ? SMALL : 1;
    }

    private static Written fitting(Duration length) {
        NoteValue below = NoteValue.QUARTER;
        for (NoteValue value : NoteValue.values()) {
            for (int dots = 0; dots <= 2; dots++) {
                if (value.dotted(dots).equals(length)) {
                    return Written.of(value, dots, Ratio.ONE);
                }
            }
            if (!value.length().isLongerThan(length)) {
                below = value;
                break;
            }
        }
        return Written.of(below, 0, Ratio.ONE);
    }

    NoteValue value() {
        return written.value();
    }

    int dots() {
        return Math.min(written.dots(), 4);
    }

    int flags() {
        return written.value().flags();
    }

    boolean isNote() {
        return !spots.isEmpty();
    }

    boolean isRest() {
        return restSign != null && !hidden;
    }

    /** Whether it is written in tablature: its heads are numbers of frets. */
    boolean isTab() {
        return isNote() && low().fret;
    }

    boolean hasStem() {
        return isNote() && value().compareTo(NoteValue.WHOLE) > 0
                && event.look().stem() != Look.Stem.NONE;
    }

    Spot low() {
        return spots.get(0);
    }

    Spot high() {
        return spots.get(spots.size() - 1);
    }

    /** The head at the stem's beginning: the lowest under an upward stem. */
    Spot root() {
        return up ? low() : high();
    }

    /** The head nearest to the stem's end. */
    Spot tip() {
        return up ? high() : low();
    }

    double stemThickness() {
        return font.engraving("stemThickness") * scale;
    }

    private Point stemAnchor(Spot spot) {
        Point anchor = font.anchor(spot.sign, up ? "stemUpSE" : "stemDownNW");
        if (anchor != null) {
            return anchor;
        }
        return new Point(up ? font.box(spot.sign).right() : font.box(spot.sign).left(), 0);
    }

    /** Axis of the stem relative to the moment's x: flush with the anchor {@code stemUpSE} or {@code stemDownNW}. */
    double stemX() {
        if (isTab()) {
            return shift;
        }
        Spot root = root();
        double edge = root.left - font.box(root.sign).left() * scale + stemAnchor(root).x() * scale;
        return edge + (up ? -1 : 1) * stemThickness() / 2;
    }

    /** y at which the stem leaves its head. */
    double stemStart() {
        if (isTab()) {
            // numbers are not run through
            return tip().y() + (up ? 1 : -1) * FretNumbers.ROOM * scale;
        }
        return root().y() + stemAnchor(root()).y() * scale;
    }

    /** Places the heads beside the stem: seconds change sides. */
    void placeHeads() {
        if (spots.isEmpty()) {
            return;
        }
        if (isTab()) {
            FretNumbers.place(spots, shift, scale);
            return;
        }
        int from = up ? 0 : spots.size() - 1;
        int way = up ? 1 : -1;
        Spot before = null;
        for (int i = from; i >= 0 && i < spots.size(); i += way) {
            Spot spot = spots.get(i);
            spot.displaced = before != null && !before.displaced && Math.abs(spot.step - before.step) <= 1;
            before = spot;
        }
        Spot root = root();
        root.left = shift - root.width / 2;
        double stem = stemX();
        double half = stemThickness() / 2;
        for (Spot spot : spots) {
            if (spot == root) {
                continue;
            }
            double anchored = stem + (up ? half : -half) - (stemAnchor(spot).x() - font.box(spot.sign).left()) * scale;
            if (!spot.displaced) {
                spot.left = hasStem() ? anchored : shift - spot.width / 2;
            } else if (up) {
                spot.left = hasStem() ? stem - half : root.right() - half;
            } else {
                spot.left = hasStem() ? stem + half - spot.width : root.left - spot.width + half;
            }
        }
    }

    Box box(Spot spot) {
        Box box = font.box(spot.sign).scaled(scale);
        return new Box(spot.left, spot.y() + box.bottom(), spot.right(), spot.y() + box.top());
    }

    /** Left edge of the heads, parentheses included, relative to the moment's x. */
    double headsLeft() {
        double left = spots.stream().mapToDouble(s -> s.left).min().orElse(0);
        return Parentheses.of(this).stream().mapToDouble(p -> p.left().left()).reduce(left, Math::min);
    }

    double headsRight() {
        double right = spots.stream().mapToDouble(Spot::right).max().orElse(0);
        return Parentheses.of(this).stream().mapToDouble(p -> p.right().right()).reduce(right, Math::max);
    }

    /** Whether it carries a flag of its own. */
    boolean hasFlag() {
        return hasStem() && beam == null && !far && flags() > 0 && !isTwoNoteTremolo();
    }

    boolean isTwoNoteTremolo() {
        return event.look().isSharedTremolo();
    }

    Box restBox() {
        return font.box(restSign).scaled(scale).moved(shift - font.width(restSign) * scale / 2
                - font.box(restSign).left() * scale, restY);
    }

    /** x of the middle of its root, where signs above and below it stand; of a rest, where that is. */
    double centre() {
        return x + (isNote() ? root().left + root().width / 2 : 0);
    }

    /** Vertical extent of what stands at the moment itself (heads or rest). */
    Box body() {
        if (isNote()) {
            Box box = box(low());
            for (Spot spot : spots) {
                box = box.with(box(spot));
            }
            return box;
        }
        return restBox();
    }
}

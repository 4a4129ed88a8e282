package countstave.chart.engrave;

import countstave.chart.shape.Curve;
import countstave.chart.shape.Role;
import countstave.score.Bar;
import countstave.score.Event;
import countstave.score.Head;
import countstave.score.Pitch;
import countstave.score.Voice;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import java.util.function.Predicate;

/**
 * Ties inside a bar, and the ends of those that cross a barline.
 *
 * <p>Common practice: a single note's tie lies on the side away from its stem, the outer ones of a chord outwards; in
 * two voices the upper voice's ties lie above, the lower voice's below. A tie to no note, and that of a note that is left to
 * ring, ends soon in the air. Thickness: the font's engraving defaults.
 */
final class TieDrawer {

    /** In staff spaces: house choice. */
    private static final double SHORTEST = 1;
    /** A tie that leads to no note: house choice. */
    static final double HANGING = 1.8;

    private final Canvas canvas;
    private final EngraveContext context;
    private final List<Placed.TieEnd> ends = new ArrayList<>();
    private final double endThickness;
    private final double midThickness;

    TieDrawer(Canvas canvas, EngraveContext context) {
        this.canvas = canvas;
        this.context = context;
        endThickness = canvas.font.engraving("tieEndpointThickness");
        midThickness = canvas.font.engraving("tieMidpointThickness");
    }

    List<Placed.TieEnd> ends() {
        return ends;
    }

    void draw(List<VoiceLine> voices) {
        Set<Chord.Spot> arrived = new HashSet<>();
        for (VoiceLine voice : voices) {
            for (Chord chord : voice.chords) {
                if (chord == null) {
                    continue;
                }
                for (Chord.Spot spot : chord.spots) {
                    if (spot.head.tieStart()) {
                        start(chord, spot, voices, arrived);
                    } else if (chord.event.look().other().contains("let-ring")) {
                        hang(chord, spot);
                    }
                }
            }
        }
        for (VoiceLine voice : voices) {
            for (Chord chord : voice.chords) {
                if (chord == null) {
                    continue;
                }
                for (Chord.Spot spot : chord.spots) {
                    if (spot.head.tieStop() && !arrived.contains(spot)) {
                        boolean above = above(chord, spot);
                        ends.add(new Placed.TieEnd(chord.voice.voice.name(), spot.head.pitch(), false, arrivesAt(chord, spot, above),
                                height(chord, spot, above), above));
                    }
                }
            }
        }
    }

    private void start(Chord chord, Chord.Spot spot, List<VoiceLine> voices, Set<Chord.Spot> arrived) {
        boolean above = above(chord, spot);
        double from = leavesAt(chord, spot, above);
        double y = height(chord, spot, above);
        // the same pitch by its name, else one that sounds alike
        Pitch pitch = spot.head.pitch();
        for (Predicate<Pitch> same : List.<Predicate<Pitch>>of(pitch::equals, pitch::soundsLike)) {
            for (VoiceLine voice : ordered(chord.voice, voices)) {
                for (Chord target : voice.chords) {
                    if (target == null || target == chord || target.event.isGrace() && !chord.event.isGrace()
                            || !follows(chord, target)) {
                        continue;
                    }
                    for (Chord.Spot other : target.spots) {
                        if (other.head.tieStop() && same.test(other.head.pitch()) && arrived.add(other)) {
                            canvas.add(curve(from, arrivesAt(target, other, above), y, above, chord, target));
                            return;
                        }
                    }
                }
            }
        }
        if (reachesEnd(chord) && isTakenUp(pitch)) {
            ends.add(new Placed.TieEnd(chord.voice.voice.name(), spot.head.pitch(), true, from, y, above));
        } else {
            hang(chord, spot);
        }
    }

    /** Whether nothing of its voice follows it in the bar: only then the tie can lead over the barline. */
    private static boolean reachesEnd(Chord chord) {
        List<Event> events = chord.voice.voice.events();
        for (int i = chord.index + 1; i < events.size(); i++) {
            if (!events.get(i).isGrace()) {
                return false;
            }
        }
        return true;
    }

    /** Whether a note of the following bar, of any voice on this staff, takes up the tie; beyond the last bar there is none. */
    private boolean isTakenUp(Pitch pitch) {
        Bar following = context.following();
        if (following == null) {
            return false;
        }
        for (Voice voice : following.voices()) {
            for (Event event : voice.events()) {
                if (event.staff() != context.staff() || !event.printed()) {
                    continue;
                }
                for (Head head : event.heads()) {
                    if (head.tieStop() && head.printed() && head.pitch().soundsLike(pitch)) {
                        return true;
                    }
                }
            }
        }
        return false;
    }

    private void hang(Chord chord, Chord.Spot spot) {
        boolean above = above(chord, spot);
        double from = leavesAt(chord, spot, above);
        double y = height(chord, spot, above);
        double height = HANGING / 4;
        canvas.add(new Curve(from, y, from + HANGING, y, above ? height : -height, endThickness, midThickness, Role.TIE, chord.event.start()));
    }

    private static boolean follows(Chord chord, Chord target) {
        if (chord.event.isGrace()) {
            return target.event.start().equals(chord.event.start()) && (target.voice != chord.voice
                    || target.index > chord.index);
        }
        return target.event.start().equals(chord.event.end());
    }

    private static List<VoiceLine> ordered(VoiceLine own, List<VoiceLine> voices) {
        List<VoiceLine> order = new ArrayList<>();
        order.add(own);
        voices.stream().filter(v -> v != own).forEach(order::add);
        return order;
    }

    /** A short tie is drawn out to {@link #SHORTEST}: over the heads, but not through a stem on its side. */
    private Curve curve(double from, double to, double y, boolean above, Chord chord, Chord target) {
        double missing = Math.max(0, SHORTEST - (to - from));
        boolean stemAtStart = chord.hasStem() && chord.up && above;
        boolean stemAtEnd = target.hasStem() && !target.up && !above;
        double before = stemAtStart ? 0 : stemAtEnd ? missing : missing / 2;
        double length = to - from + missing;
        double height = Math.min(1.1, 0.4 + 0.06 * length);
        return new Curve(from - before, y, from - before + length, y, above ? height : -height, endThickness, midThickness, Role.TIE,
                chord.event.start());
    }

    /** y of the outermost tip of a tie on this side of a chord; not a number where there is none. */
    static double tip(Chord chord, boolean onTop) {
        double tip = Double.NaN;
        for (Chord.Spot spot : chord.spots) {
            if ((spot.head.tieStart() || spot.head.tieStop()) && above(chord, spot) == onTop) {
                double y = height(chord, spot, onTop);
                tip = Double.isNaN(tip) ? y : onTop ? Math.max(tip, y) : Math.min(tip, y);
            }
        }
        return tip;
    }

    private static boolean above(Chord chord, Chord.Spot spot) {
        if (chord.voice.side != VoiceLine.Side.ONLY) {
            return chord.voice.side == VoiceLine.Side.UPPER;
        }
        if (chord.spots.size() == 1) {
            return chord.hasStem() ? !chord.up : spot.step >= 4;
        }
        return chord.spots.indexOf(spot) >= (chord.spots.size() + 1) / 2;
    }

    private static double height(Chord chord, Chord.Spot spot, boolean above) {
        double off = chord.spots.size() == 1 ? 0.65 : 0.3;
        return spot.y() + (above ? off : -off);
    }

    /** Over the head of a single note, as far as its stem lets it; beside the heads of a chord. */
    private static double leavesAt(Chord chord, Chord.Spot spot, boolean above) {
        if (chord.spots.size() == 1) {
            boolean stemInTheWay = chord.hasStem() && chord.up && above;
            return chord.x + spot.left + spot.width * (stemInTheWay ? 1.1 : 0.65);
        }
        double dots = chord.dots() > 0 ? 0.3 + 0.6 * chord.dots() : 0;
        return chord.x + chord.headsRight() + 0.15 + dots;
    }

    private static double arrivesAt(Chord chord, Chord.Spot spot, boolean above) {
        if (chord.spots.size() == 1) {
            boolean stemInTheWay = chord.hasStem() && !chord.up && !above;
            return chord.x + spot.left + spot.width * (stemInTheWay ? -0.1 : 0.35);
        }
        return chord.x + spot.left - 0.15;
    }
}

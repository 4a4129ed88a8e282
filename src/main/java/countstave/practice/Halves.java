package countstave.practice;

import countstave.score.BarTimeline;
import countstave.score.BeamMark;
import countstave.score.Event;
import countstave.score.Voice;
import countstave.time.Duration;
import countstave.time.Offset;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.TreeSet;

/**
 * Half the grid: of the equal parts of a beat, or of a tuplet that is counted through, those that open a group: mostly
 * of two or three, of ten parts and other fives of five (common practice, no source).
 *
 * <p>Of four parts the first and the third are said ({@code 1 &}), of six the first and the fourth ({@code 1 &}), of two or
 * three the first alone. Five parts go 3+2 or 2+3, seven 4+3 or 2+2+3: as the notes' own accents say, else as their beams
 * do, else in the first way. A dotted beat keeps its thirds: of six parts the first, third and fifth are said.
 */
final class Halves {

    private static final List<List<Integer>> FIVE = List.of(List.of(3, 2), List.of(2, 3));
    private static final List<List<Integer>> SEVEN = List.of(List.of(4, 3), List.of(2, 2, 3));

    private Halves() {
    }

    /**
     * The positions that are said.
     *
     * @param start where the beat or the tuplet begins, as written
     * @param parts into how many parts it is cut
     * @param unit length of a part, as written
     * @param dotted whether it is a dotted beat
     */
    static TreeSet<Offset> of(BarTimeline bar, Offset start, int parts, Duration unit, boolean dotted) {
        TreeSet<Offset> said = new TreeSet<>();
        int at = 0;
        for (int group : groups(bar, start, parts, unit, dotted)) {
            said.add(start.plus(unit.times(at)));
            at += group;
        }
        return said;
    }

    private static List<Integer> groups(BarTimeline bar, Offset start, int parts, Duration unit, boolean dotted) {
        if (parts == 5 || parts == 7) {
            List<List<Integer>> ways = parts == 5 ? FIVE : SEVEN;
            List<Integer> shown = shown(ways, accented(bar, start, parts, unit));
            shown = shown == null ? shown(ways, beamed(bar, start, parts, unit)) : shown;
            return shown == null ? ways.get(0) : shown;
        }
        return usual(parts, dotted);
    }

    /** The groups of a division whose notes are not asked. */
    static List<Integer> usual(int parts, boolean dotted) {
        if (parts <= 3) {
            return List.of(parts);
        }
        if (dotted && parts % 3 == 0 && parts % 9 != 0 || Integer.bitCount(parts) == 1) {
            return Collections.nCopies(parts / 2, 2);
        }
        if (parts % 3 == 0) {
            return Collections.nCopies(parts / 3, 3);
        }
        if (parts % 5 == 0) {
            return Collections.nCopies(parts / 5, 5);
        }
        List<Integer> groups = new ArrayList<>();
        int left = parts;
        // threes, and twos at the end, so that no single part is left over
        while (left > 4 || left == 3) {
            groups.add(3);
            left -= 3;
        }
        while (left > 0) {
            groups.add(2);
            left -= 2;
        }
        return groups;
    }

    /** The way whose groups begin exactly where something is marked inside, or null. */
    private static List<Integer> shown(List<List<Integer>> ways, TreeSet<Integer> marked) {
        for (List<Integer> way : ways) {
            TreeSet<Integer> starts = new TreeSet<>();
            int at = 0;
            for (int i = 0; i + 1 < way.size(); i++) {
                at += way.get(i);
                starts.add(at);
            }
            if (starts.equals(marked)) {
                return way;
            }
        }
        return null;
    }

    private static TreeSet<Integer> accented(BarTimeline bar, Offset start, int parts, Duration unit) {
        TreeSet<Integer> accented = new TreeSet<>();
        for (Event event : inside(bar, start, parts, unit)) {
            if (event.look().articulations().contains("accent") || event.look().articulations().contains("strong-accent")) {
                accented.add(part(event, start, unit));
            }
        }
        return accented;
    }

    private static TreeSet<Integer> beamed(BarTimeline bar, Offset start, int parts, Duration unit) {
        TreeSet<Integer> begun = new TreeSet<>();
        for (Event event : inside(bar, start, parts, unit)) {
            if (event.look().beams().stream().anyMatch(beam -> beam.kind() == BeamMark.Kind.BEGIN)) {
                begun.add(part(event, start, unit));
            }
        }
        return begun;
    }

    /** The notes on the parts after the first. */
    private static List<Event> inside(BarTimeline bar, Offset start, int parts, Duration unit) {
        Offset end = start.plus(unit.times(parts));
        List<Event> inside = new ArrayList<>();
        for (Voice voice : bar.bar().voices()) {
            for (Event event : voice.events()) {
                if (event.isAttack() && event.start().isAfter(start) && event.start().isBefore(end)
                        && event.start().minus(start).isMultipleOf(unit)) {
                    inside.add(event);
                }
            }
        }
        return inside;
    }

    private static int part(Event event, Offset start, Duration unit) {
        return (int) event.start().minus(start).floorOver(unit);
    }
}

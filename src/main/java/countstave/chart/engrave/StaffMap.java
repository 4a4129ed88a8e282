package countstave.chart.engrave;

import countstave.score.Bar;
import countstave.score.Clef;
import countstave.score.Event;
import countstave.score.Head;
import countstave.score.StaffChange;
import countstave.score.Voice;
import countstave.time.Offset;
import java.util.ArrayList;
import java.util.List;
import java.util.NavigableMap;
import java.util.TreeMap;

/**
 * From pitch to height on one staff of one bar.
 *
 * <p>Heights are counted in steps of half a staff space: step 0 stands at y = 0, the bottom line of five, step 4 on the
 * middle line. Unpitched notes and the percussion clef read as treble (MusicXML {@code display-step}: "positioned as
 * if in treble clef").
 */
final class StaffMap {

    /** Diatonic numbers (see {@link Head#diatonic()}) of the notes the clefs name: G4, F3, C4. */
    private static final int G4 = 32;
    private static final int F3 = 24;
    private static final int C4 = 28;
    private static final int E4 = 30;
    private static final int B4 = 34;
    private static final int STANDARD = 5;

    private final List<StaffState> states = new ArrayList<>();
    private final List<Offset> from = new ArrayList<>();
    private final NavigableMap<Offset, Integer> octaves = new TreeMap<>();
    private final double notes;

    /** @param notes as {@link #middleOfNotes} tells it of the whole part, or null to tell it of this bar */
    StaffMap(Bar bar, int staff, StaffState before, Double notes) {
        StaffState state = before;
        states.add(state);
        from.add(Offset.ZERO);
        for (StaffChange change : bar.markings().staves()) {
            if (change.staff() == 0 || change.staff() == staff) {
                state = state.after(change);
                states.add(state);
                from.add(change.at());
            }
        }
        octaves.put(Offset.ZERO, before.octaves());
        bar.directions().stream().filter(d -> StaffState.isOctaveLine(d, staff))
                .forEach(d -> octaves.put(d.at(), d.line().amount()));
        this.notes = notes != null ? notes : middleOfNotes(List.of(bar), staff);
    }

    /** What is in force for notes that begin at {@code at}. */
    StaffState stateAt(Offset at) {
        int found = 0;
        for (int i = 1; i < states.size() && !from.get(i).isAfter(at); i++) {
            found = i;
        }
        return states.get(found);
    }

    /** What was in force just before {@code at}. */
    StaffState stateBefore(Offset at) {
        StaffState found = states.get(0);
        for (int i = 1; i < states.size() && from.get(i).isBefore(at); i++) {
            found = states.get(i);
        }
        return found;
    }

    /** Height of a head in steps. */
    int step(Head head, Offset at) {
        StaffState state = stateAt(at);
        if (FretNumbers.isOn(head, state)) {
            return 2 * (state.lines() - head.fret().string());
        }
        if (state.lines() != STANDARD && reads(state.clef()) == Reading.UNPITCHED) {
            return (int) (2 * bottomLine(state.lines())) + head.pitch().diatonic() - bottomNote(state.lines());
        }
        return head.pitch().diatonic() + 7 * octaves.floorEntry(at).getValue() - diatonicOfBottomLine(state.clef());
    }

    private enum Reading { PITCHED, UNPITCHED }

    private static Reading reads(Clef clef) {
        return switch (clef.sign()) {
            case "G", "F", "C", "TAB" -> Reading.PITCHED;
            default -> Reading.UNPITCHED;
        };
    }

    /** Diatonic number of the bottom line of five under a clef: 30 (E4) for treble. */
    static int diatonicOfBottomLine(Clef clef) {
        int octaves = 7 * clef.octaveChange();
        int line = 2 * (clef.line() - 1);
        return switch (clef.sign()) {
            case "G" -> G4 + octaves - line;
            case "F" -> F3 + octaves - line;
            case "C" -> C4 + octaves - line;
            default -> E4;
        };
    }

    /**
     * Which display position is the lowest line of a staff of other than five lines. Read strictly it is E4, the bottom line of
     * a treble staff, but files are also written with B4 in the middle of the lines. What is nearer to the notes is taken.
     */
    private int bottomNote(int lines) {
        int between = Math.max(0, lines - 1);
        return Math.abs(notes - B4) <= Math.abs(notes - E4 - between) ? B4 - between : E4;
    }

    /** The middle (diatonic number) of all heads on a staff; that of five lines where there are none. */
    static double middleOfNotes(List<Bar> bars, int staff) {
        long sum = 0;
        int count = 0;
        for (Voice voice : (Iterable<Voice>) bars.stream().flatMap(b -> b.voices().stream())::iterator) {
            for (Event event : voice.events()) {
                if (event.staff() == staff && event.isNote()) {
                    for (Head head : event.heads()) {
                        sum += head.pitch().diatonic();
                        count++;
                    }
                }
            }
        }
        return count == 0 ? B4 : (double) sum / count;
    }

    /** y of the lowest staff line. */
    static double bottomLine(int lines) {
        return lines == 1 ? 2 : 0;
    }

    /** y of the highest staff line. */
    static double topLine(int lines) {
        return lines <= 1 ? 2 : lines - 1;
    }

    /** y of the line from which a whole rest hangs: the one above the middle, or the only one. */
    static double lineOfWholeRest(int lines) {
        return lines <= 1 ? middle(lines) : Math.floor(middle(lines)) + 1;
    }

    /** y of the line on which a half rest sits: the middle one, or the lower of the two around the middle. */
    static double lineOfHalfRest(int lines) {
        return Math.floor(middle(lines));
    }

    /** y of the middle of the staff. */
    static double middle(int lines) {
        return (bottomLine(lines) + topLine(lines)) / 2;
    }

    /** Lowest y that barlines reach; a single line gets barlines of two spaces. */
    static double barlineBottom(int lines) {
        return lines <= 1 ? 1 : 0;
    }

    static double barlineTop(int lines) {
        return lines <= 1 ? 3 : lines - 1;
    }
}

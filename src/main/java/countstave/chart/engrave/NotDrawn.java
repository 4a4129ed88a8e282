package countstave.chart.engrave;

import countstave.score.Bar;
import countstave.score.Direction;
import countstave.score.Event;
import countstave.score.Head;
import countstave.score.StaffChange;
import countstave.score.Tremolo;
import countstave.score.Voice;
import java.util.Set;
import java.util.TreeSet;

/** Names of what a bar has and the chart does not draw; MusicXML's own names where it has one. */
final class NotDrawn {

    private NotDrawn() {
    }

    static Set<String> in(NotatedBar measured) {
        int staff = measured.frame.context.staff();
        Set<String> names = around(measured.bar(), staff);
        for (Voice voice : measured.bar().voices()) {
            for (Event event : voice.events()) {
                if (event.staff() == staff && event.printed()) {
                    of(event, names);
                }
            }
        }
        frets(measured, names);
        return names;
    }

    /** The numbers of frets are drawn in tablature only. */
    private static void frets(NotatedBar measured, Set<String> names) {
        boolean elsewhere = false;
        for (VoiceLine voice : measured.voices()) {
            for (Chord chord : voice.chords) {
                boolean drawn = chord == null || chord.isTab();
                elsewhere |= !drawn && chord.event.look().other().contains("fret");
                if (chord != null && chord.lacksFret) {
                    names.add("tablature without strings and frets");
                }
            }
        }
        if (!elsewhere) {
            names.remove("fret");
        }
    }

    /** What stands around the notes, and so concerns bars of slashes, repeats and long rests too. */
    static Set<String> around(Bar bar, int staff) {
        Set<String> names = new TreeSet<>();
        for (Direction direction : bar.directions()) {
            if (direction.kind() == Direction.Kind.OTHER && direction.staff() == staff && direction.text() != null) {
                names.add(direction.text());
            }
        }
        for (StaffChange change : bar.markings().staves()) {
            if (change.staff() != 0 && change.staff() != staff) {
                continue;
            }
            change.signs().stream().filter(s -> Signs.accidental(s.accidental()) == null)
                    .forEach(s -> names.add("accidental " + s.accidental()));
            if (change.fifths() != null && Math.abs(change.fifths()) > MOST_FIFTHS) {
                names.add("key of more than seven accidentals");
            }
        }
        return names;
    }

    private static final int MOST_FIFTHS = 7;

    private static void of(Event event, Set<String> names) {
        event.look().other().stream().filter(n -> !Marks.isDrawn(n)).forEach(names::add);
        event.look().articulations().stream().filter(n -> !Marks.isDrawn(n)).forEach(names::add);
        Tremolo tremolo = event.look().tremolo();
        if (tremolo != null && tremolo.slashes() > 5) {
            names.add("tremolo of " + tremolo.slashes() + " strokes");
        }
        for (Head head : event.heads()) {
            if (!Signs.knowsHead(head.shape())) {
                names.add("notehead " + head.shape());
            }
            if (head.accidental() != null && Signs.accidental(head.accidental().name()) == null) {
                names.add("accidental " + head.accidental().name());
            }
        }
    }
}

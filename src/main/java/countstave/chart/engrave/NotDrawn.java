package countstave.chart.engrave;

import countstave.score.Direction;
import countstave.score.Event;
import countstave.score.Head;
import countstave.score.Tremolo;
import countstave.score.Voice;
import java.util.Set;
import java.util.TreeSet;

/** Names of what a bar has and the chart does not draw; MusicXML's own names where it has one. */
final class NotDrawn {

    private NotDrawn() {
    }

    static Set<String> in(BarMeasure.Measured measured) {
        Set<String> names = new TreeSet<>();
        int staff = measured.context().staff();
        for (Voice voice : measured.bar().voices()) {
            for (Event event : voice.events()) {
                if (event.staff() == staff && event.printed()) {
                    of(event, names);
                }
            }
        }
        for (Direction direction : measured.bar().directions()) {
            if (direction.kind() == Direction.Kind.OTHER && direction.staff() == staff && direction.text() != null) {
                names.add(direction.text());
            }
        }
        measured.bar().staffChanges().stream().filter(c -> c.clef() != null && "TAB".equals(c.clef().sign()))
                .forEach(c -> names.add("tablature"));
        return names;
    }

    private static void of(Event event, Set<String> names) {
        if (event.look().slurs() > 0) {
            names.add("slur");
        }
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
            if (head.accidental() != null && Signs.accidental(head.accidental()) == null) {
                names.add("accidental " + head.accidental());
            }
        }
    }
}

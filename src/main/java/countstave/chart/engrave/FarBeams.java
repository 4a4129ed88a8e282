package countstave.chart.engrave;

import countstave.score.BeamMark;
import countstave.score.Event;
import countstave.score.Look;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Set;

/** Notes whose beam reaches beyond their staff, or beyond their bar: the page draws their stems and beams. */
final class FarBeams {

    private FarBeams() {
    }

    /** The indexes of such events in those of their voice; as the file's beams have it, since no rule makes such a beam. */
    static Set<Integer> in(List<Event> events) {
        Set<Integer> far = new HashSet<>();
        List<Integer> open = new ArrayList<>();
        boolean begun = false;
        for (int i = 0; i < events.size(); i++) {
            Event event = events.get(i);
            BeamMark.Kind kind = event.isGrace() ? null : BeamGrouper.firstLevel(event);
            if (kind == null || !isBeamable(event)) {
                continue;
            }
            if (kind == BeamMark.Kind.BEGIN) {
                open.clear();
                begun = true;
            }
            open.add(i);
            if (kind == BeamMark.Kind.END) {
                if (!begun || staves(events, open) > 1) {
                    far.addAll(open);
                }
                open.clear();
                begun = false;
            }
        }
        // what is still open goes on in the next bar
        far.addAll(open);
        return far;
    }

    /** Whether the beam of a note leads to a lower staff; of one that stays on its staff, whether its voice is the lower one. */
    static boolean reachesDown(VoiceLine line, Chord chord) {
        List<Event> events = line.voice.events();
        int from = chord.index;
        while (from > 0 && BeamGrouper.firstLevel(events.get(from)) != BeamMark.Kind.BEGIN) {
            from--;
        }
        for (int i = from; i < events.size(); i++) {
            if (!events.get(i).isGrace() && events.get(i).isNote() && events.get(i).staff() != chord.event.staff()) {
                return events.get(i).staff() > chord.event.staff();
            }
            if (i >= chord.index && BeamGrouper.firstLevel(events.get(i)) == BeamMark.Kind.END) {
                break;
            }
        }
        return line.side == VoiceLine.Side.LOWER;
    }

    private static long staves(List<Event> events, List<Integer> group) {
        return group.stream().map(i -> events.get(i).staff()).distinct().count();
    }

    /** Not without a stem: a beam over heads alone belongs to nothing. */
    static boolean isBeamable(Event event) {
        return event.isNote() && event.printed() && event.look().stem() != Look.Stem.NONE && event.written() != null && event.written().value().flags() > 0
                && !event.look().isSharedTremolo();
    }
}

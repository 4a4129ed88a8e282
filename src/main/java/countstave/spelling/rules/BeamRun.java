package countstave.spelling.rules;

import countstave.score.BeamMark;
import countstave.score.Event;
import countstave.score.Voice;
import java.util.ArrayList;
import java.util.List;

/** The notes (and rests) under one eighth beam inside a bar, first and last included. */
record BeamRun(List<Event> events) {

    /** The whole beams of a voice; those that begin or end in another bar, or do not match, are left out. */
    static List<BeamRun> of(Voice voice) {
        List<BeamRun> runs = new ArrayList<>();
        List<Event> open = null;
        for (Event event : voice.events()) {
            if (event.isGrace()) {
                continue;
            }
            BeamMark.Kind kind = kind(event, 1);
            if (kind == BeamMark.Kind.BEGIN) {
                open = new ArrayList<>();
            } else if (open != null && kind == null && event.isNote()) {
                open = null;
            }
            if (open != null) {
                open.add(event);
                if (kind == BeamMark.Kind.END) {
                    runs.add(new BeamRun(List.copyOf(open)));
                    open = null;
                }
            }
        }
        return runs;
    }

    /** What the event says of the beam of this level, or null. */
    static BeamMark.Kind kind(Event event, int level) {
        for (BeamMark mark : event.look().beams()) {
            if (mark.level() == level) {
                return mark.kind();
            }
        }
        return null;
    }

    Event first() {
        return events.get(0);
    }

    Event last() {
        return events.get(events.size() - 1);
    }
}

package countstave.musicxml;

import countstave.score.Event;
import countstave.time.Offset;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;

/** What the notes of a bar contradict in themselves and in each other, seen when its voices are closed; mostly nothing. */
final class Contradictions {

    /** Of each voice, the events that are written as one value and last another, in order of time. */
    Map<String, List<Event>> differing = Map.of();
    /** Of each voice that goes back over itself, in the order of the file, where it does so first. */
    Map<String, Offset> wentBack = Map.of();
    /** How many durations are rounded, the first of them, and its voice. */
    int roundedNotes;
    Event firstRounded;
    String voiceOfRounded;

    /** @param events what is made of the drafts, in their order */
    void see(String voice, List<EventDraft> drafts, List<Event> events) {
        Offset end = Offset.ZERO;
        for (int i = 0; i < drafts.size(); i++) {
            EventDraft draft = drafts.get(i);
            if (draft.agreement != EventDraft.Agreement.EXACT && !draft.barRest && !draft.look.isSharedTremolo()) {
                disagrees(voice, draft.agreement, events.get(i));
            }
            if (draft.start.isBefore(end) && draft.grace == Event.Grace.NONE && draft.length.isPositive()) {
                wentBack = wentBack.isEmpty() ? new HashMap<>() : wentBack;
                wentBack.putIfAbsent(voice, draft.start);
            }
            Offset ownEnd = draft.start.plus(draft.length);
            end = ownEnd.isAfter(end) ? ownEnd : end;
        }
        if (differing.containsKey(voice)) {
            differing.get(voice).sort(Comparator.comparing(Event::start));
        }
    }

    private void disagrees(String voice, EventDraft.Agreement agreement, Event event) {
        if (agreement == EventDraft.Agreement.DIFFERENT) {
            differing = differing.isEmpty() ? new HashMap<>() : differing;
            differing.computeIfAbsent(voice, name -> new ArrayList<>()).add(event);
            return;
        }
        roundedNotes++;
        if (firstRounded == null || voice.equals(voiceOfRounded) && event.start().isBefore(firstRounded.start())) {
            firstRounded = event;
            voiceOfRounded = voice;
        }
    }
}
